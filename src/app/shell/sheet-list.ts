import { css, html, LitElement, nothing } from 'lit';
import type { Sheet } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { sheetStates, stateWords } from './sheet-states.ts';

/** The sheets of the book by group, each with its state. */
export class SheetList extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  static override styles = css`
    :host {
      display: block;
      padding: 24px 12px;
      overflow-y: auto;
    }
    h2 {
      margin: 20px 12px 6px;
      font-size: 12px;
      font-weight: 600;
      letter-spacing: 0.06em;
      color: var(--ink-soft);
    }
    .overview {
      margin-block-end: 12px;
    }
    ul {
      margin: 0;
      padding: 0;
      list-style: none;
    }
    button {
      display: flex;
      justify-content: space-between;
      align-items: baseline;
      gap: 8px;
      width: 100%;
      padding: 6px 12px;
      border: 0;
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
      text-align: start;
      cursor: pointer;
    }
    button:hover {
      background: color-mix(in srgb, var(--paper) 50%, transparent);
    }
    button[aria-current='page'] {
      background: var(--paper);
      font-weight: 600;
    }
    button:focus-visible {
      outline: 2px solid var(--accent);
      outline-offset: -2px;
    }
    .state {
      font-size: 12.5px;
      font-weight: 400;
      color: var(--ink-soft);
      white-space: nowrap;
    }
    .bad {
      color: var(--bad);
      font-weight: 600;
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'book' || kind === 'place', 'after');
  }

  override render() {
    const { book } = this.session.notebook;
    const groups = new Map<string, Sheet[]>();
    for (const sheet of book.sheets)
      groups.set(sheet.group ?? '', [...(groups.get(sheet.group ?? '') ?? []), sheet]);
    const states = sheetStates(this.session.notebook);
    return html`<nav aria-label="Sheets">
      <button
        class="overview"
        aria-current=${this.session.overview ? 'page' : 'false'}
        @click=${() => this.session.showOverview()}
      >
        All checks
      </button>
      ${[...groups].map(
        ([group, sheets]) => html`${group === '' ? nothing : html`<h2>${group}</h2>`}
          <ul>
            ${sheets.map((sheet) => this.#entry(sheet, stateWords(states.get(sheet.key) ?? none)))}
          </ul>`,
      )}
    </nav>`;
  }

  #entry(sheet: Sheet, state: string) {
    const bad = state !== '' && state !== 'holds';
    return html`<li>
      <button
        aria-current=${!this.session.overview && this.session.sheet === sheet.key ? 'page' : 'false'}
        @click=${() => this.session.showSheet(sheet.key)}
      >
        <span>${sheet.title || sheet.key}</span>
        <span class="state ${bad ? 'bad' : ''}">${state}</span>
      </button>
    </li>`;
  }
}

const none = { problems: 0, failing: 0, checks: 0 };
