import { entries } from './quantity-entries.ts';
import { units } from './quantity-units.ts';

/** Problems of units, of entries, and of the units a book defines. */
export const quantity = { ...units, ...entries };
