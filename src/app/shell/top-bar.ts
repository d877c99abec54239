import { css, html, LitElement, nothing } from 'lit';
import type { Book } from '../../document/index.ts';
import type { UnitsView } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { NOTHING_TO_UNDO } from '../session/undo-words.ts';
import type { CommandMenu } from '../sheet/menu/command-menu.ts';
import type { MenuItem } from '../sheet/menu/popup-menu.ts';
import type { SaveState } from '../storage/autosave.ts';
import { drawSign } from '../style/signs.ts';
import { clockTime } from '../view-model/local-time.ts';
import { BarFit } from './bar-fit.ts';
import type { Side } from './sides.ts';

const views: readonly { readonly view: UnitsView; readonly label: string }[] = [
  { view: 'written', label: 'as written' },
  { view: 'SI', label: 'SI' },
  { view: 'US', label: 'US' },
];

/** What the bar asks of the app. */
export type BarAction = 'start' | 'book' | 'save' | 'print' | 'record' | 'go to' | 'keys' | Side;

/** What the bar says until the book is another than it was then. */
export interface BarMessage {
  readonly text: string;
  readonly tone: 'soft' | 'bad';
  readonly book: Book | undefined;
}

/** The bar over an open book: its name, whether it is kept, units, and what is done with the book. */
export class TopBar extends LitElement {
  static override properties = {
    session: { attribute: false },
    notice: { attribute: false },
    message: { attribute: false },
    shown: { attribute: false },
  };
  declare session: Session;
  /** What the person should know of the storage of this browser. */
  declare notice: string | undefined;
  /** What became of a file that was saved. */
  declare message: BarMessage | undefined;
  /** Which of the sides stand beside the sheet, or over it. */
  declare shown: Readonly<Record<Side, boolean>>;

  static override styles = css`
    :host {
      display: flex;
      align-items: center;
      gap: 12px;
      padding: 8px 18px;
      border-block-end: 1px solid var(--rule);
      background: var(--paper);
      font-size: 14px;
    }
    h1 {
      min-width: 5em;
      margin: 0;
      overflow: hidden;
      font-size: inherit;
      font-weight: 600;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .soft {
      color: var(--ink-soft);
      white-space: nowrap;
    }
    .message {
      min-width: 0;
      overflow: hidden;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .bad {
      color: var(--bad);
      font-weight: 600;
    }
    .gap {
      flex: 1;
    }
    fieldset {
      display: flex;
      margin: 0;
      padding: 0;
      border: 0;
    }
    fieldset label {
      padding: 3px 10px 5px;
      white-space: nowrap;
      cursor: pointer;
    }
    fieldset input {
      position: absolute;
      opacity: 0;
    }
    fieldset label:has(:checked) {
      padding-block-end: 3px;
      border-block-end: 2px solid var(--accent);
      font-weight: 600;
    }
    fieldset label:has(:focus-visible) {
      outline: 2px solid var(--accent);
    }
    button {
      padding: 4px 8px;
      border: 0;
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
      white-space: nowrap;
      cursor: pointer;
    }
    button.file {
      color: var(--accent);
      text-decoration: underline;
      text-underline-offset: 3px;
    }
    button:hover:enabled {
      background: var(--margin-tint);
    }
    button:disabled {
      color: var(--ink-soft);
      opacity: 0.55;
      cursor: default;
    }
    button:focus-visible {
      outline: 2px solid var(--accent);
    }
    button.side {
      flex: none;
      padding: 4px;
      line-height: 0;
    }
    button.side[aria-expanded='true'] {
      color: var(--accent);
    }
    .sign {
      width: 18px;
      height: 18px;
      fill: none;
      stroke: currentcolor;
      stroke-width: 1.4;
    }
    @media (max-width: 1100px) {
      :host {
        gap: 4px;
        padding-inline: 10px;
      }
    }
    /* What has no room stands in the menu: first what is seldom wanted, then all commands; then there are two rows. */
    .menu {
      display: none;
    }
    :host(:is([fold='1'], [fold='2'], [fold='3'])) .menu {
      display: block;
    }
    :host(:is([fold='1'], [fold='2'], [fold='3'])) .seldom,
    :host(:is([fold='2'], [fold='3'])) .often {
      display: none;
    }
    :host([fold='3']) {
      flex-wrap: wrap;
      row-gap: 0;
    }
    :host([fold='3']) h1 {
      flex: 1;
    }
    :host([fold='3']) .gap {
      display: none;
    }
    :host([fold='3']) .row-end {
      flex-basis: 100%;
      order: 1;
    }
    :host([fold='3']) :is(.soft, .message, .file) {
      order: 2;
      white-space: normal;
    }
    :host([fold='3']) .soft {
      padding-inline: 8px;
    }
    .visually-hidden {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
  `;

  constructor() {
    super();
    this.notice = undefined;
    this.message = undefined;
    this.shown = { list: true, panel: true };
    new SessionController(this, ({ kind }) => kind !== 'place', 'after');
    new BarFit(this);
  }

  override render() {
    const { session } = this;
    const { title } = session.notebook.book;
    const unkept = session.kept.state === 'not kept';
    const message = this.message?.book === session.notebook.book ? this.message : undefined;
    return html`
      ${this.#side('list', 'List of sheets', 'Shift+F9')}
      <button @click=${() => this.#ask('start')} title="All books">Quaybook</button>
      <h1>${[title.project, title.subject].filter((text) => text !== '').join(', ') || 'Untitled book'}</h1>
      <button class="seldom" @click=${() => this.#ask('book')} title="Units, currency and datums of this book">Book</button>
      <span class="soft ${unkept ? 'bad' : ''}" role="status"
        >${unkept && this.notice ? this.notice : keptWords(session.kept)}</span
      >
      ${unkept ? html`<button class="file" @click=${() => this.#ask('save')}>Save a file</button>` : nothing}
      <span class="message ${message?.tone ?? ''}" role="status" title=${message?.text ?? nothing}>${message?.text}</span>
      <span class="gap"></span>
      <span class="row-end"></span>
      <fieldset class="often">
        <legend class="visually-hidden">Units shown</legend>
        ${views.map(
          ({ view, label }) => html`<label>
            <input
              type="radio"
              name="units"
              .checked=${session.units === view}
              @change=${() => session.setUnits(view)}
            />${label}
          </label>`,
        )}
      </fieldset>
      <button class="often" ?disabled=${!session.canUndo} @click=${() => session.undo()} title=${session.canUndo ? 'Undo (Ctrl+Z)' : NOTHING_TO_UNDO}>Undo</button>
      <button class="often" ?disabled=${!session.canRedo} @click=${() => session.redo()} title="Redo (Ctrl+Y)">Redo</button>
      <button class="often" @click=${() => this.#ask('go to')} title="Go to any name (Ctrl+G)">Go to</button>
      <button class="seldom" @click=${() => this.#ask('save')} title="Save as a file (Ctrl+S)">Save</button>
      <button class="seldom" @click=${() => this.#ask('print')} title="Print this sheet or the book (Ctrl+P)">Print</button>
      <button class="seldom" @click=${() => this.#ask('record')} title="Save the record: one page to print and to file, with the book in it">Record</button>
      <button class="seldom" @mousedown=${keepFocus} @click=${() => this.#ask('keys')} title="Keys (?)">Keys</button>
      <button class="menu" aria-haspopup="menu" @click=${this.#openMenu} title="What else is done with the book">Menu</button>
      ${this.#side('panel', 'Panel', 'F9')}
      <quay-command-menu></quay-command-menu>
    `;
  }

  #side(side: Side, words: string, key: string) {
    const isShown = this.shown[side];
    return html`<button
      class="side"
      aria-label=${words}
      aria-expanded=${isShown}
      aria-keyshortcuts=${key}
      title=${`${isShown ? 'Fold' : 'Show'} the ${words.toLowerCase()} (${key})`}
      @click=${() => this.#ask(side)}
    >
      ${drawSign(side)}
    </button>`;
  }

  readonly #openMenu = ({ currentTarget }: Event): void => {
    const items = this.getAttribute('fold') === '1' ? this.#seldom() : [...this.#often(), ...this.#seldom()];
    void this.renderRoot
      .querySelector<CommandMenu>('quay-command-menu')
      ?.open(currentTarget as HTMLElement, items, 'book');
  };

  #often(): readonly MenuItem<() => void>[] {
    const { session } = this;
    return [
      ...(session.canUndo ? [{ words: 'Undo', key: 'Ctrl+Z', action: () => void session.undo() }] : []),
      ...(session.canRedo ? [{ words: 'Redo', key: 'Ctrl+Y', action: () => void session.redo() }] : []),
      { words: 'Go to', key: 'Ctrl+G', action: () => this.#ask('go to') },
      ...views.map(({ view, label }) => ({
        words: `Units shown: ${label}`,
        checked: session.units === view,
        action: () => session.setUnits(view),
      })),
    ];
  }

  #seldom(): readonly MenuItem<() => void>[] {
    return [
      { words: 'Book', action: () => this.#ask('book') },
      { words: 'Save', key: 'Ctrl+S', action: () => this.#ask('save') },
      { words: 'Print', key: 'Ctrl+P', action: () => this.#ask('print') },
      { words: 'Save the record…', action: () => this.#ask('record') },
      { words: 'Keys', key: '?', action: () => this.#ask('keys') },
    ];
  }

  #ask(action: BarAction): void {
    this.dispatchEvent(new CustomEvent('bar-action', { detail: action, bubbles: true, composed: true }));
  }
}

function keptWords(kept: SaveState): string {
  if (kept.state === 'keeping') return 'keeping…';
  if (kept.state === 'kept') return `all kept · ${clockTime(kept.at)}`;
  if (kept.cause === 'open elsewhere') return 'open in another tab, which keeps it; here nothing is kept';
  return `not kept: ${kept.reason}`;
}

/** A press with the pointer leaves the focus where it was, to which the dialog gives it back. */
function keepFocus(event: Event): void {
  event.preventDefault();
}
