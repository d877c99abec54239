import { fail, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';
import { type Book, type BookUnit, type Edit, type Sheet, setSettings } from '../../document/index.ts';

const NOWHERE = { from: 0, to: 0 };

/** What may be a unit or a datum in a text. */
const SYMBOL = /\p{L}[\p{L}\p{N}]*/gu;

/**
 * The edits that give a book the units and datums which sheets of another one use. A symbol that the two books define
 * differently is refused, and so is `$` where it is not the same currency.
 */
export function settingsFor(book: Book, source: Book, sheets: readonly Sheet[]): Outcome<readonly Edit[]> {
  const texts = sheets.flatMap(({ parts }) => parts.filter(({ kind }) => kind !== 'prose').flatMap(textsIn));
  const symbols = new Set(texts.flatMap((text) => text.match(SYMBOL) ?? []));
  const here = book.settings;
  const there = source.settings;
  if (here.currency !== there.currency && texts.some((text) => text.includes('$')))
    return fail(problem('sheets-currency-differs', NOWHERE, { here: here.currency, there: there.currency }));
  const problems: Problem[] = [];
  const added: BookUnit[] = [];
  for (const unit of unitsUsed(there.units, symbols)) {
    const own = here.units.find(({ symbol }) => symbol === unit.symbol);
    if (own === undefined) added.push(unit);
    else if (own.definition.trim() !== unit.definition.trim()) {
      const facts = { symbol: unit.symbol, here: own.definition, there: unit.definition };
      problems.push(problem('sheets-unit-differs', NOWHERE, facts));
    }
  }
  const [first, ...others] = problems;
  if (first) return fail(first, ...others);
  const datums = there.datums.filter((datum) => symbols.has(datum) && !here.datums.includes(datum));
  return succeed([
    ...(added.length > 0 ? [setSettings('units', [...here.units, ...added])] : []),
    ...(datums.length > 0 ? [setSettings('datums', [...here.datums, ...datums])] : []),
  ]);
}

/** The units among the symbols, with those that they are defined by, in the order of their book. */
function unitsUsed(units: readonly BookUnit[], symbols: ReadonlySet<string>): readonly BookUnit[] {
  const used = new Set(symbols);
  // A definition uses only what stands before it.
  for (const { symbol, definition } of units.toReversed())
    if (used.has(symbol)) for (const part of definition.match(SYMBOL) ?? []) used.add(part);
  return units.filter(({ symbol }) => used.has(symbol));
}

/** Fields that hold words, in which nothing is computed. */
const WORDS: ReadonlySet<string> = new Set(['label', 'title', 'note', 'reference', 'reason', 'toLink']);

/** Every text of a value that may say a unit, however deep. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([field, one]) => (WORDS.has(field) ? [] : textsIn(one)));
}
