import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Outcome } from '../../diagnostics/index.ts';
import type { Table } from '../../document/index.ts';
import { tryCells } from '../../notebook/index.ts';
import {
  type Decimal,
  type Delimiter,
  type Destination,
  looksLikeData,
  type Mapping,
  namedMapping,
  readMapped,
  type TableReading,
  type TableText,
  type TextColumn,
  tableText,
  textColumns,
} from '../../tables/index.ts';
import { accountNumbers, accountWords } from '../editing/account.ts';
import { unitOnScreen } from '../editing/carried-unit.ts';
import { findPlace } from '../editing/find-place.ts';
import { onScreenMapping } from '../editing/on-screen-mapping.ts';
import { pastedText } from '../editing/pasted-text.ts';
import { putRows, type Where } from '../editing/put-rows.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../shell/dialog-styles.ts';
import { fieldsStyles } from '../shell/fields-styles.ts';
import { columnChoices, columnChoicesStyles } from './column-choices.ts';
import { rowsPreview } from './rows-preview.ts';
import { columnsExpected, namedProblems, problemWords } from './rows-words.ts';
import { tableRowsStyles } from './table-rows-styles.ts';

/** What the person settled for one column of the text, which is asked anew once it is called otherwise. */
interface Settled {
  readonly called: string;
  readonly to: Destination;
}

/** What was made of a text: its columns and where they go; the rows, or why there are none. */
interface Found {
  readonly columns: readonly TextColumn[];
  readonly mapping: Mapping;
  readonly read: TableReading;
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
    where: { state: true },
    delimiter: { state: true },
    headed: { state: true },
    decimal: { state: true },
    totals: { state: true },
    notes: { state: true },
    settled: { state: true },
    refusal: { state: true },
  };
  static override styles = [dialogStyles, fieldsStyles, columnChoicesStyles, tableRowsStyles];
  declare session: Session;
  declare place: CellPlace | undefined;
  declare text: string;
  declare where: Where;
  /** What parts the cells, where it was said; otherwise it is found out. */
  declare delimiter: Delimiter | undefined;
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
    this.#begin('');
  }

  /** Opens for the table at a place, with what was pasted there if that leads here. */
  show(place: CellPlace, pasted?: string): void {
    this.place = place;
    this.#begin(pasted ?? '');
    const found = findPlace(this.session.notebook.book, place);
    if (pasted !== undefined) this.where = { kind: 'from', row: found?.kind === 'cell' ? found.row : 0 };
    if (pasted !== undefined && found?.part.kind === 'table') this.#guess(found.part, pasted);
    void this.updateComplete.then(() => this.renderRoot.querySelector('dialog')?.showModal());
  }

  #begin(text: string): void {
    this.text = text;
    this.where = { kind: 'replace' };
    this.delimiter = undefined;
    this.headed = true;
    this.decimal = undefined;
    this.totals = undefined;
    this.notes = undefined;
    this.settled = new Map();
    this.refusal = '';
  }

  /** How a pasted text is looked at first: parted as the page would, with a heading unless its first row is like data. */
  #guess(table: Table, pasted: string): void {
    const parted = pastedText(pasted, table.columns, this.session.notebook.model.registry);
    if (!parted.ok) return;
    const { text } = parted.value;
    this.delimiter = text.delimiter;
    this.headed = namedMapping(text, table.columns).goes.size > 0 || !looksLikeData(text);
  }

  get #table(): Table | undefined {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    return found?.part.kind === 'table' ? found.part : undefined;
  }

  override willUpdate(changed: PropertyValues): void {
    const told = ['place', 'text', 'delimiter', 'headed', 'decimal', 'totals', 'notes', 'settled'];
    if (!told.some((name) => changed.has(name))) return;
    const table = this.#table;
    const { registry } = this.session.notebook.model;
    const parts = { registry, ...(this.delimiter && { delimiter: this.delimiter }) };
    if (changed.has('place') || changed.has('text') || changed.has('delimiter'))
      this.#text = table && this.text.trim() !== '' ? tableText(this.text, table.columns, parts) : undefined;
    this.#found = table && this.#text ? this.#read(table, this.#text) : undefined;
  }

  #read(table: Table, text: Outcome<TableText>): Found {
    const { headed, decimal, totals, notes, session } = this;
    if (!text.ok)
      return { columns: [], mapping: { headed, goes: new Map() }, read: { ...text, account: undefined } };
    const columns = textColumns(text.value, headed);
    const goes = new Map(
      headed ? namedMapping(text.value, table.columns).goes : this.#byPlace(table, columns),
    );
    for (const column of columns) {
      const settled = this.settled.get(column.position);
      if (settled?.called === callOf(column)) goes.set(column.position, settled.to);
    }
    const sheet = this.place?.sheet ?? '';
    const shown = { sheet, table, view: session.units };
    const mapping = { headed, goes };
    const meant = onScreenMapping(session.notebook, shown, mapping);
    const check = tryCells(session.notebook, `${sheet}.${table.name}`);
    const read = readMapped(text.value, table.columns, meant, {
      check,
      ...(decimal && { decimal }),
      ...(totals && { totals }),
      ...(notes && { notes }),
    });
    return { columns, mapping, read };
  }

  /** Cells that were pasted without headings, one column beside the other from where they were pasted on. */
  #byPlace(table: Table, columns: readonly TextColumn[]): readonly (readonly [number, Destination])[] {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    if (this.where.kind !== 'from' || (found?.kind !== 'cell' && found?.kind !== 'column')) return [];
    const first = table.columns.indexOf(found.column);
    return columns.flatMap(({ position }) => {
      const column = table.columns[first + position];
      return column?.kind === 'given'
        ? [[position, { kind: 'column', name: column.name, unit: '' }] as const]
        : [];
    });
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
      ${this.#parting()} ${this.#places(table)}
      <div class="found" role="status" tabindex="0" aria-label="What was read">
        ${found ? this.#words(table, found) : nothing}
      </div>
      ${this.refusal === '' ? nothing : html`<p class="trouble" role="alert">${this.refusal}</p>`}
      <div class="buttons">
        <button type="button" @click=${this.#close}>Cancel</button>
        <button
          type="button"
          class="main"
          ?disabled=${!read?.ok}
          @click=${() => found && this.#take(table, found)}
        >
          Take the rows
        </button>
      </div>`;
  }

  #mapping(table: Table, found: Found): TemplateResult {
    const { columns, mapping } = found;
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
      ${columnChoices({ table, columns, mapping, taken: this.#taken(table, found), unit: (name) => this.#unit(table, name), goes: (column, to) => this.#settle([column], to) })}
      ${
        open.length > 1
          ? html`<button type="button" class="add" @click=${() => this.#leaveOut(open)}>
              Leave out the ${open.length} that go nowhere yet
            </button>`
          : nothing
      }`;
  }

  /** The unit that the page shows above a column, and that its bare numbers are in. */
  #unit(table: Table, name: string): string {
    const field = table.columns.find((one) => one.name === name)?.id ?? '';
    const place = { sheet: this.place?.sheet ?? '', part: table.id, item: 'r0', field };
    return unitOnScreen(this.session.notebook, place, this.session.units) ?? '';
  }

  #taken(table: Table, { columns, mapping, read }: Found) {
    const { notebook, units } = this.session;
    const id = `${this.place?.sheet}.${table.name}`;
    return read.ok ? rowsPreview(notebook, id, units, columns, mapping, read.value) : new Map();
  }

  /** What parts the cells, where a text without tabs leaves that open. */
  #parting(): TemplateResult | typeof nothing {
    if (this.text.includes('\t') || !/[,;]/.test(this.text)) return nothing;
    const now = this.delimiter ?? (this.#text?.ok ? this.#text.value.delimiter : ',');
    return html`<fieldset class="choices">
      <legend>What parts the cells of a line</legend>
      ${parting.map(
        ([delimiter, words]) => html`<label>
          <input
            type="radio"
            name="parting"
            .checked=${now === delimiter}
            @change=${() => {
              this.delimiter = delimiter;
              this.settled = new Map();
            }}
          />${words}
        </label>`,
      )}
    </fieldset>`;
  }

  #places(table: Table): TemplateResult {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    const row = this.where.kind === 'from' ? this.where.row : found?.kind === 'cell' ? found.row : undefined;
    const choices: readonly (readonly [Where, string])[] = [
      ...(row === undefined
        ? []
        : [[{ kind: 'from', row }, `over the rows from row ${row + 1} on`] as const]),
      [{ kind: 'replace' }, 'in place of the rows there'],
      [{ kind: 'behind' }, 'behind the rows there'],
    ];
    return html`<fieldset class="choices">
      <legend>Where the rows go</legend>
      ${(table.length === 0 ? choices.slice(-2) : choices).map(
        ([where, words]) => html`<label>
          <input
            type="radio"
            name="where"
            .checked=${this.where.kind === where.kind}
            @change=${() => {
              this.where = where;
            }}
          />${words}
        </label>`,
      )}
    </fieldset>`;
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

  #take(table: Table, { read }: Found): void {
    if (!this.place || !read.ok) return;
    const account = read.account ? accountWords(read.account.counts, read.value.problems) : '';
    const done = this.session.apply(putRows(this.place.sheet, table, read.value, this.where, account));
    if (done.ok) this.#close();
    else this.refusal = done.problems.map(problemWords).join('. ');
  }

  #words(table: Table, { read }: Found): TemplateResult {
    const numbers = read.account ? accountNumbers(read.account.counts) : '';
    if (!read.ok)
      return html`${namedProblems(read.problems)}${numbers === '' ? nothing : html`<p>${numbers}.</p>`}`;
    const { length, problems, cells } = read.value;
    const emptied = table.columns.filter(({ kind, name }) => kind === 'given' && !(name in cells));
    const rows = length === 1 ? '1 row is taken' : `${length} rows are taken`;
    const wiped = this.where.kind === 'replace' && (table.length ?? 0) > 0 && emptied.length > 0;
    return html`<p>${rows}; ${numbers}.</p>
      ${
        wiped
          ? html`<p class="trouble">
              The rows there go, and ${emptied.map(({ name }) => name).join(', ')} will be blank: the text has nothing for
              ${emptied.length === 1 ? 'it' : 'them'}.
            </p>`
          : nothing
      }
      ${namedProblems(problems)}`;
  }

  readonly #file = async (event: Event): Promise<void> => {
    const [file] = (event.target as HTMLInputElement).files ?? [];
    if (!file) return;
    try {
      this.text = await file.text();
      this.decimal = undefined;
      this.totals = undefined;
      this.notes = undefined;
      this.delimiter = undefined;
      this.settled = new Map();
    } catch (error) {
      this.refusal = `the file cannot be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  };

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}

/** What may part the cells of a line without tabs. */
const parting: readonly (readonly [Delimiter, string])[] = [
  [',', 'commas'],
  [';', 'semicolons'],
  ['\t', 'nothing: a line is one cell'],
];

/** What a column of a text is known by when the text changes: its header, or else its first value. */
function callOf({ header, first }: TextColumn): string {
  return header === '' ? (first?.text ?? '') : header;
}

/** Whether the text cannot be read until something is said that one of these codes asks for. */
function asks(read: TableReading | undefined, ...codes: readonly string[]): boolean {
  return read?.ok === false && read.problems.some(({ code }) => codes.includes(code));
}
