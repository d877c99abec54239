import type { Syntax } from '../../src/language/index.ts';
import type { Random } from './generate/index.ts';

const here = { from: 0, to: 0 };
const singleUnits = ['ft', 'kN', 'psi', 'degC', '°', '$', '€', 'ΔdegF'];
const compoundUnits = ['kN/m^2', 'm²', 'kip-ft', 'USD/cy', '1/ft', 'kN/(m·s)', 'ft MLLW', 'kg·m/s^2'];
const words = ['a', 'x1', "f'_c", 'γ_w', 'Δ_max', 'layers', 'SUM', 'if', 'e5', 'truely', 'm', "h'"];
const letters = [...'ab 1,;()"\'<=&°²“”’\\\n·×é'];

/** Any tree the language can print and read without a problem: what would read two ways is grouped. */
export function randomSyntax(random: Random, depth: number): Syntax {
  if (random.chance(0.25)) {
    const op = random.pick(['=', '<>', '<', '<=', '>', '>='] as const);
    return { kind: 'comparison', op, left: join(random, depth), right: join(random, depth), ...here };
  }
  return join(random, depth);
}

type Level = (random: Random, depth: number) => Syntax;

const factor: Level = (random, depth) => {
  if (depth <= 0) return tight(random, depth);
  const choice = random.below(4);
  if (choice === 0) return { kind: 'negate', operand: tight(random, depth - 1), ...here };
  if (choice > 1) return tight(random, depth);
  const raised = bare(random, depth - 1);
  const exponent: Syntax = random.chance(0.3) ? { kind: 'negate', operand: raised, ...here } : raised;
  return { kind: 'power', base: bare(random, depth - 1), exponent, ...here };
};
const product = chain(['*', '/'], factor);
const sum = chain(['+', '-'], product);
const join = chain(['&'], sum);

/** Left-associative operators over parts that bind tighter. */
function chain(ops: readonly ('+' | '-' | '*' | '/' | '&')[], part: Level): Level {
  return (random, depth) => {
    let left = part(random, depth);
    for (let more = random.pick([0, 0, 0, 1, 2]); more > 0; more -= 1) {
      const op = random.pick(ops);
      const right = part(random, depth - 1);
      const fraction = op === '/' && right.kind === 'number' && right.unit && endsWithNumber(left);
      left = { kind: 'binary', op, left, right: fraction ? group(right) : right, opSpan: here, ...here };
    }
    return left;
  };
}

/** Whether a quotient that goes on with a quantity would read as a fraction before a unit. */
function endsWithNumber(node: Syntax): boolean {
  if (node.kind === 'negate') return endsWithNumber(node.operand);
  if (node.kind === 'binary' && (node.op === '*' || node.op === '/')) return endsWithNumber(node.right);
  return node.kind === 'number' && !node.unit;
}

function tight(random: Random, depth: number): Syntax {
  const choice = random.below(8);
  if (choice === 0) {
    const operand = random.chance(0.5) ? number(random) : group(randomSyntax(random, depth - 1));
    return { kind: 'percent', operand, ...here };
  }
  if (choice === 1) return { kind: 'root', operand: atom(random, depth - 1), ...here };
  return atom(random, depth);
}

function atom(random: Random, depth: number): Syntax {
  switch (random.below(6)) {
    case 0: {
      const compound = random.chance(0.5);
      const unit = { text: random.pick(compound ? compoundUnits : singleUnits), compound, ...here };
      return { ...number(random), unit };
    }
    case 1: {
      const value = Array.from({ length: random.below(8) }, () => random.pick(letters)).join('');
      return { kind: 'text', value, ...here };
    }
    case 2:
      return { kind: 'truth', value: random.chance(0.5), ...here };
    default:
      return bare(random, depth);
  }
}

/** What a power may stand on without a second reading. */
function bare(random: Random, depth: number): Syntax {
  const choice = depth <= 0 ? random.below(2) : random.below(4);
  if (choice === 0) return number(random);
  if (choice === 1) {
    const parts = Array.from({ length: 1 + random.below(3) }, () => random.pick(words));
    return { kind: 'name', name: parts.join('.'), ...here };
  }
  if (choice === 2) return group(randomSyntax(random, depth - 1));
  const args = Array.from({ length: random.below(4) }, () => randomSyntax(random, depth - 1));
  return { kind: 'call', name: random.pick(words), nameSpan: here, args, ...here };
}

/** Numbers of all sizes: whole, short, and all the digits and exponents there are. */
function number(random: Random): Syntax & { kind: 'number' } {
  const wild = random.next() * 10 ** (random.below(600) - 300);
  const value = random.pick([random.below(1000), random.below(100_000) / 1000, wild]);
  return { kind: 'number', value, ...here };
}

function group(inner: Syntax): Syntax {
  return { kind: 'group', inner, ...here };
}
