import { html, nothing, type TemplateResult } from 'lit';
import type { Markup } from '../../../markup/index.ts';
import type { SetFormula } from '../../../record/index.ts';
import { math, symbolMath, typesetText } from '../../../record/index.ts';
import { drawMarkup } from '../../style/markup.ts';

/** The lines of a typeset formula. */
export function drawFormula({ lines, equals }: SetFormula, kind: 'symbols' | 'numbers'): TemplateResult {
  return html`<div class="maths ${kind}">
    ${equals ? html`<span class="equals" aria-hidden="true">=</span>` : nothing}
    <div class="lines">${lines.map(
      ({ markup, indent }) =>
        html`<div class="maths-line" .style=${`padding-inline-start: ${indent.toFixed(1)}em`}>${drawMarkup(markup)}</div>`,
    )}</div>
  </div>`;
}

const symbols = new Map<string, Markup>();

/** The symbol of a line. */
export function drawSymbol(name: string): TemplateResult {
  let markup = symbols.get(name);
  if (markup === undefined) {
    markup = math(symbolMath(name));
    symbols.set(name, markup);
  }
  return html`${drawMarkup(markup)}`;
}

/** What a line says somewhere else, in another book or at another time: a formula in symbols where it can be read. */
export function drawSaying(says: 'formula' | 'name' | 'words', text: string, room: number): TemplateResult {
  const set = says === 'formula' ? typesetText(text, room) : undefined;
  if (set) return drawFormula(set, 'symbols');
  return says === 'words' ? html`${text}` : html`<code>${text}</code>`;
}
