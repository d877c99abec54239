import { html, LitElement, type TemplateResult } from 'lit';
import { menuStyles } from './menu-styles.ts';

/** What the menu of a line or part offers. */
export type MenuAction =
  | 'insert given'
  | 'insert calc'
  | 'insert check'
  | 'insert choice'
  | 'insert text'
  | 'insert heading'
  | 'insert table'
  | 'insert row'
  | 'sum'
  | 'duplicate'
  | 'move up'
  | 'move down'
  | 'delete line'
  | 'delete part';

interface MenuItem {
  readonly action: MenuAction;
  readonly words: string;
  readonly key?: string;
}

/** What the menu stands on. */
export type MenuSubject = 'line' | 'table row' | 'part';

const insertions: readonly MenuItem[] = [
  { action: 'insert given', words: 'a given value' },
  { action: 'insert calc', words: 'a calculation' },
  { action: 'insert check', words: 'a check' },
  { action: 'insert choice', words: 'a choice' },
  { action: 'insert text', words: 'a text' },
  { action: 'insert heading', words: 'a heading' },
  { action: 'insert table', words: 'a table' },
];

const changes: Readonly<Record<MenuSubject, readonly MenuItem[]>> = {
  line: [
    { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
    { action: 'move up', words: 'Move up', key: 'Alt+↑' },
    { action: 'move down', words: 'Move down', key: 'Alt+↓' },
    { action: 'delete line', words: 'Delete the line', key: 'Ctrl+Shift+⌫' },
    { action: 'delete part', words: 'Delete the whole block' },
  ],
  'table row': [
    { action: 'insert row', words: 'Insert a row below', key: 'Ctrl+Enter' },
    { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
    { action: 'move up', words: 'Move up', key: 'Alt+↑' },
    { action: 'move down', words: 'Move down', key: 'Alt+↓' },
    { action: 'sum', words: 'Sum of the column' },
    { action: 'delete line', words: 'Delete the row', key: 'Ctrl+Shift+⌫' },
    { action: 'delete part', words: 'Delete the whole table' },
  ],
  part: [
    { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
    { action: 'move up', words: 'Move up', key: 'Alt+↑' },
    { action: 'move down', words: 'Move down', key: 'Alt+↓' },
    { action: 'delete part', words: 'Delete' },
  ],
};

/** The menu of a line or part: one native popover for the whole page, told where to open and on what. */
export class QuaySheetMenu extends LitElement {
  static override styles = menuStyles;
  static override properties = { subject: { attribute: false } };

  declare subject: MenuSubject;
  #back: HTMLElement | undefined;
  #act: ((action: MenuAction) => void) | undefined;

  constructor() {
    super();
    this.subject = 'line';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.popover = 'auto';
    this.addEventListener('keydown', this.#key);
    this.addEventListener('toggle', this.#toggled);
  }

  /** Opens below an element; gives the focus back to `back` when it closes without an action. */
  async open(
    subject: MenuSubject,
    below: HTMLElement,
    back: HTMLElement,
    act: (action: MenuAction) => void,
  ): Promise<void> {
    this.subject = subject;
    this.#back = back;
    this.#act = act;
    await this.updateComplete;
    this.showPopover();
    const at = below.getBoundingClientRect();
    const own = this.getBoundingClientRect();
    const left = Math.max(8, Math.min(at.right - own.width, innerWidth - own.width - 8));
    const top = at.bottom + own.height + 8 > innerHeight ? Math.max(8, at.top - own.height) : at.bottom;
    this.style.setProperty('left', `${left}px`);
    this.style.setProperty('top', `${top}px`);
    this.#items[0]?.focus();
  }

  get #items(): readonly HTMLElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('[role=menuitem]')];
  }

  override render(): TemplateResult {
    return html`<div role="menu" aria-label="insert and change">
      <div class="title" id="insert">Insert below</div>
      <div role="group" aria-labelledby="insert" class="insertions">${insertions.map((item) => this.#item(item))}</div>
      <hr role="separator" />
      ${changes[this.subject].map((item) => this.#item(item))}
    </div>`;
  }

  #item({ action, words, key }: MenuItem): TemplateResult {
    return html`<button type="button" role="menuitem" tabindex="-1" @click=${() => this.#chosen(action)}>
      <span>${words}</span>${key === undefined ? '' : html`<kbd>${key}</kbd>`}
    </button>`;
  }

  #chosen(action: MenuAction): void {
    const act = this.#act;
    // What is done next decides where the focus goes.
    this.#back = undefined;
    this.hidePopover();
    act?.(action);
  }

  readonly #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    const items = this.#items;
    const at = items.indexOf(this.shadowRoot?.activeElement as HTMLElement);
    const to: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % items.length,
      ArrowUp: (at - 1 + items.length) % items.length,
      Home: 0,
      End: items.length - 1,
    };
    const next = to[event.key];
    if (event.key === 'Tab') this.hidePopover();
    if (next === undefined) return;
    event.preventDefault();
    items[next]?.focus();
  };

  readonly #toggled = (event: ToggleEvent): void => {
    if (event.newState === 'closed') this.#back?.focus({ preventScroll: true });
  };
}

customElements.define('quay-sheet-menu', QuaySheetMenu);
