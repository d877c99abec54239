import { type CallSyntax, findFunction, type NumberSyntax, type Syntax } from '../../language/index.ts';
import { forms } from './forms.ts';
import { element, numeral, operator, parenthesised, row, upright, words } from './markup.ts';
import { symbolMath, unitText } from './symbol.ts';

/** How one reader of a formula draws its names: as symbols, or as the values they have. */
export type NameDrawer = (name: string, raised?: boolean) => string;

const signs: Readonly<Record<string, string>> = {
  '*': '·',
  '-': '−',
  '<=': '≤',
  '>=': '≥',
  '<>': '≠',
};

/** A formula's tree as MathML, without the `math` element around it. What did not parse is left as a mark. */
function typeset(node: Syntax, name: NameDrawer): string {
  const draw = (part: Syntax): string => typeset(part, name);
  switch (node.kind) {
    case 'number':
      return quantity(node);
    case 'text':
      return words(`“${node.value}”`);
    case 'truth':
      return words(node.value ? 'true' : 'false');
    case 'name':
      return name(node.name);
    case 'group':
      return node.inner.kind === 'binary' && node.inner.op === '/'
        ? draw(node.inner)
        : parenthesised(draw(node.inner));
    case 'negate':
      return row(operator('−', 'form="prefix"'), draw(node.operand));
    case 'percent':
      return row(draw(node.operand), words('%'));
    case 'root':
      return element('msqrt', draw(bare(node.operand)));
    case 'power':
      return element('msup', powerBase(node.base, name) + element('mrow', linear(bare(node.exponent), name)));
    case 'binary':
      if (node.op === '/') return element('mfrac', row(draw(bare(node.left))) + row(draw(bare(node.right))));
      return row(draw(node.left), operator(signs[node.op] ?? node.op), draw(node.right));
    case 'comparison':
      return row(draw(node.left), operator(signs[node.op] ?? node.op), draw(node.right));
    case 'call':
      return call(node, name);
    case 'error':
      return element('mtext', '…', 'class="broken"');
  }
}

/** Inside an exponent a fraction stands on the line. */
function linear(node: Syntax, name: NameDrawer): string {
  if (node.kind === 'binary' && node.op === '/')
    return row(typeset(node.left, name), operator('/'), typeset(node.right, name));
  return typeset(node, name);
}

/** A base that has parts of its own keeps its parentheses, a fraction too. */
function powerBase(base: Syntax, name: NameDrawer): string {
  if (base.kind === 'name') return name(base.name, true);
  return base.kind === 'group' ? parenthesised(typeset(base.inner, name)) : typeset(base, name);
}

/** Parentheses that a fraction bar or a root makes needless. */
function bare(node: Syntax): Syntax {
  return node.kind === 'group' ? bare(node.inner) : node;
}

function quantity(node: NumberSyntax): string {
  const number = numeral(`${node.value}`);
  return node.unit
    ? row(number, element('mspace', '', 'width="0.2em"'), words(unitText(node.unit.text)))
    : number;
}

function call(node: CallSyntax, name: NameDrawer): string {
  const fn = findFunction(node.name);
  const draw = (part: Syntax): string => typeset(part, name);
  const form = fn?.typeset && forms[fn.typeset];
  if (form) return form(node.args, draw);
  const called = fn?.typesetName ?? node.name;
  const list = node.args.map(draw).join(operator(';', 'class="separator"'));
  return row(upright(called), operator('\u2061'), operator('('), list, operator(')'));
}

/** A formula in its symbols. */
export function formulaMath(node: Syntax): string {
  return typeset(node, (name) => symbolMath(name));
}

/**
 * A formula with numbers put in. `shown` gives what stands for a name, number and unit apart, or undefined to keep
 * the symbol; a negative number, and a quantity raised to a power, get parentheses.
 */
export function numbersMath(
  node: Syntax,
  shown: (name: string) => { readonly number: string; readonly unit: string } | undefined,
): string {
  return typeset(node, (name, raised) => {
    const value = shown(name);
    if (!value) return symbolMath(name);
    const unit =
      value.unit === '' ? '' : element('mspace', '', 'width="0.2em"') + words(unitText(value.unit));
    const inner = row(numeral(value.number.replace(/^-/, '−')), unit);
    const whole = !value.number.startsWith('-') && !(raised && value.unit !== '');
    return whole ? inner : parenthesised(inner);
  });
}
