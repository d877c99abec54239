import { css, html, LitElement, nothing } from 'lit';
import { aboutsOf, type Sheet } from '../../document/index.ts';
import { groupedSheets, sheetStates, stateWords } from '../../record/index.ts';
import type { SheetDialog } from '../dialogs/sheet-dialog.ts';
import { duplicateSheet, moveSheetBy } from '../editing/sheets/sheet-edits.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import type { BookStore } from '../storage/book-store.ts';
import { drawSign } from '../style/signs.ts';
import { type OverviewPart, overviewTitles } from '../view-model/page-view.ts';
import type { SheetAction, SheetListMenu } from './sheet-list-menu.ts';

/** The sheets of the book by group, each with its state. */
export class SheetList extends LitElement {
  static override properties = { session: { attribute: false }, store: { attribute: false } };
  declare session: Session;
  /** The books that sheets can be brought from. */
  declare store: BookStore;

  static override styles = css`
    :host {
      display: block;
      padding: 24px 6px 24px 12px;
      overflow-y: auto;
    }
    h2 {
      margin: 20px 12px 6px;
      font-size: 12px;
      font-weight: 600;
      letter-spacing: 0.06em;
      color: var(--ink-soft);
    }
    .overview:not(:has(+ .overview)) {
      margin-block-end: 12px;
    }
    ul {
      margin: 0;
      padding: 0;
      list-style: none;
    }
    button {
      display: flex;
      /* Beside its name where there is room for both, else below it. */
      flex-wrap: wrap;
      justify-content: space-between;
      align-items: baseline;
      gap: 0 8px;
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
    li {
      display: grid;
      grid-template-columns: minmax(0, 1fr) 24px;
      border-radius: var(--radius);
    }
    li > button:hover {
      background: none;
    }
    li:hover {
      background: color-mix(in srgb, var(--paper) 50%, transparent);
    }
    li:has([aria-current='page']) {
      background: var(--paper);
    }
    button[data-sheet] {
      padding-inline-end: 2px;
    }
    button[data-sheet] > span:first-child {
      min-width: 0;
    }
    .add {
      margin-block-start: 16px;
      color: var(--ink-soft);
      font-size: 14px;
    }
    .menu-button {
      align-items: center;
      justify-content: center;
      padding: 0;
      color: var(--ink-soft);
      opacity: 0;
    }
    li:is(:hover, :focus-within) .menu-button {
      opacity: 1;
    }
    .menu-button:hover {
      color: var(--ink);
    }
    .sign {
      width: 14px;
      height: 14px;
      fill: none;
      stroke: currentcolor;
      stroke-width: 2.4;
      stroke-linecap: round;
    }
    @media (forced-colors: active) {
      .overview[aria-current='page'],
      li:has([aria-current='page']) {
        outline: 1px solid;
      }
    }
    @media (max-width: 1280px) {
      :host {
        padding-inline: 8px 4px;
      }
      h2 {
        margin-inline: 8px;
      }
      button {
        padding-inline: 8px;
      }
    }
    @media (hover: none) {
      .menu-button {
        opacity: 1;
      }
    }
    .state {
      font-size: 12.5px;
      font-weight: 400;
      color: var(--ink-soft);
      max-width: 100%;
    }
    .bad {
      color: var(--bad);
      font-weight: 600;
    }
  `;

  constructor() {
    super();
    new SessionController(
      this,
      ({ kind }) => kind === 'book' || kind === 'values' || kind === 'place',
      'after',
    );
  }

  override render() {
    const { book } = this.session.notebook;
    const groups = groupedSheets(book);
    const states = sheetStates(this.session.notebook);
    return html`<nav aria-label="Sheets">
      <button
        class="overview"
        aria-current=${isList(this.session.overview) ? 'page' : 'false'}
        @click=${() => this.#show(() => this.session.showOverview('checks'))}
      >
        ${overviewTitles.checks}
      </button>
      ${aboutsOf(book).some(({ about }) => about) ? this.#pageOf('about') : nothing}
      ${this.#pageOf('sources')}
      ${this.#pageOf('origin')}
      ${this.#pageOf('checking')}
      ${this.#pageOf('signing')}
      ${[...groups].map(
        ([group, sheets]) => html`${group === '' ? nothing : html`<h2>${group}</h2>`}
          <ul>
            ${sheets.map((sheet) => this.#entry(sheet, stateWords(states.get(sheet.key) ?? none, this.session.computing)))}
          </ul>`,
      )}
      <button class="add" @click=${() => this.#ask('add', undefined)}>Add a sheet</button>
      <quay-sheet-list-menu></quay-sheet-list-menu>
    </nav>
    <quay-sheet-dialog .session=${this.session} .store=${this.store}></quay-sheet-dialog>`;
  }

  #pageOf(part: 'about' | 'sources' | 'origin' | 'checking' | 'signing') {
    return html`<button
      class="overview"
      aria-current=${this.session.overview === part ? 'page' : 'false'}
      @click=${() => this.#show(() => this.session.showOverview(part))}
    >
      ${overviewTitles[part]}
    </button>`;
  }

  #entry(sheet: Sheet, { words, bad }: ReturnType<typeof stateWords>) {
    return html`<li>
      <button
        data-sheet=${sheet.key}
        aria-current=${!this.session.overview && this.session.sheet === sheet.key ? 'page' : 'false'}
        aria-haspopup="menu"
        aria-keyshortcuts="Shift+F10"
        @click=${() => this.#show(() => this.session.showSheet(sheet.key))}
        @keydown=${(event: KeyboardEvent) => this.#key(event, sheet.key)}
        @contextmenu=${(event: Event) => this.#menu(event, sheet.key)}
      >
        <span>${sheet.title || sheet.key}</span>
        <span class="state ${bad ? 'bad' : ''}">${words}</span>
      </button>
      <button
        class="menu-button"
        tabindex="-1"
        aria-label="sheet menu"
        aria-haspopup="menu"
        @click=${(event: Event) => this.#menu(event, sheet.key)}
      >
        ${drawSign('menu')}
      </button>
    </li>`;
  }

  #show(turn: () => void): void {
    turn();
    this.dispatchEvent(new CustomEvent('page-chosen'));
  }

  #key(event: KeyboardEvent, sheet: string): void {
    if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) this.#menu(event, sheet);
  }

  #menu(event: Event, sheet: string): void {
    event.preventDefault();
    event.stopPropagation();
    const below = event.currentTarget as HTMLElement;
    void this.renderRoot
      .querySelector<SheetListMenu>('quay-sheet-list-menu')
      ?.open(below, (action) => this.#act(action, sheet, below));
  }

  #act(action: SheetAction, sheet: string, back: HTMLElement): void {
    // Dialogs give the focus back to what has it when they open.
    back.focus();
    const { book } = this.session.notebook;
    switch (action) {
      case 'add':
      case 'change':
      case 'remove':
        this.#ask(action, sheet);
        break;
      case 'duplicate': {
        const change = duplicateSheet(book, sheet);
        if (change && this.session.apply(change.edit).ok) this.session.showSheet(change.sheet);
        break;
      }
      case 'move up':
      case 'move down': {
        const edit = moveSheetBy(book, sheet, action === 'move up' ? -1 : 1);
        if (edit) this.session.apply(edit);
        // The list follows a frame later by itself; the focus must find it as it is now.
        this.requestUpdate();
        void this.updateComplete.then(() => this.#focusOn(sheet));
        break;
      }
    }
  }

  #focusOn(sheet: string): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-sheet="${CSS.escape(sheet)}"]`)?.focus();
  }

  #ask(kind: 'add' | 'change' | 'remove', sheet: string | undefined): void {
    this.renderRoot.querySelector<SheetDialog>('quay-sheet-dialog')?.show({ kind, sheet });
  }
}

/** Whether a list of the overview is shown, not a page of its own. */
function isList(overview: OverviewPart | undefined): boolean {
  return (
    overview !== undefined &&
    !['about', 'sources', 'origin', 'checking', 'signing', 'steps', 'recheck'].includes(overview)
  );
}

const none = { problems: 0, failing: 0, open: 0, beyond: 0, byStated: 0, checks: 0 };
