import { nothing } from 'lit';
import type { Chart, Figure } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';

/** A figure or chart of a sheet, drawn from its values. */
export function draw(_notebook: Notebook, _sheet: string, _part: Figure | Chart): unknown {
  return nothing;
}
