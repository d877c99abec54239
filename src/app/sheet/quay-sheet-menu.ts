import { html, type TemplateResult } from 'lit';
import { type MenuItem, PopupMenu } from './popup-menu.ts';

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

/** What the menu stands on. */
export type MenuSubject = 'line' | 'table row' | 'part';

const insertions: readonly MenuItem<MenuAction>[] = [
  { action: 'insert given', words: 'a given value' },
  { action: 'insert calc', words: 'a calculation' },
  { action: 'insert check', words: 'a check' },
  { action: 'insert choice', words: 'a choice' },
  { action: 'insert text', words: 'a text' },
  { action: 'insert heading', words: 'a heading' },
  { action: 'insert table', words: 'a table' },
];

const changes: Readonly<Record<MenuSubject, readonly MenuItem<MenuAction>[]>> = {
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

/** The menu of a line or part. */
export class QuaySheetMenu extends PopupMenu<MenuAction> {
  static override properties = { subject: { attribute: false } };

  declare subject: MenuSubject;

  constructor() {
    super();
    this.subject = 'line';
  }

  /** Opens below an element; gives the focus back to `back` when it closes without an action. */
  async open(
    subject: MenuSubject,
    below: HTMLElement,
    back: HTMLElement,
    act: (action: MenuAction) => void,
  ): Promise<void> {
    this.subject = subject;
    await this.openBelow(below, back, act);
  }

  override render(): TemplateResult {
    return html`<div role="menu" aria-label="insert and change">
      <div class="title" id="insert">Insert below</div>
      <div role="group" aria-labelledby="insert" class="insertions">${insertions.map((item) => this.item(item))}</div>
      <hr role="separator" />
      ${changes[this.subject].map((item) => this.item(item))}
    </div>`;
  }
}

customElements.define('quay-sheet-menu', QuaySheetMenu);
