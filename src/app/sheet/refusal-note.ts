import { html, type TemplateResult } from 'lit';

/** Says near a cell of a page why something cannot be done, or what else there is to know. */
export class RefusalNote {
  readonly #page: HTMLElement & { readonly renderRoot: ParentNode };
  #stands = false;

  constructor(page: HTMLElement & { readonly renderRoot: ParentNode }) {
    this.#page = page;
  }

  /** The note, to be drawn on the page once. */
  draw(): TemplateResult {
    return html`<div class="refusal" role="alert" popover="auto"></div>`;
  }

  /**
   * Says sentences below a cell, above one that is being edited, for what mends a draft stands below it; where there is no
   * cell, at the page. A `remark` is no refusal, and does not look like one.
   */
  say(
    sentences: readonly string[],
    cell: HTMLElement | undefined,
    isEdited = false,
    as: 'refusal' | 'remark' = 'refusal',
  ): void {
    const note = this.#page.renderRoot.querySelector<HTMLElement>('.refusal');
    if (!note) return;
    note.textContent = sentences.join('. ');
    note.classList.toggle('remark', as === 'remark');
    note.showPopover();
    this.#stands = true;
    const at = (cell ?? this.#page).getBoundingClientRect();
    note.style.setProperty('left', `${Math.max(8, Math.min(at.left, innerWidth - note.offsetWidth - 8))}px`);
    const above = at.top - note.offsetHeight - 4;
    const top = isEdited && above >= 8 ? above : Math.min(at.bottom + 4, innerHeight - note.offsetHeight - 8);
    note.style.setProperty('top', `${top}px`);
  }

  /** Takes back what was said: its cause is gone. */
  takeBack(): void {
    if (!this.#stands) return;
    this.#stands = false;
    this.#page.renderRoot.querySelector<HTMLElement>('.refusal:popover-open')?.hidePopover();
  }
}
