import type { Item, Notebook } from '../../notebook/index.ts';
import type { Checked, CheckState } from '../../review/index.ts';
import type { Unit } from '../../units/index.ts';
import { differenceShare } from '../stated-lines.ts';
import { displayUnit, formatQuantity, quantityText } from './format-quantity.ts';
import { resultText } from './result-text.ts';
import type { UnitsView } from './units-view.ts';

/** What a person reads of how far something has come in checking. */
export const checkStateWords: Readonly<Record<CheckState, string>> = {
  'not checked': 'not checked',
  agrees: 'agrees',
  differs: 'differs',
  'not comparable': 'cannot be compared',
  seen: 'seen at its source',
  stale: 'stale',
  idle: 'does not apply',
};

/** The value of a line or cell in a few words, in the units shown. */
export function checkedValue(notebook: Notebook, { item, row }: Checked, view: UnitsView): string {
  if (row === undefined || !('table' in item)) return quantityText(resultText(notebook, item, view));
  const column = notebook.column(item.id);
  const read = column.status === 'ok' && row < column.reading.length ? column.reading.at(row) : undefined;
  if (column.status !== 'ok' || read?.status !== 'ok') return 'no value';
  if (typeof read.value !== 'number') return String(read.value);
  return quantityText(formatQuantity(read.value, column.unit, view, notebook.model.registry));
}

/** The unit that a bare hand value is in: the one the result is shown in; '' for texts, verdicts and plain numbers. */
export function unitByHand(notebook: Notebook, item: Item, view: UnitsView): Unit | undefined {
  if (item.kind === 'formula' && item.row.kind === 'check') return undefined;
  if (item.type.kind !== 'number' && item.type.kind !== 'point') return undefined;
  const unit = displayUnit(notebook.unitOf(item.id), view, notebook.model.registry);
  return unit.text === '' || unit.text === '-' || unit.point === 'date' ? undefined : unit;
}

/** Hand value less result, with its share; '' where that is no number. */
export function apartWords(notebook: Notebook, { verdict }: Checked, view: UnitsView): string {
  if (verdict?.kind !== 'agrees' && verdict?.kind !== 'differs') return '';
  const { difference, result } = verdict;
  if (!difference || result.kind !== 'number') return '';
  const amount = quantityText(formatQuantity(difference.si, difference.unit, view, notebook.model.registry));
  const sign = difference.si > 0 ? '+' : '';
  return `${sign}${amount}${differenceShare(difference.si, { status: 'ok', value: result })}`;
}
