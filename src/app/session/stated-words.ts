import type { Notebook, Quantity, StatedHere, Value } from '../../notebook/index.ts';
import { shownQuantity, shownText } from './shown.ts';
import type { UnitsView } from './units-view.ts';

/** Says that a value is stated, why, what its formula comes to, and by how much the two differ. */
export function statedWords(
  notebook: Notebook,
  { side, statement, computed, difference }: StatedHere,
  view: UnitsView,
): string {
  const { registry } = notebook.model;
  const quantity = ({ si, unit }: Quantity): string => shownText(shownQuantity(si, unit, view, registry));
  const words = (value: Value): string =>
    value.kind === 'number' ? quantity(value) : value.kind === 'text' ? value.text : `${value.truth}`;
  const reason = statement.reason.trim() || 'the reason is open';
  const instead = computed.status === 'ok' ? words(computed.value) : 'no value';
  const by = difference ? `, difference ${difference.si > 0 ? '+' : ''}${quantity(difference)}` : '';
  return `${side ? `${side} ` : ''}stated: ${reason}; computed ${instead}${by}`;
}
