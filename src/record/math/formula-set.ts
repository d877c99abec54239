import { type CheckedFormula, parseFormula, type Syntax } from '../../language/index.ts';
import { element, type Markup, writeMarkup } from '../../markup/index.ts';
import type { WorkedFormula } from '../numbers/worked-formula.ts';
import type { BranchNote } from '../numbers/working.ts';
import { quantityText } from '../values/format-quantity.ts';
import { formulaLines } from './formula-lines.ts';
import type { FormulaLine, Piece } from './formula-pieces.ts';
import type { TextOf } from './formula-width.ts';
import { levelSign, math, power, row, upright, words } from './markup.ts';
import { formulaMath, numbersMath } from './typeset.ts';

/** A formula typeset: on how many lines, and how wide (in em of its type). */
export interface SetFormula {
  readonly lines: readonly { readonly markup: Markup; readonly indent: number }[];
  readonly width: number;
  /** Whether an equals sign leads on to it: what is true or false equals no number. */
  readonly equals?: boolean;
}

const set = new WeakMap<CheckedFormula, Map<number, SetFormula>>();

/** The typeset form of a formula for lines of `most` em; made once for each formula. */
export function typesetFormula(checked: CheckedFormula, most: number): SetFormula {
  const byWidth = set.get(checked) ?? new Map<number, SetFormula>();
  set.set(checked, byWidth);
  const known = byWidth.get(most);
  if (known) return known;
  const made = setLines(formulaLines(checked.syntax, most), formulaMath);
  byWidth.set(most, made);
  return made;
}

/** The typeset form of a formula that is none of the book, by its text; undefined where it cannot be read. */
export function typesetText(text: string, most: number): SetFormula | undefined {
  const { syntax, problems } = parseFormula(text);
  return problems.length > 0 || text.trim() === ''
    ? undefined
    : setLines(formulaLines(syntax, most), formulaMath);
}

/**
 * A formula with its numbers put in. Undefined where that says nothing new: of names without a value, and of what is
 * looked up or chosen and nothing else, whose number is the result.
 */
export function typesetNumbers(
  checked: CheckedFormula,
  most: number,
  { syntax, shown }: WorkedFormula,
): SetFormula | undefined {
  const isFound = checked.syntax.kind === 'call' && ['name', 'text', 'number', 'truth'].includes(syntax.kind);
  if (isFound) return undefined;
  const put = setPut(checked.syntax, syntax, most, shown);
  return put && { ...put, equals: checked.typed.type.kind !== 'truth' };
}

/** What chooses among formulas, as it is written and with its numbers, unless these say nothing new. */
export function typesetBranch(
  { asked, put }: BranchNote,
  most: number,
  { shown }: WorkedFormula,
): { readonly symbols: SetFormula; readonly numbers?: SetFormula | undefined } {
  return {
    symbols: setLines(formulaLines(asked, most), formulaMath),
    numbers: setPut(asked, put, most, shown),
  };
}

/** A formula with its numbers put in; undefined where it is set as without them. */
function setPut(
  written: Syntax,
  put: Syntax,
  most: number,
  shown: WorkedFormula['shown'],
): SetFormula | undefined {
  const set = setNumbers(put, most, shown);
  const bare = setNumbers(written, most, () => undefined);
  return set.lines.every(({ markup }, at) => sameMarkup(markup, bare.lines[at]?.markup)) ? undefined : set;
}

function setNumbers(node: Syntax, most: number, shown: WorkedFormula['shown']): SetFormula {
  const textOf: TextOf = (name) => {
    const value = shown(name);
    if (!value) return name.name;
    return value.number.startsWith('−') ? `(${quantityText(value)})` : quantityText(value);
  };
  return setLines(formulaLines(node, most, textOf), (one) => numbersMath(one, shown), '×');
}

function setLines(lines: readonly FormulaLine[], draw: (node: Syntax) => Markup, times = '·'): SetFormula {
  return {
    lines: lines.map(({ indent, pieces }) => ({
      indent,
      markup: math(...pieces.map((piece) => drawPiece(piece, draw, times))),
    })),
    width: Math.max(...lines.map(({ indent, width }) => indent + width)),
  };
}

function drawPiece(piece: Piece, draw: (node: Syntax) => Markup, times: string): Markup {
  switch (piece.kind) {
    case 'node':
      return draw(piece.node);
    case 'sign':
      return levelSign(piece.text === '·' ? times : piece.text, piece.form);
    case 'raised':
      return power(levelSign(piece.text, 'postfix'), row(draw(piece.node)));
    case 'lowered':
      return element('msub', {}, levelSign(piece.text, 'postfix'), row(draw(piece.node)));
    case 'words':
      return words(piece.text);
    case 'name':
      return upright(piece.text);
  }
}

const sameMarkup = (a: Markup, b: Markup | undefined): boolean =>
  b !== undefined && writeMarkup(a) === writeMarkup(b);
