import { html, nothing, type TemplateResult } from 'lit';
import type { Table } from '../../../document/index.ts';

/** What adds a row or a column at the foot of a table of so many rows: no row where a series makes them. */
export function drawTableAdditions({ id, length }: Table, rows: number): TemplateResult {
  const button = (words: string, adds: 'row' | 'column', item: string): TemplateResult =>
    html`<button
      type="button"
      class="quiet-button add-button"
      tabindex="-1"
      aria-keyshortcuts=${adds === 'row' ? 'Control+Enter' : 'Shift+F10'}
      data-adds=${adds}
      data-below-part=${id}
      data-below-item=${item}
    >
      ${words}
    </button>`;
  return html`${length === undefined ? nothing : button('add a row', 'row', rows === 0 ? 'head' : `r${rows - 1}`)}
  ${button('add a column', 'column', 'head')}`;
}
