import { html, nothing, type TemplateResult } from 'lit';
import { type StatedHere, statedIn } from '../../../notebook/index.ts';
import { statedWords, whyNotComputed } from '../../../record/index.ts';
import { drawSign } from '../../style/signs.ts';
import type { LineContext } from './line-source.ts';
import { marginReference } from './remembered.ts';

type Told = Pick<LineContext, 'session' | 'item'>;

/** What is stated of a line: its value, or the sides of a check. */
function statedOfLine({ session, item }: Told): readonly StatedHere[] {
  return item?.kind === 'formula' ? statedIn(session.notebook, item) : [];
}

/** Says below a line in place of what a value is stated, and by how much the two differ; why a formula fails is a remark. */
export function statedNote(context: Told): TemplateResult | typeof nothing {
  const stated = statedOfLine(context);
  if (stated.length === 0) return nothing;
  const { notebook, units } = context.session;
  return html`${stated.map((one) => {
    const { stated: value, typed, computed, difference } = statedWords(notebook, one, units);
    const side = one.side
      ? html`${one.side} stated ${value}${typed === undefined ? '' : ` (as typed: ${typed})`}, `
      : nothing;
    const written = one.side || typed === undefined ? nothing : html`stated as ${typed}, `;
    const by = difference === undefined ? nothing : html`, difference ${difference}`;
    const failed = whyNotComputed(notebook, one, context.item?.sheet ?? '');
    return html`<p class="sentence stated${failed === undefined ? '' : ' failed'}">
      ${failed === undefined ? nothing : drawSign('warning', 'remark')}<span
        >${side}${written}<span class="computed">computed ${computed}</span>${by}${failed === undefined ? nothing : html`: ${failed}`}</span
      >
    </p>`;
  })}`;
}

/**
 * Stands in the margin of a line of which a value is stated: that it is, why, and the source of its formula behind it;
 * `first` stands before all that.
 */
export function statedMargin(
  context: Told & Pick<LineContext, 'paper'>,
  reference: string,
  first: TemplateResult | typeof nothing = nothing,
): TemplateResult {
  const stated = statedOfLine(context);
  if (stated.length === 0) {
    const { words, kind } = context.paper ? { words: reference } : marginReference(reference);
    if (kind === undefined) return html`<span class="clamped">${first}${words}</span>`;
    return html`<span class="clamped short">${first}${words}</span> <span class="of-kind">${kind}</span>`;
  }
  return html`<span class="clamped"
    >${first}${stated.map(({ side, statement }) => {
      const reason = statement.reason.trim();
      return html`<span class="stated-reason"
        ><b>${side ? `${side} ` : ''}stated</b>${reason === '' ? html`, <i>reason open</i>` : html`: ${reason}`}${
          statement.reasonFor === undefined
            ? nothing
            : html`, <i>given for ${statement.reasonFor}, to be confirmed</i>`
        }</span
      >`;
    })}${reference === '' ? nothing : html`<span class="of-formula">formula: ${reference}</span>`}</span
  >`;
}
