import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Fix } from '../../../diagnostics/index.ts';
import type { SelectedText } from '../../view-model/edit-in-hand.ts';
import type { Commit, CommitMove, Typed } from '../cell-edit.ts';
import type { Suggestion } from '../completion/suggestion.ts';
import { applyFix, takeable } from '../notes/note.ts';
import { drawNote, isRefusalSaid, noteStyles } from '../notes/note-view.ts';
import type { Reader } from '../readers/reader.ts';
import { Below } from './below.ts';
import { fieldKey } from './field-keys.ts';
import { fieldStyles } from './field-styles.ts';
import { onLeave } from './on-leave.ts';
import { drawOptions, showChosen } from './option-list.ts';
import { shieldKey } from './shield-key.ts';

/** A plain field in a cell, with a note and perhaps suggestions below. It says each change of what is typed. */
export class QuayInputField extends LitElement {
  static override properties = {
    label: { attribute: false },
    remarks: { attribute: false },
    text: { attribute: false },
    held: { attribute: false },
    typedOver: { attribute: false },
    reader: { attribute: false },
  };

  static override styles = [fieldStyles, noteStyles];

  declare label: string;
  /** What is typed so far. */
  declare text: string;
  /** What the cell holds. */
  declare held: string;
  /** Whether the first character replaced what the cell holds. */
  declare typedOver: boolean;
  declare reader: Reader;
  /** Why what is typed was refused, until it is changed. */
  declare remarks: readonly string[] | undefined;
  #touched = false;
  #chosen = -1;
  #arrows = false;
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('input');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override render(): TemplateResult {
    const { text } = this;
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
        ${drawNote(note, this.#takeRemedy, this.remarks)}${drawOptions(options, this.#chosen, this.label, this.#take)}
      </div>`;
  }

  /** Whether the line below says why what is typed was refused. */
  get isRefusalSaid(): boolean {
    return isRefusalSaid(this.renderRoot);
  }

  /** Gives its place to another field, which takes over what was typed and what is selected. */
  handOver(): { readonly text: string; readonly selected: SelectedText } {
    const { value, selectionStart, selectionEnd } = this.#input_;
    return {
      text: this.text,
      selected: { from: selectionStart ?? value.length, to: selectionEnd ?? value.length },
    };
  }

  get #options(): readonly Suggestion[] {
    const typed = this.#touched || this.typedOver || this.text !== this.held;
    return this.reader.suggest?.(typed ? this.text : undefined) ?? [];
  }

  get #input_(): HTMLInputElement {
    const input = this.renderRoot.querySelector('input');
    if (!input) throw new Error('the field has no input');
    return input;
  }

  override firstUpdated(): void {
    this.#arrows = this.typedOver;
    const input = this.#input_;
    input.focus();
    input.setSelectionRange(input.value.length, input.value.length);
  }

  override focus(): void {
    this.#input_.focus();
  }

  override updated(): void {
    showChosen(this.renderRoot);
  }

  readonly #input = (): void => {
    this.#say(this.#input_.value);
  };

  /** What is typed belongs to the session with the very event that brought it. */
  #say(text: string): void {
    this.text = text;
    this.#touched = true;
    this.#chosen = -1;
    const { selectionStart, selectionEnd } = this.#input_;
    const selected = { from: selectionStart ?? text.length, to: selectionEnd ?? text.length };
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail: { text, selected } }));
    this.requestUpdate();
  }

  // Who clicks into the text means to change it there, and needs the arrow keys.
  readonly #point = (): void => {
    this.#arrows = false;
  };

  readonly #takeRemedy = (what: Fix | 'offer'): void => {
    if (what === 'offer') this.#commit({ move: 'stay', offered: true });
    else this.#write(applyFix(this.text, what), what.from + what.insert.length);
  };

  readonly #take = (index: number): void => {
    const option = this.#options[index];
    if (option) this.#leave(option.text, 'stay');
  };

  #write(text: string, caret: number): void {
    this.#say(text);
    void this.updateComplete.then(() => this.#input_.setSelectionRange(caret, caret));
  }

  readonly #key = (event: KeyboardEvent): void => {
    shieldKey(event);
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
    if (does.kind === 'commit') this.#leave(options[this.#chosen]?.text ?? this.text, does.move);
    else if (does.kind === 'fix') {
      const note = this.reader.note(this.text);
      const [first] = note ? takeable(note) : [];
      if (first) this.#takeRemedy(first);
    } else if (this.#chosen >= 0) {
      this.#chosen = -1;
      this.requestUpdate();
    } else {
      this.dispatchEvent(new CustomEvent('cancel'));
    }
  };

  readonly #blur = (): void => onLeave(this, () => this.dispatchEvent(new CustomEvent('leave')));

  #leave(text: string, move: CommitMove): void {
    if (text !== this.text) this.#write(text, text.length);
    this.#commit({ move });
  }

  #commit(detail: Commit): void {
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail }));
    this.#below.placeSoon();
  }
}

customElements.define('quay-input-field', QuayInputField);
