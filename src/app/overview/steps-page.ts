import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula } from '../../language/index.ts';
import { formulaInForce, type Item } from '../../notebook/index.ts';
import {
  checkedValue,
  checkStateWords,
  comparedSides,
  countWords,
  isSideWorked,
  labelOf,
  localName,
  math,
  quantityText,
  resultText,
  saidWords,
  sourceOfLine,
  symbolMath,
  typesetFormula,
} from '../../record/index.ts';
import { type Checked, checkedAt, type StepTo, stepsTo } from '../../review/index.ts';
import { AskedInitials } from '../checking/asked-initials.ts';
import type { QuayHandField } from '../checking/quay-hand-field.ts';
import type { Session } from '../session/session.ts';
import { drawFormula } from '../sheet/line/formula-view.ts';
import { drawLineNumbers, drawRowNumbers } from '../sheet/numbers/numbers-view.ts';
import { MATHS_SIZE, PRINT_WIDTH } from '../sheet/paper/page-measure.ts';
import { tableRow } from '../sheet/place/grid-map.ts';
import { drawMarkup } from '../style/markup.ts';
import { OwnWidth } from '../style/own-width.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { itemAt, placeOfId } from '../view-model/places.ts';
import { AskedHeading } from './asked-heading.ts';
import { stepsStyles } from './steps-styles.ts';

/** How many steps away the page may be asked to go; the last is all the way down to the entries. */
const DEPTHS: readonly { readonly most: number; readonly words: string }[] = [
  { most: 1, words: '1 step' },
  { most: 2, words: '2' },
  { most: 3, words: '3' },
  { most: 5, words: '5' },
  { most: Number.POSITIVE_INFINITY, words: 'down to the entries' },
];

/** So many steps are drawn; the way to a result of a large book may have thousands. */
const MOST_STEPS = 250;

/** How many em of formula fit on paper, beside its margin and what is said by hand. */
const ROOM_ON_PAPER = Math.floor((PRINT_WIDTH - 310) / MATHS_SIZE);

/** How many steps down each open book was last gone, which paper has as well. */
const depths = new WeakMap<Session, number>();

/** What margin, field and the edges of the page take of its width in px, in a window of some width; as the styles have it. */
const besideFormulas = (window: number): number => (window < 768 ? 60 : window <= 1280 ? 350 : 415);

/**
 * A page of the book for who calculates by hand: one result with its formula, the numbers in it and what it comes to, and
 * below it what it rests on, as many steps down as are asked for.
 */
export class StepsPage extends LitElement {
  static override properties = {
    session: { attribute: false },
    most: { state: true },
    room: { state: true },
  };
  static override styles = stepsStyles;
  declare session: Session;
  declare most: number;
  /** How many em of formula fit. */
  declare room: number;
  readonly #initials = new AskedInitials(this);

  constructor() {
    super();
    this.most = 1;
    this.room = 30;
    new OwnWidth(this, (width) => {
      // Paper has the same room, whatever it is measured in.
      if (!this.hasAttribute('paper'))
        this.room = Math.max(10, Math.floor((width - besideFormulas(window.innerWidth)) / MATHS_SIZE));
    });
    new AskedHeading(this, ({ kind }) => kind !== 'kept' && kind !== 'hand' && kind !== 'order', 'after');
  }

  get #onPaper(): boolean {
    return this.hasAttribute('paper');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.most = depths.get(this.session) ?? this.most;
    if (this.#onPaper) this.room = ROOM_ON_PAPER;
  }

  override render(): TemplateResult {
    const { session } = this;
    const item = itemAt(session.notebook, session.place);
    return html`<div class="page" @done=${this.#goOn}>
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.steps}</h2>
      ${
        item
          ? this.#steps(item)
          : html`<p class="words quiet">
              Choose a calculated line or cell; the panel beside it has “Step by step” below its numbers.
            </p>`
      }
    </div>`;
  }

  #steps(item: Item): TemplateResult {
    const { notebook, place } = this.session;
    const row = 'table' in item ? place && tableRow(place.item) : undefined;
    const all = stepsTo(notebook, row === undefined ? { item } : { item, row }, this.most);
    const shown = all.slice(0, MOST_STEPS);
    return html`<p class="words quiet">
        Each result with its formula, the numbers in it and what it comes to; below it what it rests on, each before its own
        grounds.
      </p>
      ${this.#onPaper ? nothing : this.#tools()}
      <p class="heads" aria-hidden="true">By hand</p>
      <ol>
        ${shown.map((step) => this.#step(step))}
      </ol>
      ${
        all.length > shown.length
          ? html`<p class="words quiet">${countWords(all.length - shown.length, 'further step')} not shown.</p>`
          : nothing
      }`;
  }

  /** How far down it goes, and who checks. */
  #tools(): TemplateResult {
    return html`<div class="words fields tools">
      <fieldset>
        <legend>Back</legend>
        ${DEPTHS.map(
          ({ most, words }) => html`<label>
            <input
              type="radio"
              name="most"
              .checked=${this.most === most}
              @change=${() => {
                this.most = most;
                depths.set(this.session, most);
              }}
            />${words}
          </label>`,
        )}
      </fieldset>
      ${this.#initials.draw()}
      </div>`;
  }

  #step(step: StepTo): TemplateResult {
    const { item, row, away } = step;
    const { session } = this;
    const isWhole = 'table' in item && row === undefined;
    const source = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
    const reference = sourceOfLine(session.notebook, source, item);
    const one = isWhole && item.kind === 'formula column' ? undefined : this.#checked(step);
    return html`<li class="step ${away === 0 ? 'asked' : ''}">
      <div class="name">${drawMarkup(math(symbolMath(localName(item))))}${row === undefined ? nothing : html`<div class="quiet">row ${row + 1}</div>`}</div>
      <div class="what">
        <div class="line">
          ${this.#onPaper ? html`<span>${labelOf(item)}</span>` : html`<button @click=${() => this.#go(step)}>${labelOf(item)}</button>`}
          <span class="result">${this.#result(step)}</span>
        </div>
        ${this.#working(step)}
        ${reference === '' ? nothing : html`<p class="quiet source">${reference}</p>`}
      </div>
      <div class="hand">${one ? this.#hand(one) : nothing}</div>
    </li>`;
  }

  /** The field of a value by hand; on paper what stands in it, or room to write. */
  #hand(one: Checked): TemplateResult {
    if (!this.#onPaper)
      return html`<quay-hand-field .session=${this.session} .checked=${one}></quay-hand-field>`;
    const { hand, seen, state } = one;
    const said = hand ?? seen;
    if (!said) return html`<span class="to-write"></span>`;
    return html`${hand?.entry ?? ''} <span class="quiet">${checkStateWords[state]}, ${saidWords(said)}</span>`;
  }

  #checked({ item, row }: StepTo): Checked {
    return checkedAt(this.session.notebook, item, item.kind === 'input column' ? undefined : row);
  }

  #result({ item, row }: StepTo): string {
    const { notebook, units } = this.session;
    if ('table' in item && row === undefined) return countWords(notebook.rowsOf(item.table) ?? 0, 'row');
    if (row === undefined) return quantityText(resultText(notebook, item, units));
    return checkedValue(notebook, checkedAt(notebook, item, row), units);
  }

  /** The formula in force with its numbers; of what is stated, that it is. */
  #working({ item, row }: StepTo): TemplateResult | typeof nothing {
    if (!('checked' in item)) return nothing;
    const { session, room } = this;
    const stated =
      item.kind === 'formula'
        ? item.stated?.statement
        : row === undefined
          ? undefined
          : item.cells?.get(row)?.statement;
    if (stated)
      return html`<p class="stated">stated: ${stated.entry}${stated.reason === '' ? '' : `, ${stated.reason}`}</p>`;
    const checked = formulaInForce(session.notebook, item, row)?.checked;
    if (!checked?.whole || checked.text.trim() === '') return nothing;
    return html`<div class="math symbols" tabindex="0" role="group" aria-label="Formula in symbols">
        ${drawFormula(typesetFormula(checked, room), 'symbols')}
      </div>
      ${this.#numbers(item, checked, row)}`;
  }

  #numbers(item: Extract<Item, { checked: unknown }>, checked: CheckedFormula, row: number | undefined) {
    const { session, room } = this;
    if (item.kind === 'formula column') return drawRowNumbers(session, item, row, room);
    const sides = comparedSides(session.notebook, item, session.units);
    const isWorked = checked.syntax.kind === 'comparison' && isSideWorked(item);
    return html`${drawLineNumbers(session, item, checked, room)}
    ${sides && isWorked ? html`<p class="comes-to">${sides.left} ${sides.sign} ${sides.right}</p>` : nothing}`;
  }

  #go({ item, row }: StepTo): void {
    const place = placeOfId(this.session.notebook, item.id);
    if (place) this.session.jumpTo(row === undefined ? place : { ...place, item: `r${row}` });
  }

  /** Enter leads to the next field. */
  readonly #goOn = ({ target }: Event): void => {
    const fields = [...this.renderRoot.querySelectorAll<QuayHandField>('quay-hand-field')];
    fields[fields.indexOf(target as QuayHandField) + 1]?.focus();
  };
}
