import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { Commit, CommitMove, Typed } from '../cell-edit.ts';
import type { Note } from '../notes/note.ts';
import { drawNote, noteStyles } from '../notes/note-view.ts';
import { Below } from './below.ts';
import { type ChoiceOption, optionTyped } from './choice-options.ts';
import { fieldKey } from './field-keys.ts';
import { fieldStyles } from './field-styles.ts';
import { onLeave } from './on-leave.ts';
import { drawOptions, showChosen } from './option-list.ts';
import { shieldKey } from './shield-key.ts';

/**
 * A list of the options of a choice, opened on the one that holds. What is typed goes to the option it names and stands
 * above the list; where it names none, none is taken until it is corrected.
 */
export class QuayChoiceField extends LitElement {
  static override properties = {
    label: { attribute: false },
    text: { attribute: false },
    letters: { attribute: false },
    options: { attribute: false },
  };

  static override styles = [fieldStyles, noteStyles];

  declare label: string;
  /** The option chosen so far. */
  declare text: string;
  /** What was typed to choose an option, before the list was opened. */
  declare letters: string;
  declare options: readonly ChoiceOption[];
  #chosen = -1;
  #held = -1;
  #before = '';
  #typed = '';
  #namesNone = false;
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('.field');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('options')) return;
    const held = this.text.trim().toLowerCase();
    this.#held = this.options.findIndex(({ value }) => value.trim().toLowerCase() === held);
    this.#chosen = this.#held;
    if (!this.hasUpdated) this.#before = this.text;
    if (this.letters !== '' && !this.hasUpdated) this.#look(this.letters);
  }

  override render(): TemplateResult {
    const chosen = this.options[this.#chosen];
    const shown = this.options.map(({ value, label }) => ({
      text: label ?? value,
      detail: label === undefined || label === value ? '' : value,
    }));
    return html`<div
        class="field"
        role="combobox"
        tabindex="0"
        aria-label=${this.label}
        aria-expanded="true"
        aria-haspopup="listbox"
        aria-controls="options"
        aria-activedescendant=${`option-${this.#chosen}`}
        @keydown=${this.#key}
        @blur=${this.#blur}
      >${(chosen?.label ?? chosen?.value) || 'to be chosen'}</div>
      <div popover="manual" class="below" @mousedown=${(event: Event) => event.preventDefault()}>
        ${drawNote(this.#note(), () => {})}${drawOptions(shown, this.#chosen, this.label, (index) => this.#take(index))}
      </div>`;
  }

  override firstUpdated(): void {
    this.focus();
    if (this.letters !== '') this.#say();
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.field')?.focus();
  }

  /** The option gone to is what is in hand. */
  #say(): void {
    const text = this.options[this.#chosen]?.value ?? this.#before;
    if (text === this.text) return;
    this.text = text;
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail: { text } }));
  }

  override updated(): void {
    showChosen(this.renderRoot);
  }

  /** What was typed, which the field does not show, or that no option is called so. */
  #note(): Note | undefined {
    if (this.#typed === '') return undefined;
    if (!this.#namesNone) return { kind: 'result', text: `typed: ${this.#typed}` };
    const hint = 'correct it, or choose with ↑ and ↓';
    return { kind: 'refused', text: `no option is called “${this.#typed}”`, hint };
  }

  /** Goes to the option that all that was typed names; without one, back to what the cell holds. */
  #look(typed: string): void {
    this.#typed = typed;
    const found = optionTyped(this.options, typed, this.#chosen);
    this.#namesNone = typed.trim() !== '' && found === undefined;
    this.#chosen = found ?? this.#held;
  }

  readonly #key = (event: KeyboardEvent): void => {
    shieldKey(event);
    const { key } = event;
    const last = this.options.length - 1;
    const page = 8;
    const moved: Readonly<Record<string, number>> = {
      ArrowDown: Math.min(this.#chosen + 1, last),
      ArrowUp: Math.max(this.#chosen - 1, 0),
      PageDown: Math.min(this.#chosen + page, last),
      PageUp: Math.max(this.#chosen - page, 0),
      Home: 0,
      End: last,
    };
    const does = fieldKey(event, false);
    if (key in moved) {
      this.#look('');
      this.#chosen = moved[key] ?? 0;
    } else if (does?.kind === 'commit') this.#leave(does.move);
    else if (does?.kind === 'cancel') {
      this.dispatchEvent(new CustomEvent('cancel'));
    } else if (key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey)
      this.#look(this.#typed + key);
    else if (key === 'Backspace' && this.#typed !== '') this.#look([...this.#typed].slice(0, -1).join(''));
    else return;
    event.preventDefault();
    if (!does) this.#say();
    this.requestUpdate();
  };

  readonly #blur = (): void => onLeave(this, () => this.dispatchEvent(new CustomEvent('leave')));

  #take(index: number): void {
    this.#look('');
    this.#chosen = index;
    this.#leave('stay');
  }

  #leave(move: CommitMove): void {
    if (this.#namesNone) return;
    this.#say();
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { move } }));
    this.#below.placeSoon();
  }
}

customElements.define('quay-choice-field', QuayChoiceField);
