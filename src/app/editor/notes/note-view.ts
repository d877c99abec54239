import { css, html, nothing, type TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import type { Fix } from '../../../diagnostics/index.ts';
import { drawSign } from '../../style/signs.ts';
import { fixWords, type Note, takeable } from './note.ts';

/**
 * Draws the line below; `take` carries out a remedy or the offer. The first of them has the key Alt+Enter. `remarks` say why
 * what is typed was refused: where that is what the line says already, it insists on it, and nothing else has to.
 */
export function drawNote(
  note: Note | undefined,
  take: (what: Fix | 'offer') => void,
  remarks?: readonly string[],
): TemplateResult {
  const isSign = note?.kind === 'problem' || note?.kind === 'refused' || note?.kind === 'warning';
  // Named by its id from the field, so that it is read with it; a status, so that its changes are read too.
  const said = note && sentenceOf(note);
  const insists = said !== undefined && remarks?.includes(said) === true;
  const more = insists ? remarks.filter((one) => one !== said) : [];
  // Another element where it insists, so that it is read once more.
  return html`${keyed(
    insists,
    html`<div id="note" class="note ${note?.kind ?? 'none'}${insists ? ' insists' : ''}" role=${insists ? 'alert' : 'status'}>
    ${isSign ? drawSign(note.kind === 'warning' ? 'warning' : 'problem') : nothing}
    <div>
      ${note ? html`<span class="words">${note.text}</span>` : nothing}${
        note?.hint === undefined ? nothing : html`<span class="hint">; ${note.hint}</span>`
      }${more.map((one) => html`<span class="hint">. ${one}</span>`)}
      ${(note ? takeable(note) : []).map(
        (one, index) => html`<button type="button" tabindex="-1" @click=${() => take(one)}>
          ${index === 0 ? html`<kbd>Alt+Enter</kbd>: ` : nothing}${one === 'offer' ? note?.offer : fixWords(one)}
        </button> `,
      )}
    </div>
  </div>`,
  )}`;
}

function sentenceOf({ text, hint }: Note): string {
  return hint === undefined ? text : `${text}; ${hint}`;
}

/** Whether the line below a field says why what is typed there was refused. */
export function isRefusalSaid(field: ParentNode): boolean {
  return field.querySelector('.note.insists') !== null;
}

/** The look of the line below. */
export const noteStyles = css`
  .note {
    display: flex;
    gap: 7px;
    align-items: baseline;
    max-width: 620px;
    padding: 5px 9px 6px;
    color: var(--ink-soft);
    font: 400 13px/1.35 var(--text);
    text-align: left;
    white-space: normal;
  }
  .note.none {
    display: none;
  }
  .note.insists {
    border: 1px solid var(--bad);
    border-inline-start-width: 4px;
    border-radius: var(--radius);
  }
  .note > div {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .note.result .words {
    color: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  .note.problem .words,
  .note.refused .words {
    color: var(--bad);
  }
  .note.warning .words {
    color: var(--warn);
  }
  .note .hint {
    color: var(--ink);
  }
  .note .sign {
    flex: none;
    align-self: start;
    width: 13px;
    height: 13px;
    margin-top: 2px;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
  }
  .note .sign.problem {
    color: var(--bad);
  }
  .note .sign.warning {
    color: var(--warn);
  }
  .note button {
    margin-inline-start: 6px;
    padding: 0;
    border: 0;
    background: none;
    color: var(--accent);
    font: inherit;
    text-align: left;
    text-decoration: underline;
    text-decoration-color: color-mix(in srgb, currentColor 40%, transparent);
    text-underline-offset: 3px;
    cursor: pointer;
  }
  .note button:hover {
    text-decoration-color: currentColor;
  }
  .note kbd {
    font: inherit;
    font-weight: 600;
  }
`;
