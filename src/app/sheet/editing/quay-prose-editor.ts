import { css, html, LitElement, type TemplateResult } from 'lit';
import type { Commit, CommitMove } from './cell-edit.ts';

/** A field of several lines for the words of a sheet: Enter ends it, Shift+Enter starts a new line. */
export class QuayProseEditor extends LitElement {
  static override properties = {
    label: { attribute: false },
    value: { attribute: false },
    seed: { attribute: false },
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
  declare value: string;
  declare seed: string | undefined;
  #done = false;

  override render(): TemplateResult {
    return html`<textarea
      aria-label=${this.label}
      .value=${this.seed ?? this.value}
      @keydown=${this.#key}
      @blur=${this.#leave}
    ></textarea>`;
  }

  override firstUpdated(): void {
    const field = this.#field;
    field.focus();
    field.setSelectionRange(field.value.length, field.value.length);
  }

  get #field(): HTMLTextAreaElement {
    const field = this.renderRoot.querySelector('textarea');
    if (!field) throw new Error('the editor has no field');
    return field;
  }

  readonly #key = (event: KeyboardEvent): void => {
    const { key, shiftKey } = event;
    event.stopPropagation();
    if (event.isComposing) return;
    if (key === 'Escape') {
      this.#done = true;
      this.dispatchEvent(new CustomEvent('cancel'));
    } else if (key === 'Enter' && !shiftKey) {
      event.preventDefault();
      this.#commit('stay');
    } else if (key === 'Tab') {
      event.preventDefault();
      this.#commit(shiftKey ? 'left' : 'right');
    }
  };

  readonly #leave = (): void => {
    if (!this.#done && this.isConnected) this.#commit('stay');
  };

  #commit(move: CommitMove): void {
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { value: this.#field.value, move } }));
  }
}

customElements.define('quay-prose-editor', QuayProseEditor);
