import {
  type BinarySyntax,
  type CallSyntax,
  findFunction,
  type NameSyntax,
  type NumberSyntax,
  type PowerSyntax,
  type Syntax,
} from '../../language/index.ts';
import { element, type Markup, none, together } from '../../markup/index.ts';
import { numberInPrint, unitInPrint, writeNumber } from '../../units/index.ts';
import { forms, root } from './forms.ts';
import { numeral, operator, parenthesise, power as raisedTo, row, upright, words } from './markup.ts';
import { symbolMath } from './symbol.ts';

/**
 * How one reader of a formula draws its names, as symbols or as the values they have, and its products. `flat`: a
 * fraction stands on the line, as it does within another and in an exponent, where it would be too small to read.
 */
interface Reader {
  readonly name: (node: NameSyntax, raised?: boolean) => Markup;
  readonly times: string;
  readonly flat?: boolean;
}

const signs = new Map([
  ['-', '−'],
  ['<=', '≤'],
  ['>=', '≥'],
  ['<>', '≠'],
]);

/** A formula's tree as MathML, without the `math` element around it. What did not parse is left as a mark. */
function typeset(node: Syntax, reader: Reader): Markup {
  const draw = (part: Syntax): Markup => typeset(part, reader);
  switch (node.kind) {
    case 'number':
      return literal(node);
    case 'text':
      return words(`“${node.value}”`);
    case 'truth':
      return words(node.value ? 'true' : 'false');
    case 'name':
      return reader.name(node);
    case 'group':
      return node.inner.kind === 'binary' && node.inner.op === '/' && !reader.flat
        ? draw(node.inner)
        : parenthesise(draw(node.inner));
    case 'negate':
      return row(operator('−', { form: 'prefix' }), draw(node.operand));
    case 'percent':
      return row(draw(node.operand), gap, words('%'));
    case 'root':
      return root(node.operand, draw);
    case 'power':
      return power(node, reader);
    case 'binary':
      if (node.op === '/') return quotient(node, reader);
      return row(
        draw(node.left),
        operator(node.op === '*' ? reader.times : (signs.get(node.op) ?? node.op)),
        draw(node.right),
      );
    case 'comparison':
      return row(draw(node.left), operator(signs.get(node.op) ?? node.op), draw(node.right));
    case 'call':
      return call(node, reader);
    case 'error':
      return element('mtext', { class: 'broken' }, '…');
  }
}

function quotient({ left, right }: BinarySyntax, reader: Reader): Markup {
  if (reader.flat) return row(typeset(left, reader), operator('/'), typeset(right, reader));
  const half = (node: Syntax): Markup => row(typeset(bare(node), { ...reader, flat: true }));
  return element('mfrac', {}, half(left), half(right));
}

function power({ base, exponent }: PowerSyntax, reader: Reader): Markup {
  const raised = row(typeset(bare(exponent), { ...reader, flat: true }));
  if (base.kind === 'call' && isNamedFunction(base) && bare(exponent).kind === 'number')
    return called(base, raisedTo(upright(nameOf(base)), raised), reader);
  return raisedTo(powerBase(base, reader), raised);
}

/** A function of one number, such as sin, whose power stands at its name: after its parentheses it would seem the argument's. */
function isNamedFunction({ name, args }: CallSyntax): boolean {
  const fn = findFunction(name);
  return fn?.typesetName !== undefined && fn.group !== 'aggregates' && args.length === 1;
}

/** A base that has parts of its own keeps its parentheses, a fraction too. */
function powerBase(base: Syntax, reader: Reader): Markup {
  if (base.kind === 'name') return reader.name(base, true);
  return base.kind === 'group' ? parenthesise(typeset(base.inner, reader)) : typeset(base, reader);
}

/** Parentheses that a fraction bar or a root makes needless. */
function bare(node: Syntax): Syntax {
  return node.kind === 'group' ? bare(node.inner) : node;
}

/** Between a number and what it counts. */
const gap = element('mspace', { width: '0.2em' });

/** A number with its unit, both as they are set in print. */
function quantity(number: string, unit: string): Markup {
  if (unit === '') return numeral(number);
  return row(numeral(number), unit === '°' ? none : gap, words(unit));
}

function literal({ value, unit }: NumberSyntax): Markup {
  return quantity(numberInPrint(writeNumber(value, { digits: 'full' })), unitInPrint(unit?.text ?? ''));
}

function call(node: CallSyntax, reader: Reader): Markup {
  const fn = findFunction(node.name);
  const draw = (part: Syntax): Markup => typeset(part, reader);
  const form = fn?.typeset && forms[fn.typeset];
  if (form) return form(node.args, draw);
  return called(node, upright(nameOf(node)), reader);
}

const nameOf = ({ name }: CallSyntax): string => findFunction(name)?.typesetName ?? name;

/** A call in the usual form: `head`, which is its name, and the arguments. */
function called({ args }: CallSyntax, head: Markup, reader: Reader): Markup {
  const separator = operator(';', { form: 'infix', class: 'separator' });
  const list = args.map((arg, at) => [at === 0 ? none : separator, typeset(arg, reader)]);
  return row(head, operator('\u2061'), parenthesise(together(list)));
}

/** A formula in its symbols. */
export function formulaMath(node: Syntax): Markup {
  return typeset(node, { name: ({ name }) => symbolMath(name), times: '·' });
}

/**
 * A formula with numbers put in. `shown` gives what stands for a name, number and unit apart, or undefined to keep
 * the symbol; a negative number, and a quantity raised to a power, get parentheses. Products have a cross, since a dot
 * between numbers would read as one of their unit's (883 kN·m × 0.526).
 */
export function numbersMath(
  node: Syntax,
  shown: (name: NameSyntax) => { readonly number: string; readonly unit: string } | undefined,
): Markup {
  const name = (node: NameSyntax, raised?: boolean): Markup => {
    const value = shown(node);
    if (!value) return symbolMath(node.name);
    const { number, unit } = value;
    const loose = number.startsWith('−') || (raised && (unit !== '' || number.includes('×')));
    return loose ? parenthesise(quantity(number, unit)) : quantity(number, unit);
  };
  return typeset(node, { name, times: '×' });
}
