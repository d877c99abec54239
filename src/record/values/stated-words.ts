import type { Notebook, Quantity, Result, StatedHere, Value } from '../../notebook/index.ts';
import { isBareNumber, unitInPrint } from '../../units/index.ts';
import { differenceShare } from '../stated-lines.ts';
import { formatQuantity, quantityText } from './format-quantity.ts';
import { problemInWords } from './persons-words.ts';
import type { UnitsView } from './units-view.ts';

/** What a person reads of a value stated in place of a computed one. */
export interface StatedWords {
  /** The stated value as it is understood, or the entry that cannot be read. */
  readonly stated: string;
  /** The entry as it was typed, where the value is shown otherwise. */
  readonly typed?: string;
  /** The reason; empty while it is open. */
  readonly reason: string;
  /** What the reason was given for, where it is still to be confirmed for this value. */
  readonly reasonFor?: string;
  /** What the formula comes to, or that it has no value. */
  readonly computed: string;
  /** Stated less computed, with its share of the computed value; absent where that is no number. */
  readonly difference?: string;
}

/** Why a formula in place of which a value is stated fails; undefined where it does not. */
export function whyNotComputed(
  notebook: Notebook,
  { computed }: StatedHere,
  sheet: string,
): string | undefined {
  return 'problem' in computed ? problemInWords(computed.problem, notebook, sheet).message : undefined;
}

/** A stated value in words, in the units shown. */
export function statedWords(
  notebook: Notebook,
  { statement, value, computed, difference }: StatedHere,
  view: UnitsView,
): StatedWords {
  const stated = value ? wordsOfValue(notebook, value, view) : `“${statement.entry}”`;
  const by = difference && differenceWords(notebook, difference, computed, view);
  return {
    stated,
    ...(isOtherwise(notebook, statement.entry, value, view) && {
      typed: entryInUnit(statement.entry, value),
    }),
    reason: statement.reason.trim(),
    ...(statement.reasonFor !== undefined && { reasonFor: statement.reasonFor }),
    computed: computedInWords(notebook, computed, view),
    ...(by !== undefined && { difference: by }),
  };
}

/** An entry beside a value in another unit: a number alone with the unit that it was read in. */
function entryInUnit(entry: string, value: Value | undefined): string {
  const unit = value?.kind === 'number' && isBareNumber(entry) ? value.unit.text : '';
  return unit === '' || unit === '-'
    ? entry
    : quantityText({ number: entry.trim(), unit: unitInPrint(unit) });
}

/** A value as the page shows it, number and unit in one. */
export function wordsOfValue({ model }: Notebook, value: Value, view: UnitsView): string {
  if (value.kind === 'number')
    return quantityText(formatQuantity(value.si, value.unit, view, model.registry));
  return value.kind === 'text' ? value.text : `${value.truth}`;
}

/** What a formula comes to, in words beside the value that stands in its place. */
export function computedInWords(notebook: Notebook, computed: Result, view: UnitsView): string {
  return computed.status === 'ok' ? wordsOfValue(notebook, computed.value, view) : 'no value';
}

/** By how much a stated value differs from the computed one: in the unit shown, and per cent of the computed one. */
export function differenceWords(
  notebook: Notebook,
  difference: Quantity,
  computed: Result,
  view: UnitsView,
): string {
  if (difference.si === 0) return 'none';
  const sign = difference.si > 0 ? '+' : '';
  return `${sign}${wordsOfValue(notebook, difference, view)}${differenceShare(difference.si, computed)}`;
}

/** Whether an entry says more than the value shown beside it: another unit, other digits. */
function isOtherwise(notebook: Notebook, entry: string, value: Value | undefined, view: UnitsView): boolean {
  if (value?.kind !== 'number') return false;
  const { number, unit } = formatQuantity(value.si, value.unit, view, notebook.model.registry);
  const plain = (text: string): string => text.replace(/[\s\u202f\u00a0,·*()-]/g, '').replace('−', '');
  return plain(entry) !== plain(number) && plain(entry) !== plain(number + unit);
}
