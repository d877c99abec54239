import { html, nothing, type TemplateResult } from 'lit';
import { brokenLink } from '../../../notebook/index.ts';
import { idInWords } from '../../../record/index.ts';
import type { LineContext } from './line-source.ts';
import { statedMargin } from './stated-note.ts';

/** Stands in the margin of a line: that it is to be linked or its link is broken, what of it is stated, and its reference. */
export function lineMargin(
  context: Pick<LineContext, 'session' | 'item' | 'paper'>,
  reference: string,
): TemplateResult {
  const { item, session } = context;
  const toLink = item?.kind === 'input' ? item.row.toLink : undefined;
  const broken = item && brokenLink(item, session.notebook.model.items);
  const note =
    toLink !== undefined
      ? html`<span class="to-link"><b>to be linked</b>: ${toLink}</span>`
      : broken !== undefined
        ? html`<span class="to-link broken"><b>link broken</b>: ${idInWords(broken, session.notebook, item?.sheet ?? '')}</span>`
        : nothing;
  return statedMargin(context, reference, note);
}
