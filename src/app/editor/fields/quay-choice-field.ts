import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { foldedOption } from '../../../document/index.ts';
import {
  type ChoiceOption,
  isOneMeant,
  optionTyped,
  unknownOption,
} from '../../editing/choices/choice-options.ts';
import type { Commit, CommitMove, Typed } from '../cell-edit.ts';
import type { Note } from '../notes/note.ts';
import { drawNote, noteStyles } from '../notes/note-view.ts';
import { Below } from './below.ts';
import { fieldKey } from './field-keys.ts';
import { fieldStyles } from './field-styles.ts';
import { onLeave } from './on-leave.ts';
import { drawOptions, showChosen } from './option-list.ts';
import { shieldKey } from './shield-key.ts';

/**
 * A list of the options of a choice, opened on the one that holds. What is typed goes to the option it names and stands
 * above the list; where it names none, it is in hand as it is, and cannot be entered until it is corrected.
 */
export class QuayChoiceField extends LitElement {
  static override properties = {
    label: { attribute: false },
    text: { attribute: false },
    held: { attribute: false },
    letters: { attribute: false },
    options: { attribute: false },
  };

  static override styles = [fieldStyles, noteStyles];

  declare label: string;
  /** What is in hand: the option gone to, or what was typed where it names none. */
  declare text: string;
  /** What the cell holds. */
  declare held: string;
  /** What was typed to choose an option, before the list was opened. */
  declare letters: string;
  declare options: readonly ChoiceOption[];
  #chosen = -1;
  #held = -1;
  #typed = '';
  #namesNone = false;
  /** Whether what was typed begins several options, and none was gone to by a key. */
  #isPartly = false;
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('.field');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('options') || changed.has('held')) this.#held = this.#placeOf(this.held);
    if (!this.hasUpdated && this.letters !== '') this.#look(this.letters);
    else if (changed.has('options') || this.text !== this.#inHand()) this.#show(this.text);
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
      >${this.#namesNone ? this.#typed : (chosen?.label ?? chosen?.value) || 'to be chosen'}</div>
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

  #placeOf(text: string): number {
    return this.options.findIndex(({ value }) => foldedOption(value) === foldedOption(text));
  }

  /** Shows what is in hand from elsewhere: kept over a reload, or pasted. */
  #show(text: string): void {
    const at = this.#placeOf(text);
    if (at < 0 && text !== this.held) {
      this.#look(text);
      return;
    }
    this.#look('');
    this.#chosen = at;
  }

  #inHand(): string {
    if (this.#namesNone || this.#isPartly) return this.#typed;
    return this.#chosen === this.#held ? this.held : (this.options[this.#chosen]?.value ?? this.held);
  }

  #say(): void {
    const text = this.#inHand();
    if (text === this.text) return;
    this.text = text;
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail: { text } }));
  }

  override updated(): void {
    showChosen(this.renderRoot);
  }

  /** Whether the line above the list says why what is typed was refused. */
  get isRefusalSaid(): boolean {
    return this.#namesNone;
  }

  /** What was typed, which the field does not show, or that it names no option. */
  #note(): Note | undefined {
    if (this.#typed === '') return undefined;
    if (!this.#namesNone) return { kind: 'result', text: `typed: ${this.#typed}` };
    const hint = 'correct it, or choose with ↑ and ↓';
    return { kind: 'refused', text: unknownOption(this.options, this.#typed).message, hint };
  }

  /** Goes to the option that all that was typed names; without one, back to what the cell holds. */
  #look(typed: string): void {
    this.#typed = typed;
    const found = optionTyped(this.options, typed, this.#chosen, this.#held);
    this.#namesNone = typed.trim() !== '' && found === undefined;
    this.#chosen = found ?? this.#held;
    this.#isPartly = found !== undefined && found !== this.#held && !isOneMeant(this.options, typed);
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
    } else if (key.toLowerCase() === 'a' && (event.ctrlKey || event.metaKey)) {
      // There is no text in it, and the page’s is not meant.
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
    // The option that is marked in the list is meant by a key.
    this.#isPartly = false;
    this.#say();
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { move } }));
    this.#below.placeSoon();
  }
}

customElements.define('quay-choice-field', QuayChoiceField);
