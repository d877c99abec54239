import { html, nothing, type TemplateResult } from 'lit';
import type { Value } from '../../../notebook/index.ts';
import { columnSummed, printedRowsWords } from '../../../record/index.ts';
import type { LineContext } from './line-source.ts';

/** Says below a line that is the sum of a column where the rows, as the page rounds them, add to something else. */
export function totalNote({ session, item }: LineContext, value: Value): TemplateResult | typeof nothing {
  const column = item && columnSummed(item);
  if (column === undefined || value.kind !== 'number') return nothing;
  const words = printedRowsWords(session.notebook, column, session.units, value);
  return words === undefined ? nothing : html`<p class="sentence rounded">${words}</p>`;
}
