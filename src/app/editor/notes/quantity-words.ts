import { describeType, type Type } from '../../../language/index.ts';
import type { Value } from '../../../notebook/index.ts';
import { formatQuantity, quantityText } from '../../../record/index.ts';
import { quantityName } from '../../../units/index.ts';
import type { Session } from '../../session/session.ts';

/** A value as the lines below show it: `12.3 kN`, `“clay”`, `true`. */
export function valueWords(value: Value, { notebook, units }: Session): string {
  if (value.kind === 'text') return `“${value.text}”`;
  if (value.kind === 'truth') return value.truth ? 'true' : 'false';
  return quantityText(formatQuantity(value.si, value.unit, units, notebook.model.registry));
}

/** What a type is called: `a force`, `a plain number`; empty where it has no name of its own. */
export function typeWords(type: Type, { notebook }: Session): string {
  if (type.kind === 'unknown') return '';
  if (type.kind !== 'number') return describeType(type, notebook.model.registry);
  const name = quantityName(type.dimension, type.angle);
  return name === 'a quantity' ? '' : name;
}
