import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Fix } from '../../diagnostics/index.ts';
import type { Commit, CommitMove } from '../sheet/editing/cell-edit.ts';
import { Below } from './below.ts';
import { fieldKey } from './field-keys.ts';
import { fieldStyles } from './field-styles.ts';
import { applyFix } from './note.ts';
import { drawNote, noteStyles } from './note-view.ts';
import { drawOptions, showChosen } from './option-list.ts';
import type { Reader } from './reader.ts';
import type { Suggestion } from './suggestion.ts';
import { whenLeft } from './when-left.ts';

/** The part of a text that is selected; where the caret stands if both ends are one. */
export interface SelectedText {
  readonly from: number;
  readonly to: number;
}

/** A plain field in a cell that keeps what is typed, with a note and perhaps suggestions below. */
export class QuayInputField extends LitElement {
  static override properties = {
    label: { attribute: false },
    value: { attribute: false },
    seed: { attribute: false },
    reader: { attribute: false },
  };

  static override styles = [fieldStyles, noteStyles];

  declare label: string;
  declare value: string;
  declare seed: string | undefined;
  declare reader: Reader;
  #typed: string | undefined;
  #chosen = -1;
  #arrows = false;
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('input');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override render(): TemplateResult {
    const text = this.text;
    const options = this.#options;
    const note = this.reader.note(text);
    const suggests = this.reader.suggest !== undefined;
    return html`<input
        class="field"
        aria-label=${this.label}
        aria-describedby="note"
        aria-invalid=${note?.kind === 'problem' || note?.kind === 'refused' ? 'true' : 'false'}
        role=${suggests ? 'combobox' : nothing}
        aria-expanded=${suggests ? String(options.length > 0) : nothing}
        aria-controls=${suggests ? 'options' : nothing}
        aria-activedescendant=${this.#chosen >= 0 ? `option-${this.#chosen}` : nothing}
        autocomplete="off"
        spellcheck="false"
        .value=${text}
        @input=${this.#input}
        @keydown=${this.#key}
        @pointerdown=${this.#point}
        @blur=${this.#blur}
      />
      <div
        popover="manual"
        class="below ${note || options.length > 0 ? '' : 'bare'}"
        @mousedown=${(event: Event) => event.preventDefault()}
      >
        ${drawNote(note, this.#apply)}${drawOptions(options, this.#chosen, this.label, this.#take)}
      </div>`;
  }

  /** Gives its place to another field, which takes over what was typed and what is selected. */
  handOver(): { readonly text: string; readonly selected: SelectedText } {
    const { value, selectionStart, selectionEnd } = this.#input_;
    return {
      text: this.text,
      selected: { from: selectionStart ?? value.length, to: selectionEnd ?? value.length },
    };
  }

  /** What the field holds. */
  private get text(): string {
    return this.#typed ?? this.seed ?? this.value;
  }

  get #options(): readonly Suggestion[] {
    return this.reader.suggest?.(this.#typed ?? this.seed) ?? [];
  }

  get #input_(): HTMLInputElement {
    const input = this.renderRoot.querySelector('input');
    if (!input) throw new Error('the field has no input');
    return input;
  }

  override firstUpdated(): void {
    this.#arrows = this.seed !== undefined;
    const input = this.#input_;
    input.focus();
    input.setSelectionRange(input.value.length, input.value.length);
  }

  override updated(): void {
    showChosen(this.renderRoot);
  }

  readonly #input = (): void => {
    this.#typed = this.#input_.value;
    this.#chosen = -1;
    this.requestUpdate();
  };

  // Who clicks into the text means to change it there, and needs the arrow keys.
  readonly #point = (): void => {
    this.#arrows = false;
  };

  readonly #apply = (fix: Fix): void => {
    this.#write(applyFix(this.text, fix), fix.from + fix.insert.length);
  };

  readonly #take = (index: number): void => {
    const option = this.#options[index];
    if (option) this.#leave(option.text, 'stay');
  };

  #write(text: string, caret: number): void {
    this.#typed = text;
    this.#chosen = -1;
    this.requestUpdate();
    void this.updateComplete.then(() => this.#input_.setSelectionRange(caret, caret));
  }

  readonly #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    const options = this.#options;
    const steps = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (steps !== 0 && options.length > 0) {
      event.preventDefault();
      const count = options.length + 1;
      this.#chosen = ((this.#chosen + 1 + steps + count) % count) - 1;
      this.requestUpdate();
      return;
    }
    if (event.key === 'F2') this.#arrows = !this.#arrows;
    const does = fieldKey(event, this.#arrows);
    if (!does) return;
    event.preventDefault();
    if (does.kind === 'commit') this.#leave(options[this.#chosen]?.text ?? this.#input_.value, does.move);
    else if (does.kind === 'fix') {
      const [fix] = this.reader.note(this.text)?.fixes ?? [];
      if (fix) this.#apply(fix);
    } else if (this.#chosen >= 0) {
      this.#chosen = -1;
      this.requestUpdate();
    } else {
      this.dispatchEvent(new CustomEvent('cancel'));
    }
  };

  readonly #blur = (): void =>
    whenLeft(this, () => {
      if (this.reader.note(this.text)?.kind === 'refused') this.dispatchEvent(new CustomEvent('cancel'));
      else this.#leave(this.text, 'stay');
    });

  #leave(value: string, move: CommitMove): void {
    if (this.reader.note(value)?.kind === 'refused') {
      this.#write(value, value.length);
      return;
    }
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { value, move } }));
    this.#below.placeSoon();
  }
}

customElements.define('quay-input-field', QuayInputField);
