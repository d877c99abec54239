import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { HandValue } from '../../document/index.ts';
import { labelOf, unitByHand } from '../../record/index.ts';
import type { Checked } from '../../review/index.ts';
import { enterHandValue, markSeen, takeOff } from '../../review/index.ts';
import { isBareNumber, unitInPrint } from '../../units/index.ts';
import type { Session } from '../session/session.ts';
import { drawSign } from '../style/signs.ts';
import { saidNow } from './said-now.ts';

/**
 * Where the checker says something of one result or entry: a field for the value by hand, or a button by which an entry is
 * marked as seen at its source. What is typed is entered however the field is left; `done` is told where the person goes on
 * with Enter, and `initials-wanted` where nobody’s initials are known: what was typed stays until they are.
 */
export class QuayHandField extends LitElement {
  static override properties = {
    session: { attribute: false },
    checked: { attribute: false },
    told: { state: true },
  };
  static override styles = css`
    :host {
      display: block;
    }
    span {
      display: flex;
      gap: 6px;
      align-items: baseline;
      justify-content: end;
    }
    input,
    button {
      box-sizing: border-box;
      min-height: 26px;
      border: 1px solid var(--rule);
      border-radius: var(--radius);
      background: var(--paper);
      color: var(--pen);
      font: inherit;
    }
    input {
      width: 6.6em;
      padding: 1px 6px;
      text-align: end;
    }
    button {
      padding: 1px 8px;
      cursor: pointer;
    }
    button[aria-pressed='true'] {
      border-color: transparent;
    }
    :is(input, button):focus-visible {
      outline: 2px solid var(--accent);
      outline-offset: 0;
    }
    .unit {
      min-width: 2.6em;
      overflow-wrap: anywhere;
      color: var(--ink-soft);
      text-align: start;
    }
    .told {
      color: var(--bad);
      font-size: var(--type-small);
      text-align: start;
    }
    .sign {
      width: 12px;
      height: 12px;
      fill: none;
      stroke: currentcolor;
      stroke-width: 2;
    }
  `;
  declare session: Session;
  declare checked: Checked;
  /** Why what was typed is not entered. */
  declare told: string;

  constructor() {
    super();
    this.told = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('pagehide', this.#leave);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('pagehide', this.#leave);
  }

  override focus(): void {
    const field = this.renderRoot.querySelector<HTMLElement>('input, button');
    if (!field) return;
    field.focus();
    if (field instanceof HTMLInputElement) field.select();
  }

  override render(): TemplateResult {
    const { item, row, is } = this.checked;
    // A computed column is compared cell by cell.
    if (item.kind === 'formula column' && row === undefined)
      return html`<span class="unit">cell by cell, in the panel</span>`;
    return html`${is === 'result' ? this.#field() : this.#button()}
      ${this.told === '' ? nothing : html`<div class="told" role="alert">${this.told}</div>`}`;
  }

  #field(): TemplateResult {
    const { hand, item } = this.checked;
    const unit = unitByHand(this.session.notebook, item, this.session.units);
    return html`<span>
      <input
        aria-label="by hand: ${labelOf(item)}${this.#rowWords()}"
        autocomplete="off"
        spellcheck="false"
        .value=${hand?.entry ?? ''}
        @change=${this.#leave}
        @keydown=${this.#key}
      />
      <span class="unit">${unit && hand?.entry === undefined ? unitInPrint(unit.text) : ''}</span>
    </span>`;
  }

  #button(): TemplateResult {
    const { item, state } = this.checked;
    const words = state === 'seen' ? 'seen' : state === 'stale' ? 'see again' : 'mark as seen';
    return html`<span>
      <button
        aria-pressed=${state === 'seen'}
        aria-label="${words} at its source: ${labelOf(item)}${this.#rowWords()}"
        @click=${this.#mark}
      >
        ${state === 'seen' ? drawSign('holds') : nothing} ${words}
      </button>
      <span class="unit"></span>
    </span>`;
  }

  #rowWords(): string {
    const { row } = this.checked;
    return row === undefined ? '' : `, row ${row + 1}`;
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') {
      const { target } = event;
      if (target instanceof HTMLInputElement) target.value = this.checked.hand?.entry ?? '';
      this.told = '';
      return;
    }
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (this.#enter()) this.dispatchEvent(new CustomEvent('done', { bubbles: true, composed: true }));
  };

  readonly #leave = (): void => {
    this.#enter();
  };

  /** Enters what stands in the field, if it is something else than before; false where it cannot be. */
  #enter(): boolean {
    const typed = this.renderRoot.querySelector('input')?.value.trim();
    const { session, checked } = this;
    const { item, subject } = checked;
    const hand = this.#handNow();
    if (typed === undefined || typed === (hand?.entry ?? '')) return true;
    if (typed === '') return hand === undefined || this.#apply(takeOff('handValues', hand.id));
    if (!this.#hasInitials()) return false;
    const unit = isBareNumber(typed) ? unitByHand(session.notebook, item, session.units) : undefined;
    const entry = unit === undefined ? typed : `${typed} ${unit.text}`;
    const { tolerance, note } = hand ?? {};
    const kept = { ...(tolerance !== undefined && { tolerance }), ...(note !== undefined && { note }) };
    return this.#apply(enterHandValue(session.notebook, subject, { entry, ...saidNow(session), ...kept }));
  }

  /** The hand value as the book has it: who goes on by Enter leaves the field before it is drawn again. */
  #handNow(): HandValue | undefined {
    const { item, row } = this.checked.subject;
    return this.session.notebook.book.review.handValues.find(({ of }) => of.item === item && of.row === row);
  }

  readonly #mark = (): void => {
    const { session, checked } = this;
    const { seen, state, item, subject } = checked;
    const done =
      seen && state === 'seen'
        ? this.#apply(takeOff('seen', seen.id))
        : this.#hasInitials() && this.#apply(markSeen(session.notebook, subject, item, saidNow(session)));
    if (done && state !== 'seen')
      this.dispatchEvent(new CustomEvent('done', { bubbles: true, composed: true }));
  };

  #hasInitials(): boolean {
    if (this.session.checker !== '') return true;
    this.told = 'Enter your initials first: they stand beside what you check.';
    this.dispatchEvent(new CustomEvent('initials-wanted', { bubbles: true, composed: true }));
    return false;
  }

  #apply(edit: Parameters<Session['apply']>[0]): boolean {
    const applied = this.session.apply(edit);
    this.told = applied.ok ? '' : (applied.problems[0]?.message ?? '');
    return applied.ok;
  }
}
