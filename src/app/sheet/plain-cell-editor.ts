import { css, html, LitElement, type TemplateResult } from 'lit';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import type { CellKind, Commit, CommitMove } from './cell-edit.ts';

/** A plain field in a cell; prose gets one of several lines, where Shift+Enter starts a new line. */
export class PlainCellEditor extends LitElement {
  static override properties = {
    session: { attribute: false },
    kind: { attribute: false },
    value: { attribute: false },
    place: { attribute: false },
    seed: { attribute: false },
  };

  static override styles = css`
    :host {
      display: block;
      width: 100%;
    }
    input,
    textarea {
      box-sizing: border-box;
      display: block;
      width: 100%;
      margin: 0;
      padding: 3px 6px;
      border: 0;
      border-radius: var(--radius);
      outline: 2px solid var(--accent);
      background: var(--paper);
      color: var(--pen);
      font: inherit;
      text-align: inherit;
    }
    textarea {
      field-sizing: content;
      min-height: 2lh;
      resize: none;
    }
    input.formula {
      font-family: var(--code);
      font-size: 14px;
      text-align: left;
    }
  `;

  declare session: Session;
  declare kind: CellKind;
  declare value: string;
  declare place: CellPlace;
  declare seed: string | undefined;
  #done = false;

  override render(): TemplateResult {
    const text = this.seed ?? this.value;
    const common = `the ${names[this.kind]}`;
    if (this.kind === 'prose')
      return html`<textarea aria-label=${common} .value=${text} @keydown=${this.#key} @blur=${this.#leave}></textarea>`;
    return html`<input
      class=${this.kind}
      aria-label=${common}
      autocomplete="off"
      spellcheck="false"
      .value=${text}
      @keydown=${this.#key}
      @blur=${this.#leave}
    />`;
  }

  override firstUpdated(): void {
    const field = this.#field;
    field.focus();
    if (this.seed === undefined && this.kind !== 'prose') field.select();
    else field.setSelectionRange(field.value.length, field.value.length);
  }

  get #field(): HTMLInputElement | HTMLTextAreaElement {
    const field = this.renderRoot.querySelector<HTMLInputElement | HTMLTextAreaElement>('input, textarea');
    if (!field) throw new Error('the editor has no field');
    return field;
  }

  readonly #key = (event: Event): void => {
    const { key, shiftKey } = event as KeyboardEvent;
    event.stopPropagation();
    if (key === 'Escape') {
      this.#done = true;
      this.dispatchEvent(new CustomEvent('cancel'));
    } else if (key === 'Enter' && !(this.kind === 'prose' && shiftKey)) {
      event.preventDefault();
      this.#commit(this.kind === 'prose' ? 'stay' : shiftKey ? 'up' : 'down');
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

const names: Readonly<Record<CellKind, string>> = {
  formula: 'formula',
  entry: 'value',
  unit: 'unit',
  name: 'symbol',
  text: 'text',
  choice: 'choice',
  prose: 'text',
};

customElements.define('quay-plain-cell-editor', PlainCellEditor);
