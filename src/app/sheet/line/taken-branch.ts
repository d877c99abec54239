import { type CallSyntax, findFunction, type Syntax } from '../../../language/index.ts';

/** What is known of a name: its value (numbers in SI), or that it is blank. */
export type Fact =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'truth'; readonly value: boolean }
  | { readonly kind: 'blank' };

type FactOf = (name: string) => Fact | undefined;

/**
 * A formula with every choice between formulas replaced by the branch that holds now, as far as its conditions can be
 * decided from plain names and literals; what cannot be decided stays as written.
 */
export function takenBranch(node: Syntax, factOf: FactOf): Syntax {
  const take = (part: Syntax): Syntax => takenBranch(part, factOf);
  /** A branch among other terms keeps to itself. */
  const operand = (part: Syntax): Syntax => {
    const taken = take(part);
    const { from, to } = part;
    return part.kind === 'call' && taken !== part && (taken.kind === 'binary' || taken.kind === 'negate')
      ? { kind: 'group', inner: taken, from, to }
      : taken;
  };
  switch (node.kind) {
    case 'group':
      return { ...node, inner: take(node.inner) };
    case 'negate':
    case 'percent':
    case 'root':
      return { ...node, operand: operand(node.operand) };
    case 'power':
      return { ...node, base: operand(node.base), exponent: operand(node.exponent) };
    case 'binary':
    case 'comparison':
      return { ...node, left: operand(node.left), right: operand(node.right) };
    case 'call': {
      const branch = branchOf(node, factOf);
      return branch ? take(branch) : { ...node, args: node.args.map(take) };
    }
    case 'number':
    case 'text':
    case 'truth':
    case 'name':
    case 'error':
      return node;
  }
}

function branchOf(call: CallSyntax, factOf: FactOf): Syntax | undefined {
  const { args } = call;
  switch (findFunction(call.name)?.typeset) {
    case 'if': {
      const holds = args[0] && decided(args[0], factOf);
      return holds === undefined ? undefined : args[holds ? 1 : 2];
    }
    case 'ifs':
      for (let at = 0; at + 1 < args.length; at += 2) {
        const condition = args[at];
        const holds = condition && decided(condition, factOf);
        if (holds !== false) return holds ? args[at + 1] : undefined;
      }
      return undefined;
    case 'switch': {
      const [subject, ...rest] = args;
      const value = subject && factOfNode(subject, factOf);
      for (let at = 0; at + 1 < rest.length; at += 2) {
        const wanted = rest[at];
        const same = value && wanted && compared('=', value, factOfNode(wanted, factOf));
        if (same !== false) return same ? rest[at + 1] : undefined;
      }
      return rest.length % 2 === 1 ? rest.at(-1) : undefined;
    }
    default:
      return undefined;
  }
}

/** Whether a condition holds; undefined where plain names and literals do not tell. */
function decided(node: Syntax, factOf: FactOf): boolean | undefined {
  if (node.kind === 'group') return decided(node.inner, factOf);
  if (node.kind === 'comparison') {
    const left = factOfNode(node.left, factOf);
    return left && compared(node.op, left, factOfNode(node.right, factOf));
  }
  if (node.kind !== 'call') {
    const fact = factOfNode(node, factOf);
    return fact?.kind === 'truth' ? fact.value : undefined;
  }
  const [first] = node.args;
  switch (node.name.toUpperCase()) {
    case 'ISBLANK': {
      const fact = first?.kind === 'name' ? factOf(first.name) : undefined;
      return fact && fact.kind === 'blank';
    }
    case 'NOT': {
      const inner = first && decided(first, factOf);
      return inner === undefined ? undefined : !inner;
    }
    case 'AND':
    case 'OR': {
      const each = node.args.map((arg) => decided(arg, factOf));
      if (each.includes(undefined)) return undefined;
      return node.name.toUpperCase() === 'AND' ? each.every(Boolean) : each.some(Boolean);
    }
    default:
      return undefined;
  }
}

function factOfNode(node: Syntax, factOf: FactOf): Fact | undefined {
  switch (node.kind) {
    case 'group':
      return factOfNode(node.inner, factOf);
    case 'name':
      return factOf(node.name);
    case 'text':
      return { kind: 'text', value: node.value };
    case 'truth':
      return { kind: 'truth', value: node.value };
    case 'number':
      // A literal with a unit is no SI number, except nothing of anything.
      return node.unit && node.value !== 0 ? undefined : { kind: 'number', value: node.value };
    default:
      return undefined;
  }
}

function compared(op: string, a: Fact, b: Fact | undefined): boolean | undefined {
  if (a.kind === 'text' && b?.kind === 'text') {
    const same = folded(a.value) === folded(b.value);
    return op === '=' ? same : op === '<>' ? !same : undefined;
  }
  if (a.kind !== 'number' || b?.kind !== 'number') return undefined;
  // Near a tie the language's own tolerance decides, not this.
  const near = Math.abs(a.value - b.value) <= 1e-9 * Math.max(Math.abs(a.value), Math.abs(b.value));
  if (near && a.value !== b.value) return undefined;
  const less = a.value < b.value;
  const results: Readonly<Record<string, boolean>> = {
    '=': near,
    '<>': !near,
    '<': less,
    '<=': less || near,
    '>': !less && !near,
    '>=': !less || near,
  };
  return results[op];
}

function folded(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}
