import { html, nothing, type TemplateResult } from 'lit';
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
  | 'insert chart'
  | 'insert row'
  | 'insert above'
  | 'insert given column'
  | 'insert calc column'
  | 'column left'
  | 'column right'
  | 'delete column'
  | 'details'
  | 'link'
  | 'methods'
  | 'read rows'
  | 'write rows'
  | 'sum'
  | 'as table'
  | 'duplicate'
  | 'move up'
  | 'move down'
  | 'delete line'
  | 'delete part';

/** What the menu stands on. */
export type MenuSubject =
  | 'line'
  | 'calculation'
  | 'table row'
  | 'part'
  | 'prose'
  | 'table'
  | 'figure'
  | 'chart'
  | 'column'
  | 'calculated column'
  | 'foot';

const insertions: readonly MenuItem<MenuAction>[] = [
  { action: 'insert given', words: 'a given value' },
  { action: 'insert calc', words: 'a calculation' },
  { action: 'insert check', words: 'a check' },
  { action: 'insert choice', words: 'a choice' },
  { action: 'insert text', words: 'a text' },
  { action: 'insert heading', words: 'a heading' },
  { action: 'insert table', words: 'a table' },
  { action: 'insert chart', words: 'a chart' },
];

const partChanges: readonly MenuItem<MenuAction>[] = [
  { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
  { action: 'move up', words: 'Move up', key: 'Alt+↑' },
  { action: 'move down', words: 'Move down', key: 'Alt+↓' },
  { action: 'delete part', words: 'Delete' },
];

const asTable: MenuItem<MenuAction> = { action: 'as table', words: 'Show or hide it as a table' };

const details: MenuItem<MenuAction> = { action: 'details', words: 'Details' };

const methods: MenuItem<MenuAction> = { action: 'methods', words: 'Methods' };

const lineChanges: readonly MenuItem<MenuAction>[] = [
  { action: 'insert above', words: 'Insert a line above', key: 'Ctrl+Shift+Enter' },
  { action: 'link', words: 'Take the value from a line' },
  { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
  { action: 'move up', words: 'Move up', key: 'Alt+↑' },
  { action: 'move down', words: 'Move down', key: 'Alt+↓' },
  { action: 'delete line', words: 'Delete the line', key: 'Ctrl+Shift+Backspace' },
  { action: 'delete part', words: 'Delete the whole block' },
];

const columnDetails: MenuItem<MenuAction> = { action: 'details', words: 'Name, type and unit' };

const columnChanges: readonly MenuItem<MenuAction>[] = [
  { action: 'insert given column', words: 'Insert a given column' },
  { action: 'insert calc column', words: 'Insert a calculated column' },
  { action: 'column left', words: 'Move left' },
  { action: 'column right', words: 'Move right' },
  { action: 'delete column', words: 'Delete the column' },
];

const changes: Readonly<Record<MenuSubject, readonly MenuItem<MenuAction>[]>> = {
  line: [details, ...lineChanges],
  calculation: [details, methods, ...lineChanges],
  'table row': [
    { action: 'insert row', words: 'Insert a row below', key: 'Ctrl+Enter' },
    { action: 'insert above', words: 'Insert a row above', key: 'Ctrl+Shift+Enter' },
    { action: 'duplicate', words: 'Duplicate', key: 'Ctrl+Shift+D' },
    { action: 'move up', words: 'Move up', key: 'Alt+↑' },
    { action: 'move down', words: 'Move down', key: 'Alt+↓' },
    { action: 'sum', words: 'Sum of the column' },
    { action: 'delete line', words: 'Delete the row', key: 'Ctrl+Shift+Backspace' },
    { action: 'delete part', words: 'Delete the whole table' },
  ],
  foot: [],
  part: partChanges,
  prose: [{ action: 'details', words: 'What these words are' }, ...partChanges],
  table: [
    { action: 'details', words: 'Name and title' },
    { action: 'read rows', words: 'Paste or open CSV' },
    { action: 'write rows', words: 'Save as CSV' },
    ...partChanges,
  ],
  figure: [asTable, ...partChanges],
  chart: [details, asTable, ...partChanges],
  column: [columnDetails, ...columnChanges],
  'calculated column': [columnDetails, methods, ...columnChanges],
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
    const own = changes[this.subject].map((item) => this.item(item));
    if (this.subject === 'column' || this.subject === 'calculated column')
      return html`<div role="menu" aria-label="column">${own}</div>`;
    return html`<div role="menu" aria-label="insert and change">
      <div class="title" id="insert">Insert below</div>
      <div role="group" aria-labelledby="insert" class="insertions">${insertions.map((item) => this.item(item))}</div>
      ${own.length > 0 ? html`<hr role="separator" />${own}` : nothing}
    </div>`;
  }
}

customElements.define('quay-sheet-menu', QuaySheetMenu);
