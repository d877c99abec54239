import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Outcome, Problem } from '../../diagnostics/index.ts';
import { type GivenColumn, insertTableRows, replaceTableRows, type Table } from '../../document/index.ts';
import { tryCells } from '../../notebook/index.ts';
import {
  type Decimal,
  type Destination,
  type Mapping,
  namedMapping,
  type ReadTable,
  readMapped,
  type TableText,
  type TextColumn,
  tableText,
  textColumns,
} from '../../tables/index.ts';
import { findPlace } from '../editing/find-place.ts';
import { putInLabel } from '../editing/put-in.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../shell/dialog-styles.ts';
import { fieldsStyles } from '../shell/fields-styles.ts';
import { columnChoices, columnChoicesStyles } from './column-choices.ts';

/** The most problems, and the most cells without a value, that are named one by one. */
const most = 8;

/** What the person settled for one column of the text, which is asked anew once it is called otherwise. */
interface Settled {
  readonly called: string;
  readonly to: Destination;
}

/** What was made of a text: its columns and where they go; the rows, or why there are none. */
interface Found {
  readonly columns: readonly TextColumn[];
  readonly mapping: Mapping;
  readonly read: Outcome<ReadTable>;
}

/**
 * Takes rows for a table from a text, pasted or from a file. Its columns go where their headers say or the person
 * chooses; what is made of the text is shown beforehand.
 */
export class TableRowsDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    place: { state: true },
    text: { state: true },
    behind: { state: true },
    headed: { state: true },
    decimal: { state: true },
    totals: { state: true },
    notes: { state: true },
    settled: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    columnChoicesStyles,
    css`
      .field textarea {
        font: 13px/1.45 var(--code);
        white-space: pre;
      }
      .file {
        display: flex;
        gap: 10px;
        align-items: baseline;
        margin-block-start: 8px;
      }
      .columns {
        columns: 15rem;
        margin: 8px 0 0;
        padding: 0;
        font-size: 14px;
        list-style: none;
      }
      .columns li {
        padding-inline-start: 1rem;
        text-indent: -1rem;
        break-inside: avoid;
      }
      .columns span {
        color: var(--ink-soft);
      }
      .found {
        max-height: 12rem;
        margin-block-start: 14px;
        overflow: auto;
      }
      .found p {
        margin: 0 0 4px;
      }
    `,
  ];
  declare session: Session;
  declare place: CellPlace | undefined;
  declare text: string;
  declare behind: boolean;
  declare headed: boolean;
  /** What stands in front of decimals, where the person has said it. */
  declare decimal: Decimal | undefined;
  /** What becomes of totals and notes among the rows, where the person has said it. */
  declare totals: 'out' | 'in' | undefined;
  declare notes: 'out' | 'in' | undefined;
  declare settled: ReadonlyMap<number, Settled>;
  declare refusal: string;
  #text: Outcome<TableText> | undefined;
  #found: Found | undefined;

  constructor() {
    super();
    this.place = undefined;
    this.text = '';
    this.behind = false;
    this.headed = true;
    this.decimal = undefined;
    this.totals = undefined;
    this.notes = undefined;
    this.settled = new Map();
    this.refusal = '';
  }

  show(place: CellPlace): void {
    this.place = place;
    this.text = '';
    this.behind = false;
    this.headed = true;
    this.decimal = undefined;
    this.totals = undefined;
    this.notes = undefined;
    this.settled = new Map();
    this.refusal = '';
    void this.updateComplete.then(() => this.renderRoot.querySelector('dialog')?.showModal());
  }

  get #table(): Table | undefined {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    return found?.part.kind === 'table' ? found.part : undefined;
  }

  override willUpdate(changed: PropertyValues): void {
    if (
      !['place', 'text', 'headed', 'decimal', 'totals', 'notes', 'settled'].some((name) => changed.has(name))
    )
      return;
    const table = this.#table;
    if (changed.has('place') || changed.has('text'))
      this.#text =
        table && this.text.trim() !== ''
          ? tableText(this.text, table.columns, {
              registry: this.session.notebook.model.registry,
            })
          : undefined;
    this.#found = table && this.#text ? this.#read(table, this.#text) : undefined;
  }

  #read(table: Table, text: Outcome<TableText>): Found {
    const { headed, decimal, totals, notes, session } = this;
    if (!text.ok) return { columns: [], mapping: { headed, goes: new Map() }, read: text };
    const columns = textColumns(text.value, headed);
    const goes = new Map(headed ? namedMapping(text.value, table.columns).goes : []);
    for (const column of columns) {
      const settled = this.settled.get(column.position);
      if (settled?.called === callOf(column)) goes.set(column.position, settled.to);
    }
    const mapping = { headed, goes };
    const id = `${this.place?.sheet}.${table.name}`;
    const check = tryCells(session.notebook, id);
    const read = readMapped(text.value, table.columns, mapping, {
      check,
      ...(decimal && { decimal }),
      ...(totals && { totals }),
      ...(notes && { notes }),
    });
    return { columns, mapping, read };
  }

  override render(): TemplateResult {
    const table = this.#table;
    return html`<dialog
      aria-labelledby="title"
      @close=${() => {
        this.place = undefined;
      }}
    >
      <h2 id="title">Rows from CSV or a spreadsheet</h2>
      ${table ? this.#fields(table) : nothing}
    </dialog>`;
  }

  #fields(table: Table): TemplateResult {
    const found = this.#found;
    const read = found?.read;
    return html`${found ? nothing : columnsExpected(table)}
      <label class="field"
        >Rows
        <textarea
          rows=${found ? 4 : 8}
          autofocus
          .value=${this.text}
          @input=${(event: Event) => {
            this.text = (event.target as HTMLTextAreaElement).value;
          }}
        ></textarea>
      </label>
      <label class="field file">
        Or a file
        <input type="file" accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values" @change=${this.#file} />
      </label>
      ${found && found.columns.length > 0 ? this.#mapping(table, found) : nothing}
      ${this.decimal !== undefined || asks(read, 'decimal-ambiguous') ? this.#decimals() : nothing}
      ${
        this.totals !== undefined || asks(read, 'row-total')
          ? this.#rowsOut('Totals among the rows', this.totals, (to) => {
              this.totals = to;
            })
          : nothing
      }
      ${
        this.notes !== undefined || asks(read, 'row-note', 'rows-above-headers')
          ? this.#rowsOut('Notes among the rows and above the headers', this.notes, (to) => {
              this.notes = to;
            })
          : nothing
      }
      <fieldset class="choices">
        <legend>Where the rows go</legend>
        ${[false, true].map(
          (behind) => html`<label>
            <input
              type="radio"
              name="where"
              .checked=${this.behind === behind}
              @change=${() => {
                this.behind = behind;
              }}
            />${behind ? 'behind the rows there' : 'in place of the rows there'}
          </label>`,
        )}
      </fieldset>
      <div class="found" role="status" tabindex="0" aria-label="What was read">
        ${found ? foundWords(found) : nothing}
      </div>
      ${this.refusal === '' ? nothing : html`<p class="trouble" role="alert">${this.refusal}</p>`}
      <div class="buttons">
        <button type="button" @click=${this.#close}>Cancel</button>
        <button
          type="button"
          class="main"
          ?disabled=${!read?.ok}
          @click=${() => read?.ok && this.#take(table, read.value)}
        >
          Take the rows
        </button>
      </div>`;
  }

  #mapping(table: Table, { columns, mapping }: Found): TemplateResult {
    const open = columns.filter(({ position }) => !mapping.goes.has(position));
    return html`<div class="choices">
        <label>
          <input
            type="checkbox"
            .checked=${!this.headed}
            @change=${() => {
              this.headed = !this.headed;
              this.settled = new Map();
            }}
          />the first row is data, not the names of columns
        </label>
      </div>
      ${columnChoices({ table, columns, mapping, goes: (column, to) => this.#settle([column], to) })}
      ${
        open.length > 1
          ? html`<button type="button" class="add" @click=${() => this.#leaveOut(open)}>
              Leave out the ${open.length} that go nowhere yet
            </button>`
          : nothing
      }`;
  }

  #decimals(): TemplateResult {
    return html`<fieldset class="choices">
      <legend>What stands in front of decimals</legend>
      ${(['point', 'comma'] as const).map(
        (decimal) => html`<label>
          <input
            type="radio"
            name="decimal"
            .checked=${this.decimal === decimal}
            @change=${() => {
              this.decimal = decimal;
            }}
          />${decimal === 'point' ? 'a point, as in 1,234.5' : 'a comma, as in 1.234,5'}
        </label>`,
      )}
    </fieldset>`;
  }

  #rowsOut(
    legend: string,
    chosen: 'out' | 'in' | undefined,
    choose: (to: 'out' | 'in') => void,
  ): TemplateResult {
    return html`<fieldset class="choices">
      <legend>${legend}</legend>
      ${(['out', 'in'] as const).map(
        (to) => html`<label>
          <input
            type="radio"
            name=${legend}
            .checked=${chosen === to}
            @change=${() => {
              choose(to);
            }}
          />${to === 'out' ? 'left out' : 'rows like the others'}
        </label>`,
      )}
    </fieldset>`;
  }

  #leaveOut(columns: readonly TextColumn[]): void {
    this.#settle(columns, { kind: 'out' });
    // The button that was pressed goes, and the keyboard must be somewhere.
    this.renderRoot.querySelector<HTMLElement>('.found')?.focus();
  }

  #settle(columns: readonly TextColumn[], to: Destination): void {
    const answers = columns.map((column) => [column.position, { called: callOf(column), to }] as const);
    this.settled = new Map([...this.settled, ...answers]);
  }

  #take(table: Table, { length, cells }: ReadTable): void {
    if (!this.place) return;
    const at = { sheet: this.place.sheet, table: table.id };
    const rows = { length, cells };
    const edit = this.behind
      ? insertTableRows(at, table, table.length ?? 0, rows)
      : replaceTableRows(at, table, rows);
    const label = putInLabel(this.behind ? 'add' : 'take', length);
    const done = this.session.apply({ ...edit, label });
    if (done.ok) this.#close();
    else this.refusal = done.problems.map(inWords).join('. ');
  }

  readonly #file = async (event: Event): Promise<void> => {
    const [file] = (event.target as HTMLInputElement).files ?? [];
    if (!file) return;
    try {
      this.text = await file.text();
      this.decimal = undefined;
      this.totals = undefined;
      this.notes = undefined;
      this.settled = new Map();
    } catch (error) {
      this.refusal = `the file cannot be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  };

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}

/** What the text may have, said as long as there is none. */
function columnsExpected(table: Table): TemplateResult {
  return html`<p class="quiet">
      The first line names the columns by symbol or heading, with a unit in brackets where it is another one:
      “thickness (m)”. What it calls otherwise can be told where it goes. The columns are
    </p>
    <ul class="columns">
      ${table.columns.map((column) => (column.kind === 'given' ? columnLine(column) : nothing))}
    </ul>`;
}

/** The symbol of a column, and its heading and unit as a header may have them. */
function columnLine({ name, label, unit }: GivenColumn): TemplateResult {
  const heading = label === undefined || label === name ? '' : label;
  return html`<li>${name} <span>${heading} ${unit === undefined || unit === '' ? '' : `(${unit})`}</span></li>`;
}

/** What a column of a text is known by when the text changes: its header, or else its first value. */
function callOf({ header, first }: TextColumn): string {
  return header === '' ? (first?.text ?? '') : header;
}

function foundWords({ read }: Found): TemplateResult {
  if (!read.ok) return named(read.problems);
  const { length, problems } = read.value;
  const unread = problems.filter(({ code }) => code === 'cell-unread');
  const rows = length === 1 ? '1 row is taken' : `${length} rows are taken`;
  const cells =
    unread.length === 1
      ? '; 1 cell cannot be read and is kept as written:'
      : `; ${unread.length} cells cannot be read and are kept as written:`;
  return html`<p>${rows}${unread.length > 0 ? cells : '.'}</p>
    ${named(problems)}`;
}

/** The first of some problems, and how many more there are. */
function named(problems: readonly Problem[]): TemplateResult {
  const more = problems.length - most;
  return html`${problems
    .slice(0, most)
    .map((one) => html`<p class=${one.severity === 'error' ? 'trouble' : 'quiet'}>${inWords(one)}</p>`)}
    ${more > 0 ? html`<p class="trouble">and ${more} more like these</p>` : nothing}`;
}

/** Whether the text cannot be read until something is said that one of these codes asks for. */
function asks(read: Outcome<ReadTable> | undefined, ...codes: readonly string[]): boolean {
  return read?.ok === false && read.problems.some(({ code }) => codes.includes(code));
}

function inWords({ message, hints }: Problem): string {
  return [message, ...hints].join('; ');
}
