import { type Notebook, type Result, type StatedValue, statedValues, type Value } from '../notebook/index.ts';
import { withTrueMinus, writeDecimals, writeQuantity } from '../units/index.ts';

/**
 * The stated values of a book as a record lists them, a line each: the value in force, what the formula comes to, the
 * difference, the reason, and which lines take it up. `only` keeps those of some lines and columns.
 */
export function statedLines(notebook: Notebook, only?: ReadonlySet<string>): readonly string[] {
  return statedValues(notebook)
    .filter(({ id }) => only?.has(id) ?? true)
    .map((one) => `${placeOf(one)}: ${[...wordsOf(one)].join('; ')}`);
}

/** Where a stated value stands: its line, the side of a check, the row of a column from 1. */
function placeOf({ id, side, row }: StatedValue): string {
  return `${id}${side ? `, ${side}` : ''}${row === undefined ? '' : `, row ${row + 1}`}`;
}

function* wordsOf({ statement, value, computed, difference, apart, feeds }: StatedValue): Iterable<string> {
  const { entry, reason, reasonFor } = statement;
  const read = value && valueText(value);
  yield `stated ${read ?? `“${entry}”, which cannot be read`}${read === undefined || read === entry ? '' : ` (as typed: ${entry})`}`;
  yield `computed ${computedWords(computed)}`;
  if (difference) {
    const { si, unit } = difference;
    yield `difference ${si > 0 ? '+' : ''}${withTrueMinus(writeQuantity(si, unit))}${differenceShare(si, computed)}`;
  }
  for (const { message } of apart) yield `open: ${message}`;
  yield `reason: ${reason.trim() || 'open'}${reasonFor === undefined ? '' : ` (given for ${reasonFor}, to be confirmed)`}`;
  yield feeds.length === 0 ? 'feeds nothing' : `feeds ${feeds.join(', ')}`;
}

/** What a formula comes to in a few words, beside a value stated in its place. */
function computedWords(computed: Result): string {
  switch (computed.status) {
    case 'ok':
      return valueText(computed.value);
    case 'missing':
      return 'blank';
    case 'problem':
    case 'waiting':
    case 'inapplicable':
      return `no value (${computed.problem.message})`;
  }
}

/** The difference as a part of the computed value, where that is not a place on a scale and not zero. */
export function differenceShare(si: number, computed: Result): string {
  if (computed.status !== 'ok' || computed.value.kind !== 'number') return '';
  const { value } = computed;
  if (value.unit.point !== undefined || value.si === 0) return '';
  const percent = (si / Math.abs(value.si)) * 100;
  return ` (${percent > 0 ? '+' : ''}${withTrueMinus(writeDecimals(percent, 1))} %)`;
}

function valueText(value: Value): string {
  if (value.kind === 'number') return withTrueMinus(writeQuantity(value.si, value.unit));
  return value.kind === 'text' ? value.text : value.truth ? 'true' : 'false';
}
