import { html, type TemplateResult } from 'lit';
import type { LineContext } from './line-source.ts';
import { statedMargin } from './stated-note.ts';

/** Stands in the margin of a line: that it is to be linked, what of it is stated, and its reference. */
export function lineMargin(
  context: Pick<LineContext, 'session' | 'item'>,
  reference: string,
): TemplateResult {
  const { item } = context;
  if (item?.kind !== 'input' || item.row.toLink === undefined) return statedMargin(context, reference);
  return html`<span class="clamped"
    ><span class="to-link"><b>to be linked</b>: ${item.row.toLink}</span>${reference}</span
  >`;
}
