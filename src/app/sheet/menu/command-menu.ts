import { html, type TemplateResult } from 'lit';
import { type MenuItem, PopupMenu } from './popup-menu.ts';

/** A menu of whatever commands its button has. */
export class CommandMenu extends PopupMenu<() => void> {
  #offered: readonly MenuItem<() => void>[] = [];
  #label = '';

  /** Opens below its button with these commands; `label` says what they are done with. */
  async open(below: HTMLElement, items: readonly MenuItem<() => void>[], label: string): Promise<void> {
    this.#offered = items;
    this.#label = label;
    this.requestUpdate();
    await this.openBelow(below, below, (act) => act());
  }

  override render(): TemplateResult {
    return html`<div role="menu" aria-label=${this.#label}>${this.#offered.map((item) => this.item(item))}</div>`;
  }
}
