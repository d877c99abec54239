import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Option } from '../../document/index.ts';
import { refusalWords } from '../../record/index.ts';
import { unitInPrint } from '../../units/index.ts';
import { unitOfLimits } from '../editing/cells/carry-unit.ts';
import { findPlace } from '../editing/find-place.ts';
import { type ChartChoices, chartChoices } from '../editing/lines/chart-columns.ts';
import {
  type DetailName,
  type Details,
  detailsAt,
  detailsEdit,
  drawnBy,
  withTable,
} from '../editing/lines/details.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import type { CellPlace } from '../view-model/place.ts';

type Field =
  | { readonly kind: 'text' | 'lines' | 'flag'; readonly words: string }
  | {
      readonly kind: 'select';
      readonly words: string;
      readonly choices: readonly string[];
      /** What a choice does, where its name alone does not say it. */
      readonly help?: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'chosen'; readonly words: string; readonly of: 'table' | 'x' }
  | { readonly kind: 'columns'; readonly words: string };

/** How each detail is asked for, in the order of the dialog. */
const fields: Readonly<Record<DetailName, Field>> = {
  name: { kind: 'text', words: 'Name in formulas' },
  title: { kind: 'text', words: 'Title' },
  label: { kind: 'text', words: 'Heading' },
  type: { kind: 'select', words: 'Holds', choices: ['number', 'text', 'truth', 'date'] },
  unit: { kind: 'text', words: 'Unit' },
  options: { kind: 'lines', words: 'Options, one a line: value = words' },
  from: { kind: 'text', words: 'Options from the column' },
  min: { kind: 'text', words: 'At least' },
  max: { kind: 'text', words: 'At most' },
  optional: { kind: 'flag', words: 'may be blank' },
  role: {
    kind: 'select',
    words: 'These words are',
    choices: ['text', 'heading', 'caution', 'assumption', 'open item', 'source'],
  },
  form: {
    kind: 'select',
    words: 'Form',
    choices: ['line', 'bar', 'histogram'],
    help: { histogram: 'counts the rows whose values lie in each of equal steps' },
  },
  table: { kind: 'chosen', words: 'Table', of: 'table' },
  x: { kind: 'chosen', words: 'Over the column', of: 'x' },
  y: { kind: 'columns', words: 'Columns drawn' },
  applies: { kind: 'text', words: 'Applies where (a condition; blank: always)' },
  note: { kind: 'lines', words: 'Note' },
};

/** What a line, column, table, chart or text has beyond its cells: range, note, options, type, unit, role, columns. */
export class DetailsDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    place: { state: true },
    draft: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      dialog {
        width: min(28rem, calc(100vw - 48px));
      }
      textarea {
        resize: vertical;
      }
      .columns {
        max-height: 13rem;
        /* Room for the ring of what has the focus, which the scrolling would cut off. */
        margin-inline-start: -5px;
        padding-inline-start: 5px;
        overflow: auto;
      }
      .choices + .trouble {
        margin-block-start: 10px;
      }
      .columns label {
        display: block;
      }
    `,
  ];
  declare session: Session;
  declare place: CellPlace | undefined;
  declare draft: Details;
  declare refusal: string;

  constructor() {
    super();
    this.place = undefined;
    this.draft = {};
    this.refusal = '';
  }

  show(place: CellPlace): void {
    this.place = place;
    this.draft = detailsAt(this.session.notebook.book, place);
    this.refusal = '';
    void this.updateComplete.then(() => showModal(this.renderRoot.querySelector('dialog')));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // What was refused stands there no more once anything is changed.
    if (changed.size > 0 && !changed.has('refusal')) this.refusal = '';
  }

  override render(): TemplateResult {
    const names = (Object.keys(fields) as DetailName[]).filter((name) => this.draft[name] !== undefined);
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    const called =
      found?.kind === 'row' ? found.row.name : found?.kind === 'column' ? found.column.name : undefined;
    return html`<dialog
      aria-labelledby="title"
      @close=${() => {
        this.place = undefined;
      }}
    >
      <h2 id="title">Details${called === undefined ? nothing : html` of ${called}`}</h2>
      ${
        this.place
          ? html`<form class="fields" @submit=${this.#keep}>
              ${names.map((name) => this.#field(name, fields[name]))}
              ${this.refusal === '' ? nothing : html`<p class="trouble" role="alert">${this.refusal}</p>`}
              <div class="buttons">
                <button type="button" @click=${this.#close}>Cancel</button>
                <button class="main">Keep</button>
              </div>
            </form>`
          : nothing
      }
    </dialog>`;
  }

  /** The unit in which a bare number is meant there, beside the words that ask for it. */
  #unitOf(name: DetailName): string {
    if (!this.place || (name !== 'min' && name !== 'max')) return '';
    const unit = unitOfLimits(this.session.notebook, this.place);
    return unit === undefined ? '' : `, in ${unitInPrint(unit)}`;
  }

  #field(name: DetailName, field: Field): TemplateResult {
    const value = this.draft[name] ?? '';
    switch (field.kind) {
      case 'text':
        return html`<label class="field">${field.words}${this.#unitOf(name)}<input name=${name} .value=${value} @input=${this.#typed} /></label>`;
      case 'lines':
        return html`<label class="field"
          >${field.words}<textarea name=${name} rows=${name === 'options' ? 6 : 2} .value=${value} @input=${this.#typed}></textarea>
        </label>`;
      case 'flag':
        return html`<div class="choices">
          <label>
            <input
              type="checkbox"
              .checked=${value === 'yes'}
              @change=${(event: Event) => this.#set(name, (event.target as HTMLInputElement).checked ? 'yes' : '')}
            />${field.words}
          </label>
        </div>`;
      case 'select':
        return html`<label class="field"
          >${field.words}<select name=${name} @change=${this.#typed}>
            ${field.choices.map((choice) => html`<option ?selected=${choice === value}>${choice}</option>`)}
          </select>
        </label>
          ${field.help?.[value] === undefined ? nothing : html`<p class="quiet">${field.help[value]}</p>`}`;
      case 'chosen':
        return html`<label class="field"
          >${field.words}<select name=${name} @change=${this.#typed}>
            ${this.#choices[field.of].map(
              (one) =>
                html`<option value=${one.value} .selected=${live(one.value === value)}>${inWords(one)}</option>`,
            )}
          </select>
        </label>`;
      case 'columns':
        return this.#columns(field.words);
    }
  }

  #columns(words: string): TemplateResult {
    const { y: ticked } = drawnBy(this.draft);
    return html`<fieldset class="choices">
      <legend>${words}</legend>
      <div class="columns">
        ${this.#choices.y.map(
          (one) => html`<label>
            <input
              type="checkbox"
              .checked=${live(ticked.includes(one.value))}
              @change=${({ target }: Event) => {
                const others = ticked.filter((value) => value !== one.value);
                const now = (target as HTMLInputElement).checked ? [...others, one.value] : others;
                this.#set('y', now.join('\n'));
              }}
            />${inWords(one)}
          </label>`,
        )}
      </div>
    </fieldset>`;
  }

  get #choices(): ChartChoices {
    return chartChoices(this.session.notebook, this.place?.sheet ?? '', drawnBy(this.draft));
  }

  readonly #typed = (event: Event): void => {
    const { name, value } = event.target as HTMLInputElement;
    this.#set(name as DetailName, value);
  };

  #set(name: DetailName, value: string): void {
    const { place, session } = this;
    this.draft =
      name === 'table' && place
        ? withTable(session.notebook, place.sheet, this.draft, value)
        : { ...this.draft, [name]: value };
  }

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    if (!this.place) return;
    const edit = detailsEdit(this.session, this.place, this.draft);
    const done = edit.ok && edit.value ? this.session.apply(edit.value) : edit;
    if (done.ok) this.#close();
    else this.refusal = refusalWords(done.problems, this.session.notebook, this.place.sheet).join('. ');
  };

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}

/** An option in words: its symbol, and what that stands for. */
function inWords({ value, label }: Option): string {
  return label === undefined ? value : `${value}: ${label}`;
}
