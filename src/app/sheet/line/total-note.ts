import { html, nothing, type TemplateResult } from 'lit';
import type { Item, Value } from '../../../notebook/index.ts';
import { printedRowsWords } from '../../view-model/printed-rows.ts';
import type { LineContext } from './line-source.ts';

/** Says below a line that is the sum of a column where the rows, as the page rounds them, add to something else. */
export function totalNote({ session, item }: LineContext, value: Value): TemplateResult | typeof nothing {
  const column = item && columnSummed(item);
  if (column === undefined || value.kind !== 'number') return nothing;
  const words = printedRowsWords(session.notebook, column, session.units, value);
  return words === undefined ? nothing : html`<p class="sentence rounded">${words}</p>`;
}

/** The column of which a formula is the plain sum and nothing else. */
export function columnSummed(item: Item): string | undefined {
  if (item.kind !== 'formula' || item.stated) return undefined;
  const { typed } = item.checked;
  if (typed.kind !== 'call' || typed.fn.name !== 'SUM') return undefined;
  const [summed, ...more] = typed.args;
  return summed?.kind === 'column' && more.length === 0 ? summed.id : undefined;
}
