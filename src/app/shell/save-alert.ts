import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import type { UnsavedCause } from '../storage/autosave.ts';
import type { OpenBook } from '../storage/book-store.ts';

/** What the person does about a book that is not kept. */
export type SaveAction = 'file' | 'keep anew' | 'keep as own' | 'take kept' | 'raw';

/** Says why the open book is not kept where the person has to decide what becomes of it, and offers what there is. */
export class SaveAlert extends LitElement {
  static override properties = { session: { attribute: false }, open: { attribute: false } };
  declare session: Session;
  declare open: OpenBook;

  static override styles = css`
    div {
      max-width: 52ch;
      padding: 12px 18px;
      border: 1px solid var(--rule-strong);
      background: var(--paper);
      box-shadow: var(--shadow-raised);
    }
    button {
      min-height: 24px;
      margin-inline-end: 12px;
      padding: 3px 0;
      border: 0;
      background: none;
      color: var(--accent);
      font: inherit;
      cursor: pointer;
    }
    button:focus-visible {
      outline: 2px solid var(--accent);
    }
    p {
      margin: 0 0 6px;
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'kept', 'after');
  }

  override render() {
    const { kept } = this.session;
    const drawn = kept.state === 'not kept' ? this.#drawCause(kept.cause) : undefined;
    return drawn ? html`<div role="alert">${drawn}</div>` : nothing;
  }

  #drawCause(cause: UnsavedCause): TemplateResult | undefined {
    switch (cause) {
      case 'removed':
        return html`<p>This book was removed from this browser. What stands here is not kept.</p>
          ${this.#drawAction('keep anew', 'Keep it anew')} ${this.#drawAction('file', 'Save a file')}`;
      case 'changed elsewhere':
        return html`<p>This book was changed in another tab, and that is kept. What you entered here is not.</p>
          ${this.#drawAction('keep as own', 'Keep mine as a book of its own')}
          ${this.#drawAction('take kept', 'Take what is kept')}`;
      case 'unreadable':
        return html`<p>${this.#lossWords()}</p>
          ${this.#drawAction('raw', 'Save what is stored as a file')}
          ${this.#drawAction('keep anew', 'Go on from here')}`;
      // The bar says it, and offers a file.
      case 'refused':
      case 'open elsewhere':
        return undefined;
    }
  }

  #lossWords(): string {
    const { loss } = this.open;
    if (!loss) return 'Part of what is stored of this book cannot be read.';
    const { number, edits, reason } = loss;
    const others = edits === 1 ? 'It is' : `It and the ${edits - 1} after it are`;
    return `Edit ${number} of this book cannot be read: ${reason}. ${others} lost here; the book is as it was before. Until you go on from here nothing is kept, and what is stored stays as it is.`;
  }

  #drawAction(action: SaveAction, words: string): TemplateResult {
    const act = (): void => {
      this.dispatchEvent(new CustomEvent('save-action', { detail: action, bubbles: true, composed: true }));
    };
    return html`<button @click=${act}>${words}</button>`;
  }
}
