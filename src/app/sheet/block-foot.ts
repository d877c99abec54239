import { css, html, nothing, type TemplateResult } from 'lit';
import type { Rows } from '../../document/index.ts';

/**
 * The foot of a block: what puts a line or something else below it, quietly. `reached`: whether the Tab key comes by
 * behind the last cell of the page; from a line Ctrl+Enter and its menu do the same.
 */
export function drawBlockFoot({ id, rows }: Rows, reached: boolean): TemplateResult {
  const button = (words: string, adds: 'line' | 'anything'): TemplateResult =>
    html`<button
      type="button"
      class="quiet-button add-button"
      tabindex=${reached ? '0' : '-1'}
      aria-keyshortcuts=${adds === 'line' ? 'Control+Enter' : 'Shift+F10'}
      aria-haspopup=${adds === 'anything' ? 'menu' : nothing}
      data-adds=${adds}
      data-subject="foot"
      data-below-part=${id}
      data-below-item=${rows.at(-1)?.id ?? ''}
    >
      ${words}
    </button>`;
  return html`<div class="block-foot" role="row" @keydown=${keepForButton}>
    <div role="gridcell" aria-colindex="1" aria-readonly="true">
      ${button('add a line', 'line')} ${button('add something else', 'anything')}
    </div>
  </div>`;
}

/** What is pressed on a button is for it; all else is for the page. */
function keepForButton(event: KeyboardEvent): void {
  const { key, ctrlKey, altKey, metaKey } = event;
  if (['Enter', ' ', 'Tab'].includes(key) && !ctrlKey && !altKey && !metaKey) event.stopPropagation();
}

/** The look of what adds something: there for whoever looks for it, and for nobody else. */
export const footStyles = css`
  .block-foot {
    display: grid;
    grid-template-columns: var(--margin) minmax(0, 1fr);
  }
  .block-foot > div {
    grid-column: 2;
    padding: 0 12px 0 24px;
  }
  .add-button {
    min-height: 24px;
    margin-inline-end: 14px;
    color: var(--ink-soft);
    font-size: var(--type-small);
    text-decoration: none;
  }
  .add-button::before {
    content: '+ ' / '';
  }
  .add-button:is(:hover, :focus-visible) {
    color: var(--accent);
    text-decoration: underline;
  }
`;
