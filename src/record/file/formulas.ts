import { changeParts, type NameSyntax, printSyntax, type Syntax } from '../../language/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { rowsInWords } from '../../notebook/index.ts';
import { type SetFormula, typesetBranch } from '../math/formula-set.ts';
import { math } from '../math/markup.ts';
import { symbolMath } from '../math/symbol.ts';
import type { GoverningRow } from '../numbers/governing-row.ts';
import type { LineNumbers, RowNumbers } from '../numbers/numbers-put-in.ts';
import type { WorkedFormula } from '../numbers/worked-formula.ts';
import type { BranchNote } from '../numbers/working.ts';
import { type PrintedQuantity, quantityText } from '../values/format-quantity.ts';

/** How wide a formula is set, in em of its type: what a page of A4 has beside the results. */
export const FORMULA_WIDTH = 30;

/** As many steps of half an em formulas are indented by a rule of their own. */
export const MOST_INDENT = 40;

/** Rounding to steps is set between signs that not every font has: without them another formula would be read. */
const FENCED = /\b(?:INT|FLOOR|CEILING)\(/i;

/** A formula as text behind its typeset form, for readers that have no mathematics; style sheets hide it where the form is sure. */
const inText = (text: string): Markup =>
  element('code', { class: FENCED.test(text) ? 'plain fenced' : 'plain' }, text);

/** A symbol, as mathematics and as it is typed. */
export function symbol(name: string): Markup {
  return element('span', { class: 'symbol' }, math(symbolMath(name)), inText(name));
}

/** A typeset formula with the same as text. */
export function formulaLines(
  { lines, equals }: SetFormula,
  kind: 'symbols' | 'numbers',
  text: string,
): Markup {
  return element(
    'div',
    { class: `maths ${kind}` },
    lines.map(({ markup, indent }, at) => {
      const step = Math.min(Math.round(indent * 2), MOST_INDENT);
      return element(
        'div',
        { class: step === 0 ? undefined : `in${step}` },
        at === 0 && equals ? '= ' : none,
        markup,
      );
    }),
    inText(text),
  );
}

/** A formula that could not be read, as it is typed. */
export function writtenFormula(text: string): Markup {
  return element('p', {}, element('code', {}, text));
}

/** The numbers put into the formula of a line, below it. */
export function numbersPutIn({ set, worked }: LineNumbers): Content {
  return [set ? formulaLines(set, 'numbers', textOf(worked.syntax, worked)) : none, notes(worked)];
}

/** The numbers put into the formula of a column for one row, and what they come to there. */
export function rowNumbersPutIn(found: RowNumbers): Content {
  const { row, governing, computed, stated } = found;
  return [
    element('p', { class: 'quiet' }, `row ${row + 1}`, governing ? whyRow(governing) : ''),
    numbersPutIn(found),
    computed === undefined ? none : element('p', { class: 'numbers' }, `= ${computed}`),
    stated === undefined ? none : element('p', { class: 'numbers' }, `stated: ${stated}`),
  ];
}

/** Why a row is shown and no other. */
function whyRow({ reader, same = [] }: GoverningRow): Content {
  if (!reader) return ', the first';
  const { name, does } = reader;
  if (does === 'counts') return [', which ', symbol(name), ' counts'];
  const others = same.length === 0 ? '' : `, as ${rowsInWords(same)} ${same.length === 1 ? 'does' : 'do'}`;
  return [', which gives ', symbol(name), others];
}

function notes(worked: WorkedFormula): Content {
  if (worked.notes.length === 0) return none;
  const list = worked.notes.map((note) =>
    element('li', {}, typeof note === 'string' ? note : branchNote(note, worked)),
  );
  return element('ul', { class: 'quiet' }, list);
}

/** A condition as it is written, with its numbers, and whether it is so; or what chooses, and what it is. */
function branchNote(note: BranchNote, worked: WorkedFormula): Content {
  const { symbols, numbers } = typesetBranch(note, FORMULA_WIDTH, worked);
  const isChoice = note.answer === 'chosen';
  return [
    isChoice ? 'chosen by ' : none,
    formulaLines(symbols, 'symbols', printSyntax(note.asked)),
    numbers ? [': ', formulaLines(numbers, 'numbers', textOf(note.put, worked))] : none,
    isChoice ? none : ` ${note.answer}`,
  ];
}

/** A formula with its numbers put in, as text. */
function textOf(node: Syntax, { shown }: WorkedFormula): string {
  const put = (part: Syntax): Syntax => {
    // The power of a value is that of all of it: 262 m^2 is no square of 262 m.
    if (part.kind === 'power' && part.base.kind === 'name' && isOfParts(shown(part.base)))
      return {
        ...part,
        base: { kind: 'group', inner: put(part.base), from: part.base.from, to: part.base.to },
        exponent: put(part.exponent),
      };
    const value = part.kind === 'name' ? shown(part) : undefined;
    if (part.kind !== 'name' || !value) return changeParts(part, put);
    return { ...part, name: quantityText(value) } satisfies NameSyntax;
  };
  return printSyntax(put(node));
}

/** Whether a value is written with more than digits: a sign, a power of ten, a unit. */
function isOfParts(value: PrintedQuantity | undefined): boolean {
  return value !== undefined && !/^[\d.,\s]+$/.test(quantityText(value));
}
