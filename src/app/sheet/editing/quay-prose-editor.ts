import { css, html, LitElement, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Commit, CommitMove, Typed } from '../../editor/cell-edit.ts';
import { onLeave } from '../../editor/fields/on-leave.ts';
import { shieldKey } from '../../editor/fields/shield-key.ts';

/** A field of several lines for the words of a sheet: Enter ends it, Shift+Enter starts a new line. */
export class QuayProseEditor extends LitElement {
  static override properties = {
    label: { attribute: false },
    text: { attribute: false },
  };

  static override styles = css`
    :host {
      display: block;
      width: 100%;
    }
    textarea {
      box-sizing: border-box;
      display: block;
      width: 100%;
      min-height: calc(2lh + 6px);
      margin: 0;
      padding: 3px 6px;
      border: 0;
      border-radius: var(--radius);
      outline: 2px solid var(--accent);
      background: var(--paper);
      color: var(--ink);
      font: inherit;
      field-sizing: content;
      resize: none;
    }
  `;

  declare label: string;
  declare text: string;

  override render(): TemplateResult {
    return html`<textarea
      aria-label=${this.label}
      .value=${live(this.text)}
      @input=${this.#input}
      @keydown=${this.#key}
      @blur=${this.#blur}
    ></textarea>`;
  }

  override firstUpdated(): void {
    const field = this.#field;
    field.focus();
    field.setSelectionRange(field.value.length, field.value.length);
  }

  override focus(): void {
    this.#field.focus();
  }

  get #field(): HTMLTextAreaElement {
    const field = this.renderRoot.querySelector('textarea');
    if (!field) throw new Error('the editor has no field');
    return field;
  }

  readonly #input = (): void => {
    this.text = this.#field.value;
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail: { text: this.text } }));
  };

  readonly #key = (event: KeyboardEvent): void => {
    const { key, shiftKey } = event;
    shieldKey(event);
    if (event.isComposing) return;
    if (key === 'Escape') this.dispatchEvent(new CustomEvent('cancel'));
    else if (key === 'Enter' && !shiftKey) {
      event.preventDefault();
      this.#commit('stay');
    } else if (key === 'Tab') {
      event.preventDefault();
      this.#commit(shiftKey ? 'left' : 'right');
    }
  };

  readonly #blur = (): void => onLeave(this, () => this.dispatchEvent(new CustomEvent('leave')));

  #commit(move: CommitMove): void {
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { move } }));
  }
}

customElements.define('quay-prose-editor', QuayProseEditor);
