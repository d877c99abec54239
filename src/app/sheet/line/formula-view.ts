import { html, nothing, type TemplateResult } from 'lit';
import type { Syntax } from '../../../language/index.ts';
import type { Markup } from '../../../markup/index.ts';
import { math, symbolMath } from '../../../record/index.ts';
import { drawMarkup } from '../../style/markup.ts';
import type { SetFormula } from './formula-set.ts';

/** Whether a formula has numbers to put in: one that is a number or a name alone says nothing new. */
export function hasNumbers(node: Syntax): boolean {
  return node.kind !== 'number' && node.kind !== 'text' && node.kind !== 'error' && node.kind !== 'truth';
}

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
