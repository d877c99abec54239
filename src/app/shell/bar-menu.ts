import { html, type TemplateResult } from 'lit';
import { type MenuItem, PopupMenu } from '../sheet/menu/popup-menu.ts';

/** The menu of the commands that the bar has no room for. */
export class BarMenu extends PopupMenu<() => void> {
  #offered: readonly MenuItem<() => void>[] = [];

  /** Opens below its button with these commands. */
  async open(below: HTMLElement, items: readonly MenuItem<() => void>[]): Promise<void> {
    this.#offered = items;
    this.requestUpdate();
    await this.openBelow(below, below, (act) => act());
  }

  override render(): TemplateResult {
    return html`<div role="menu" aria-label="book">${this.#offered.map((item) => this.item(item))}</div>`;
  }
}
