import { css, html, LitElement, nothing } from 'lit';
import { math, symbolMath } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import { type Target, targetsFor } from './go-to-targets.ts';

const most = 40;

/** Go to any name, part or sheet of the book: type a part of its name or of what it is called. */
export class GoToDialog extends LitElement {
  static override properties = { session: { attribute: false }, query: { state: true }, at: { state: true } };
  declare session: Session;
  declare query: string;
  declare at: number;

  static override styles = [
    mathsStyles,
    dialogStyles,
    css`
      input {
        box-sizing: border-box;
        width: 100%;
        padding: 8px 10px;
        border: 1px solid var(--rule-strong);
        border-radius: var(--radius);
        background: none;
        color: inherit;
        font: inherit;
      }
      ul {
        height: 22rem;
        margin: 12px 0 0;
        padding: 0;
        overflow-y: auto;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 8rem 1fr auto;
        gap: 12px;
        padding: 4px 10px;
        cursor: pointer;
      }
      @media (width < 40rem) {
        ul {
          height: min(22rem, 50vh);
        }
        li {
          grid-template-columns: 5rem 1fr;
        }
        li .where {
          grid-column: 2;
        }
      }
      li[aria-selected='true'] {
        background: var(--accent-tint);
        /* Seen only where the system forces its colours. */
        outline: 2px solid transparent;
        outline-offset: -2px;
      }
      .none {
        min-height: 1.4em;
        margin: 8px 10px 0;
        color: var(--ink-soft);
      }
      .label.page,
      .label.part,
      .label.sheet {
        font-weight: 600;
      }
      .where {
        color: var(--ink-soft);
      }
      .none:empty {
        min-height: 0;
        margin: 0;
      }
    `,
  ];

  constructor() {
    super();
    this.query = '';
    this.at = 0;
  }

  show(): void {
    this.query = '';
    this.at = 0;
    this.requestUpdate();
    showModal(this.renderRoot.querySelector('dialog'));
  }

  override render() {
    const found = targetsFor(this.query, this.session.notebook).slice(0, most);
    const title = (key: string) =>
      this.session.notebook.book.sheets.find((sheet) => sheet.key === key)?.title ?? key;
    return html`<dialog aria-label="Go to">
      <input
        autofocus
        role="combobox"
        aria-label="Name, description or title"
        aria-expanded=${found.length > 0}
        aria-controls="found"
        aria-activedescendant=${found.length > 0 ? `found-${this.at}` : nothing}
        placeholder="Name, description or title"
        .value=${this.query}
        @input=${this.#typed}
        @keydown=${(event: KeyboardEvent) => this.#key(event, found)}
      />
      <p class="none" role="status">${found.length === 0 ? `Nothing in this book is called “${this.query.trim()}”.` : ''}</p>
      <ul id="found" role="listbox" aria-label="Names">
        ${found.map(
          (target, at) => html`<li
            id=${`found-${at}`}
            role="option"
            aria-selected=${at === this.at}
            @click=${() => this.#go(target)}
          >
            <span>${target.name === '' ? nothing : drawMarkup(math(symbolMath(target.name)))}</span>
            <span class=${`label ${target.kind}`}>${target.label}</span>
            <span class="where">${target.kind === 'sheet' || target.kind === 'page' ? target.kind : title(target.sheet)}</span>
          </li>`,
        )}
      </ul>
    </dialog>`;
  }

  #typed(event: Event): void {
    this.query = (event.target as HTMLInputElement).value;
    this.at = 0;
  }

  #key(event: KeyboardEvent, found: readonly Target[]): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      this.at = Math.max(0, Math.min(found.length - 1, this.at + step));
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' }),
      );
    } else if (event.key === 'Enter') {
      // It is not for what has the focus once the dialog is closed.
      event.preventDefault();
      const target = found[this.at];
      if (target) this.#go(target);
    }
  }

  #go(target: Target): void {
    this.renderRoot.querySelector('dialog')?.close();
    const place = target.place();
    if (target.overview) this.session.showOverview(target.overview);
    else if (place) this.session.jumpTo(place);
    else this.session.showSheet(target.sheet);
  }
}
