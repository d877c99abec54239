import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { Commit, CommitMove, Typed } from '../cell-edit.ts';
import { Below } from './below.ts';
import type { ChoiceOption } from './choice-options.ts';
import { fieldKey } from './field-keys.ts';
import { fieldStyles } from './field-styles.ts';
import { onLeave } from './on-leave.ts';
import { drawOptions, showChosen } from './option-list.ts';
import { shieldKey } from './shield-key.ts';

/** Letters typed within this time (ms) look for one option together. */
const together = 900;

/** A list of the options of a choice, opened on the one that holds. Typing letters goes to an option. */
export class QuayChoiceField extends LitElement {
  static override properties = {
    label: { attribute: false },
    text: { attribute: false },
    letters: { attribute: false },
    options: { attribute: false },
  };

  static override styles = fieldStyles;

  declare label: string;
  /** The option chosen so far. */
  declare text: string;
  /** What was typed to choose an option, before the list was opened. */
  declare letters: string;
  declare options: readonly ChoiceOption[];
  #chosen = -1;
  #letters = '';
  #lastLetter = 0;
  readonly #below = new Below(this, () => {
    const field = this.renderRoot.querySelector('.field');
    const popover = this.renderRoot.querySelector<HTMLElement>('.below');
    return field && popover ? { field, popover } : undefined;
  });

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('options')) return;
    const held = this.text.trim().toLowerCase();
    this.#chosen = this.options.findIndex(({ value }) => value.trim().toLowerCase() === held);
    if (this.letters !== '' && !this.hasUpdated) this.#look(this.letters, 0);
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
        ${drawOptions(shown, this.#chosen, this.label, (index) => this.#take(index))}
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
    const text = this.options[this.#chosen]?.value ?? this.text;
    if (text === this.text) return;
    this.text = text;
    this.dispatchEvent(new CustomEvent<Typed>('typed', { detail: { text } }));
  }

  override updated(): void {
    showChosen(this.renderRoot);
  }

  /** Goes to the next option that begins with the letters, else to one that has them in it. */
  #look(letter: string, now: number): void {
    this.#letters = now - this.#lastLetter < together ? this.#letters + letter : letter;
    this.#lastLetter = now;
    const wanted = this.#letters.toLowerCase();
    const words = this.options.map(({ value, label }) => `${label ?? value}`.toLowerCase());
    const from = wanted.length > 1 ? this.#chosen : this.#chosen + 1;
    const turned = [...words.keys()].map((index) => (index + Math.max(from, 0)) % words.length);
    const found =
      turned.find((index) => words[index]?.startsWith(wanted)) ??
      turned.find((index) => words[index]?.includes(wanted));
    if (found !== undefined) this.#chosen = found;
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
    if (key in moved) this.#chosen = moved[key] ?? 0;
    else if (does?.kind === 'commit') this.#leave(does.move);
    else if (does?.kind === 'cancel') {
      this.dispatchEvent(new CustomEvent('cancel'));
    } else if (key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey)
      this.#look(key, event.timeStamp);
    else return;
    event.preventDefault();
    if (!does) this.#say();
    this.requestUpdate();
  };

  readonly #blur = (): void => onLeave(this, () => this.dispatchEvent(new CustomEvent('leave')));

  #take(index: number): void {
    this.#chosen = index;
    this.#leave('stay');
  }

  #leave(move: CommitMove): void {
    this.#say();
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: { move } }));
    this.#below.placeSoon();
  }
}

customElements.define('quay-choice-field', QuayChoiceField);
