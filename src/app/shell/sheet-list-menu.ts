import { html, type TemplateResult } from 'lit';
import { type MenuItem, PopupMenu } from '../sheet/menu/popup-menu.ts';

/** What is done with a whole sheet. */
export type SheetAction = 'add' | 'change' | 'duplicate' | 'move up' | 'move down' | 'remove';

const items: readonly MenuItem<SheetAction>[] = [
  { action: 'add', words: 'Add a sheet below' },
  { action: 'change', words: 'Title, key and group' },
  { action: 'duplicate', words: 'Duplicate' },
  { action: 'move up', words: 'Move up' },
  { action: 'move down', words: 'Move down' },
  { action: 'remove', words: 'Remove' },
];

/** The menu of a sheet in the list of sheets. */
export class SheetListMenu extends PopupMenu<SheetAction> {
  /** Opens below an element, to which the focus comes back. */
  async open(below: HTMLElement, act: (action: SheetAction) => void): Promise<void> {
    await this.openBelow(below, below, act);
  }

  override render(): TemplateResult {
    return html`<div role="menu" aria-label="sheet">${items.map((item) => this.item(item))}</div>`;
  }
}
