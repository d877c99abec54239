import { css, html, LitElement } from 'lit';
import type { Item } from '../../notebook/index.ts';
import { math, symbolMath } from '../../record/index.ts';
import { labelOf, localName, placeOfId } from '../session/places.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { dialogStyles } from './dialog-styles.ts';

const most = 40;

/** Go to any name of the book: type a part of its name or description. */
export class GoToDialog extends LitElement {
  static override properties = { session: { attribute: false }, query: { state: true }, at: { state: true } };
  declare session: Session;
  declare query: string;
  declare at: number;

  static override styles = [
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
      li[aria-selected='true'] {
        background: var(--accent-tint);
      }
      .sheet {
        color: var(--ink-soft);
      }
      math {
        font-family: var(--serif);
      }
      math .v {
        font-style: italic;
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
    this.renderRoot.querySelector('dialog')?.showModal();
  }

  #found(): readonly Item[] {
    const wanted = this.query.trim().toLowerCase();
    const items = [...this.session.notebook.model.items.values()];
    const rank = (item: Item): number => {
      const name = localName(item).toLowerCase();
      if (name === wanted) return 0;
      if (name.startsWith(wanted)) return 1;
      if (labelOf(item).toLowerCase().includes(wanted)) return 2;
      return name.includes(wanted) ? 3 : 4;
    };
    return items
      .map((item) => ({ item, rank: rank(item) }))
      .filter((one) => one.rank < 4)
      .sort((a, b) => a.rank - b.rank)
      .slice(0, most)
      .map((one) => one.item);
  }

  override render() {
    const found = this.#found();
    const title = (key: string) =>
      this.session.notebook.book.sheets.find((sheet) => sheet.key === key)?.title ?? key;
    return html`<dialog aria-label="Go to">
      <input
        autofocus
        role="combobox"
        aria-label="Name or description"
        aria-expanded="true"
        aria-controls="found"
        aria-activedescendant=${`found-${this.at}`}
        placeholder="Name or description"
        .value=${this.query}
        @input=${this.#typed}
        @keydown=${(event: KeyboardEvent) => this.#key(event, found)}
      />
      <ul id="found" role="listbox" aria-label="Names">
        ${found.map(
          (item, at) => html`<li
            id=${`found-${at}`}
            role="option"
            aria-selected=${at === this.at}
            @click=${() => this.#go(item)}
          >
            <span>${drawMarkup(math(symbolMath(localName(item))))}</span>
            <span>${labelOf(item)}</span>
            <span class="sheet">${title(item.sheet)}</span>
          </li>`,
        )}
      </ul>
    </dialog>`;
  }

  #typed(event: Event): void {
    this.query = (event.target as HTMLInputElement).value;
    this.at = 0;
  }

  #key(event: KeyboardEvent, found: readonly Item[]): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      this.at = Math.max(0, Math.min(found.length - 1, this.at + step));
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' }),
      );
    } else if (event.key === 'Enter') {
      const item = found[this.at];
      if (item) this.#go(item);
    }
  }

  #go(item: Item): void {
    // The sheet takes the focus only from nobody who types.
    this.renderRoot.querySelector('input')?.blur();
    this.renderRoot.querySelector('dialog')?.close();
    const place = placeOfId(this.session.notebook, item.id);
    if (place) this.session.goTo(place);
  }
}
