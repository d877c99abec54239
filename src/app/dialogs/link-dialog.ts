import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { spelledOut } from '../../language/index.ts';
import {
  canLink,
  type FormulaItem,
  type InputItem,
  linkEdit,
  linkSource,
  linkTargets,
} from '../../notebook/index.ts';
import { labelOf, localName, math, refusalWords, resultText, symbolMath } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import type { CellPlace } from '../view-model/place.ts';
import { itemAt } from '../view-model/places.ts';
import { targetsFor } from './go-to-targets.ts';

/** So many lines are listed at once; a word more finds the others. */
const MOST = 60;

type Line = InputItem | FormulaItem;

/** A result, something entered, a check. */
const rankOf = ({ kind, row }: Line): number => (row.kind === 'check' ? 2 : kind === 'input' ? 1 : 0);
const resultFirst = (a: Line, b: Line): number => rankOf(a) - rankOf(b);

/** Asks from which line of the book a given or a choice takes its value: those of its kind, by description, value and unit. */
export class LinkDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    line: { state: true },
    query: { state: true },
    at: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    mathsStyles,
    dialogStyles,
    fieldsStyles,
    css`
      h2 {
        margin-block-end: 4px;
      }
      ul {
        height: min(21rem, 45vh);
        margin: 12px 0 0;
        padding: 0;
        overflow-y: auto;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 7rem 1fr 9rem 11rem;
        gap: 12px;
        padding: 4px 10px;
        cursor: pointer;
      }
      .value {
        font-weight: 600;
        text-align: end;
        font-variant-numeric: tabular-nums;
      }
      .where {
        color: var(--ink-soft);
      }
      li[aria-selected='true'] {
        background: var(--accent-tint);
        /* Seen only where the system forces its colours. */
        outline: 2px solid transparent;
        outline-offset: -2px;
      }
      @media (width < 48rem) {
        li {
          grid-template-columns: 5rem 1fr auto;
        }
        li .where {
          grid-column: 2 / -1;
        }
      }
    `,
  ];
  declare session: Session;
  /** The id of the line that is to be linked. */
  declare line: string | undefined;
  declare query: string;
  /** Which of them is chosen; -1 until the person has typed or gone to one, so that a key too many links nothing. */
  declare at: number;
  declare refusal: string;

  constructor() {
    super();
    this.line = undefined;
    this.query = '';
    this.at = 0;
    this.refusal = '';
  }

  show(place: CellPlace): void {
    this.line = itemAt(this.session.notebook, place)?.id;
    this.query = '';
    this.refusal = '';
    this.at = -1;
    void this.updateComplete.then(() => showModal(this.renderRoot.querySelector('dialog')));
  }

  override render(): TemplateResult {
    const item = this.line === undefined ? undefined : this.session.notebook.model.items.get(this.line);
    return html`<dialog
      aria-labelledby="title"
      @close=${() => {
        this.line = undefined;
      }}
    >
      ${item?.kind === 'input' || item?.kind === 'formula' ? this.#content(item) : nothing}
    </dialog>`;
  }

  #content(item: Line): TemplateResult {
    if (!canLink(item))
      return html`<h2 id="title">${labelOf(item)}</h2>
        <p>Only a given or a choice takes its value from another line; this one is calculated.</p>
        <div class="buttons"><button type="button" autofocus @click=${this.#close}>Close</button></div>`;
    const fitting = this.#found(item);
    const [all, found] = [fitting.length, fitting.slice(0, MOST)];
    const toLink = item.kind === 'input' ? item.row.toLink : undefined;
    return html`<h2 id="title">${labelOf(item)}: take the value from</h2>
      <p class="quiet">
        ${this.#valueWords(item)}${toLink === undefined ? nothing : html`; it stood for ${toLink}`}
      </p>
      <input
        autofocus
        role="combobox"
        aria-label="Name or description of a line"
        aria-expanded=${found.length > 0}
        aria-controls="found"
        aria-activedescendant=${found[this.at] ? `found-${this.at}` : nothing}
        placeholder="Name or description"
        .value=${this.query}
        @input=${this.#typed}
        @keydown=${(event: KeyboardEvent) => this.#key(event, found)}
      />
      <ul id="found" role="listbox" aria-label="Lines of the same kind">
        ${found.map(
          (other, at) => html`<li
            id=${`found-${at}`}
            role="option"
            aria-selected=${at === this.at}
            @click=${() => this.#link(other)}
          >
            <span>${drawMarkup(math(symbolMath(localName(other))))}</span>
            <span>${labelOf(other)}</span>
            <span class="value">${this.#valueWords(other)}</span>
            <span class="where">${this.#sheetOf(other)}</span>
          </li>`,
        )}
      </ul>
      <p class="quiet" role="status">
        ${found.length === 0 ? `No line of its kind is called “${this.query.trim()}”.` : nothing}
        ${all > found.length ? `${found.length} of ${all} lines are listed; type words to find the others.` : nothing}
      </p>
      ${this.refusal === '' ? nothing : html`<p class="trouble" role="alert">${this.refusal}</p>`}
      <div class="buttons">
        <button type="button" @click=${this.#close}>Cancel</button>
        <button type="button" class="main" ?disabled=${!found[this.at]} @click=${() => this.#link(found[this.at])}>
          Link
        </button>
      </div>`;
  }

  /**
   * The lines that fit what is typed, best first; with nothing typed those first that are called as this one is. A result is
   * linked more often than a given, such as the limit it is held to: of those that fit as well it stands before.
   */
  #found(item: Line): readonly Line[] {
    const { notebook } = this.session;
    const from = linkSource(item, notebook.model.items);
    const offered = linkTargets(notebook, item.id).filter(({ id }) => id !== from?.id);
    if (this.query.trim() === '') {
      const near = (other: Line): number =>
        other.row.name === item.row.name ? 0 : labelOf(other) === labelOf(item) ? 1 : 2;
      return offered.toSorted((a, b) => near(a) - near(b) || resultFirst(a, b));
    }
    const byId = new Map(offered.map((one) => [one.id, one]));
    const wanted = spelledOut(this.query.trim());
    const isCalledSo = (other: Line): boolean =>
      spelledOut(localName(other)) === wanted || other.id === wanted;
    return targetsFor(this.query, notebook)
      .flatMap(({ kind, sheet, name }) => (kind === 'name' ? (byId.get(`${sheet}.${name}`) ?? []) : []))
      .sort((a, b) => Number(isCalledSo(b)) - Number(isCalledSo(a)) || resultFirst(a, b));
  }

  #valueWords(item: Line): string {
    const { number, unit } = resultText(this.session.notebook, item, this.session.units);
    if (number === '—') return 'blank';
    return `${number}${unit === '' || unit === '°' ? '' : ' '}${unit}`;
  }

  #sheetOf({ sheet }: Line): string {
    return this.session.notebook.book.sheets.find(({ key }) => key === sheet)?.title || sheet;
  }

  readonly #typed = (event: Event): void => {
    this.query = (event.target as HTMLInputElement).value;
    this.at = this.query.trim() === '' ? -1 : 0;
    this.refusal = '';
  };

  #key(event: KeyboardEvent, found: readonly Line[]): void {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      this.refusal = '';
      this.at = Math.max(0, Math.min(found.length - 1, this.at + step));
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' }),
      );
    } else if (event.key === 'Enter') {
      // It is not for what has the focus once the dialog is closed.
      event.preventDefault();
      this.#link(found[this.at]);
    }
  }

  #link(other: Line | undefined): void {
    if (!other || this.line === undefined) return;
    const edit = linkEdit(this.session.notebook, this.line, other.id);
    const done = edit.ok ? this.session.apply(edit.value) : edit;
    if (done.ok) this.#close();
    else this.refusal = refusalWords(done.problems, this.session.notebook, this.session.sheet).join('. ');
  }

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}
