import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { type Outcome, type Problem, succeed } from '../../../diagnostics/index.ts';
import { applyEdit, type Edit, joinEdits, type Table } from '../../../document/index.ts';
import { type Notebook, openNotebook } from '../../../notebook/index.ts';
import type { Delimiter, Destination, TextColumn } from '../../../tables/index.ts';
import { displayedUnit } from '../../editing/cells/carry-unit.ts';
import { accountWords } from '../../editing/clipboard/account.ts';
import type { Extent, PastedOver } from '../../editing/clipboard/block.ts';
import { putRows } from '../../editing/clipboard/put-rows.ts';
import { isSingleNumber } from '../../editing/clipboard/single-number.ts';
import { type Becomes, type Others, othersOf, whatBecomes } from '../../editing/clipboard/what-becomes.ts';
import type { Where } from '../../editing/clipboard/where.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { Session } from '../../session/session.ts';
import { readTableFile } from '../../storage/read-table-file.ts';
import { reasonOf } from '../../storage/storage-error.ts';
import { dialogStyles } from '../../style/dialog-styles.ts';
import { fieldsStyles } from '../../style/fields-styles.ts';
import { showModal } from '../../style/modal-dialog.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { COLUMNS_AT_ONCE, columnChoices, columnChoicesStyles } from './column-choices.ts';
import { callOf, type FoundRows, type Settled } from './find-rows.ts';
import { followHeadings } from './follow-headings.ts';
import { isCorrection } from './is-correction.ts';
import { keptColumns, othersMeant, othersQuestion } from './kept-columns.ts';
import { repeatCell } from './repeat-cell.ts';
import { choiceOf, delimiterWords } from './rows-choices.ts';
import { openQuestions, type Said, withAnswer } from './rows-questions.ts';
import { RowsReader } from './rows-reader.ts';
import type { RowsReading } from './rows-reading.ts';
import { rowsTextField, skippedField } from './rows-text-field.ts';
import {
  belowWords,
  columnsExpected,
  foundWords,
  inShort,
  problemWords,
  readingWords,
  repeatedWords,
} from './rows-words.ts';
import { tableRowsStyles } from './table-rows-styles.ts';

const ONE_CELL: Extent = { rows: 1, columns: 1 };

/** Whether columns go nowhere because the row in the place of headings looks like data. */
function looksUnheaded(read: RowsReading): boolean {
  return (
    !read.ok && read.problems.some(({ code, data }) => code === 'column-undecided' && data.data === true)
  );
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
    said: { state: true },
    others: { state: true },
    skipped: { state: true },
    settled: { state: true },
    columnsShown: { state: true },
    refusal: { state: true },
    remarks: { state: true },
  };
  static override styles = [dialogStyles, fieldsStyles, columnChoicesStyles, tableRowsStyles];
  declare session: Session;
  declare place: CellPlace | undefined;
  declare text: string;
  declare where: Where;
  /** What parts the cells, where it was said; otherwise it is found out. */
  declare delimiter: Delimiter | undefined;
  declare headed: boolean;
  /** What the person has answered of the numbers and rows. */
  declare said: Said;
  /** What becomes of what other columns hold in rows that are gone over; undefined while it is open. */
  declare others: Others | undefined;
  /** The lines to leave out, as they are typed: 1-3, 14. */
  declare skipped: string;
  declare settled: ReadonlyMap<number, Settled>;
  /** How many columns of the text are shown. */
  declare columnsShown: number;
  declare refusal: string;
  /** What there is to say of the file that the text is from. */
  declare remarks: readonly Problem[];
  readonly #reader = new RowsReader(this);
  /** Whether how the text is parted and headed is guessed, as of a text that was pasted. */
  #guess = false;
  /** Whether a text was pasted into the table, which led here. */
  #wasPasted = false;
  /** Whether the text was corrected since it was read. */
  #isCorrected = false;
  /** The columns of the text that were found last, also where it cannot be parted now. */
  #known: readonly TextColumn[] = [];
  /** Makes the table that the text is for, and the notebook as it would be with it, where there is none in the book. */
  #newTable: { readonly edit: Edit; readonly notebook: Notebook } | undefined;
  /** The row, from 0, from which on a text may go over rows; undefined where it was not pasted into the table. */
  #from: number | undefined;
  /** How many cells were selected where a text was pasted. */
  #over: Extent = ONE_CELL;
  /** What was found last of the text that stands there, also while it is read anew. */
  #found: FoundRows | undefined;

  constructor() {
    super();
    this.place = undefined;
    this.#begin('');
  }

  /** Opens for the table at a place, with what was pasted there if that leads here. */
  show(place: CellPlace, pasted?: PastedOver): void {
    this.place = place;
    this.#newTable = pasted?.newTable && this.#withTable(pasted.newTable);
    this.#reader.begin(this.#notebook);
    this.#begin(pasted?.text ?? '');
    this.#over = pasted?.over ?? ONE_CELL;
    const found = findPlace(this.#notebook.book, place);
    this.#from = found?.kind === 'cell' ? found.row : pasted && !pasted.newTable ? 0 : undefined;
    if (pasted && this.#from !== undefined) this.where = { kind: 'from', row: this.#from };
    this.#wasPasted = pasted !== undefined;
    this.#guess = this.#wasPasted;
    void this.updateComplete.then(() => {
      showModal(this.renderRoot.querySelector('dialog'));
      // The caret stands behind a text that was put in, and its headings would be scrolled out of sight.
      const field = this.renderRoot.querySelector('textarea');
      field?.setSelectionRange(0, 0);
      field?.scrollTo(0, 0);
    });
  }

  /** The notebook whose table the rows are for. */
  get #notebook(): Notebook {
    return this.#newTable?.notebook ?? this.session.notebook;
  }

  #withTable(edit: Edit): { readonly edit: Edit; readonly notebook: Notebook } {
    const applied = applyEdit(this.session.notebook.book, edit);
    if (!applied.ok) throw new Error(`a new table cannot be made: ${applied.problems[0]?.message}`);
    return { edit, notebook: openNotebook(applied.value.book) };
  }

  #begin(text: string): void {
    this.text = text;
    this.where = { kind: 'replace' };
    this.delimiter = undefined;
    this.headed = true;
    this.said = {};
    this.others = undefined;
    this.skipped = '';
    this.settled = new Map();
    this.columnsShown = COLUMNS_AT_ONCE;
    this.refusal = '';
    this.remarks = [];
    this.#guess = false;
    this.#isCorrected = false;
    this.#known = [];
    this.#found = undefined;
  }

  /** Takes a text that was changed in its field: of another one all is asked anew, but where its rows go. */
  #change(text: string, isPasted: boolean): void {
    if (isCorrection(this.text, text)) {
      this.text = text;
      this.#isCorrected = true;
      return;
    }
    const { where } = this;
    this.#begin(text);
    this.where = where;
    this.#guess = this.#wasPasted && isPasted;
    this.#forgetFile();
  }

  /** A name beside the button would say that the text is from that file. */
  #forgetFile(): void {
    const input = this.renderRoot.querySelector<HTMLInputElement>('input[type="file"]');
    if (input) input.value = '';
  }

  get #table(): Table | undefined {
    const found = this.place && findPlace(this.#notebook.book, this.place);
    return found?.part.kind === 'table' ? found.part : undefined;
  }

  override willUpdate(changed: PropertyValues): void {
    this.#ask(changed);
    this.#hear();
  }

  #ask(changed: PropertyValues): void {
    const told = ['place', 'text', 'delimiter', 'headed', 'said', 'skipped', 'settled'];
    if (!told.some((name) => changed.has(name))) return;
    // What was refused stands there no more once anything is changed.
    if (!changed.has('refusal')) this.refusal = '';
    if (['place', 'text'].some((name) => changed.has(name))) this.#found = undefined;
    this.#read();
    if (this.#isCorrected) this.#follow();
    this.#isCorrected = false;
  }

  #read(): void {
    const { place, text, headed, said, skipped, settled, where, delimiter } = this;
    const isThere = place !== undefined && this.#table !== undefined && text.trim() !== '';
    const view = this.session.units;
    const guess = this.#guess;
    const answers = { delimiter, headed, said, skipped, settled };
    this.#reader.read(isThere ? { text, guess, ...answers, place, where, view } : undefined);
  }

  /** What was settled of columns goes on for those whose headings were corrected. */
  #follow(): void {
    const { state } = this.#reader;
    const table = this.#table;
    if (state.kind !== 'found' || !table) return;
    const { registry } = this.session.notebook.model;
    this.settled = followHeadings(this.settled, this.#known, state.found.columns, table.columns, registry);
    this.#read();
  }

  /** What is found by now. What was guessed on the way stands in the fields like an answer. */
  #hear(): void {
    const { state } = this.#reader;
    if (state.kind !== 'found') return;
    this.#found = state.found;
    if (state.found.columns.length > 0) this.#known = state.found.columns;
    const { guessed } = state.found;
    if (this.#guess && guessed) {
      this.delimiter = guessed.delimiter;
      this.headed = guessed.headed;
    }
    this.#guess = false;
  }

  override render(): TemplateResult {
    const table = this.#table;
    return html`<dialog
      aria-labelledby="title"
      @drop=${this.#drop}
      @close=${() => {
        this.#newTable = undefined;
        this.place = undefined;
        this.#reader.begin(undefined);
      }}
    >
      <h2 id="title">Rows from CSV or a spreadsheet</h2>
      ${table ? this.#fields(table) : nothing}
    </dialog>`;
  }

  #fields(table: Table): TemplateResult {
    const found = this.#found;
    const read = found?.read;
    const { state } = this.#reader;
    const isReading = state.kind === 'reading';
    const repeated = found && this.#repeat(found);
    const over = this.where.kind === 'from' ? repeated : undefined;
    const kept = read?.ok ? keptColumns(table, read.value, this.where) : undefined;
    const others = othersMeant(kept, this.others);
    const isOpen = over === undefined && kept !== undefined && others === undefined;
    const becomes =
      read?.ok && !over
        ? whatBecomes(table, read.value, this.where, othersOf(this.where, others))
        : undefined;
    const short = !read?.ok || over || isOpen ? '' : inShort(table, read.value, this.where, others, becomes);
    return html`${found || isReading ? nothing : columnsExpected(table)}
      ${rowsTextField(this.text, found ? 6 : 10, (text, isPasted) => this.#change(text, isPasted))}
      <label class="field file">
        Or a file
        <input type="file" accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values" @change=${this.#file} />
      </label>
      ${found && found.columns.length > 0 ? this.#mapping(table, found) : nothing}
      ${this.#questions(read)} ${this.#parting()} ${
        found
          ? skippedField(this.skipped, (lines) => {
              this.skipped = lines;
            })
          : nothing
      } ${this.#places(table, repeated, becomes)} ${
        over || !kept
          ? nothing
          : othersQuestion(kept, this.others, (others) => {
              this.others = others;
            })
      }
      <div class="found" role="status" tabindex="0" aria-label="What was read">
        ${this.remarks.map((remark) => html`<p class="trouble">${problemWords(remark)}</p>`)}
        ${isReading ? readingWords(this.text) : found ? (over ? repeatedWords(over) : foundWords(table, found.read, this.where, others, isOpen ? undefined : becomes)) : nothing}
        ${state.kind === 'failed' ? html`<p class="trouble">The text cannot be read: ${state.reason}</p>` : nothing}
      </div>
      ${this.refusal === '' ? nothing : html`<p class="trouble" role="alert">${this.refusal}</p>`}
      <div class="buttons">
        ${isReading || !read || read.ok ? nothing : this.#whyNot(read.problems)}
        ${isOpen ? this.#openQuestion() : nothing}
        ${isReading || short === '' ? nothing : this.#leadsToFound(`Once taken: ${short}`)}
        <button type="button" @click=${this.#close}>Cancel</button>
        <button
          type="button"
          class="main"
          ?disabled=${state.kind !== 'found' || !read?.ok || over?.ok === false || isOpen}
          @click=${() => found && this.#take(table, found, over)}
        >
          Take the rows
        </button>
      </div>`;
  }

  /** Why the rows cannot be taken yet, beside the button that does not: all that was read may be scrolled out of sight. */
  #whyNot(problems: readonly Problem[]): TemplateResult | typeof nothing {
    const [first, ...more] = problems;
    if (!first) return nothing;
    const words = `${first.message}${more.length > 0 ? `; and ${more.length} more` : ''}`;
    return this.#leadsToFound(`Not yet: ${words}`);
  }

  #leadsToFound(words: string): TemplateResult {
    return html`<button type="button" class="why" title="Show what was read" @click=${this.#showFound}>
      ${words}
    </button>`;
  }

  readonly #showFound = (): void => {
    const found = this.renderRoot.querySelector<HTMLElement>('.found');
    found?.scrollIntoView({ block: 'center' });
    found?.focus({ preventScroll: true });
  };

  #mapping(table: Table, found: FoundRows): TemplateResult {
    const { columns, mapping } = found;
    const open = columns.filter(({ position }) => !mapping.goes.has(position));
    const isNoneKnown =
      this.headed &&
      columns.every(({ position }) => !mapping.goes.has(position) || this.settled.has(position));
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
        ${
          isNoneKnown
            ? html`<p class="trouble">The table has a column of none of these names: is the first row data?</p>`
            : looksUnheaded(found.read)
              ? html`<p class="trouble">The first row has numbers, and few of its cells name a column: is the first row data?</p>`
              : nothing
        }
      </div>
      ${columnChoices({
        table,
        columns,
        mapping,
        taken: found.taken,
        unit: (name) => this.#unit(table, name),
        registry: this.#notebook.model.registry,
        goes: (column, to) => this.#settle([column], to),
        shown: this.columnsShown,
        showMore: () => {
          this.columnsShown += COLUMNS_AT_ONCE;
        },
      })}
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
    return displayedUnit(this.#notebook, place, this.session.units) ?? '';
  }

  /** What the text cannot be read without, and what was answered. */
  #questions(read: RowsReading | undefined): readonly unknown[] {
    return openQuestions(read, this.said).map(({ key, question, answers }) =>
      choiceOf(
        question,
        answers,
        this.said[key] === undefined ? undefined : `${this.said[key]}`,
        (answer) => {
          this.said = withAnswer(this.said, key, answer);
        },
        () => {
          this.said = withAnswer(this.said, key, undefined);
        },
      ),
    );
  }

  /** What parts the cells, where a text without tabs leaves that open. */
  #parting(): TemplateResult | typeof nothing {
    if (this.text.includes('\t') || !/[,;|]|\S[ \u00a0]{2,}\S/.test(this.text)) return nothing;
    if (isSingleNumber(this.text)) return nothing;
    const now = this.delimiter ?? this.#found?.delimiter;
    return choiceOf('What parts the cells of a line', delimiterWords, now, (to) => {
      this.delimiter = to;
      this.settled = new Map();
    });
  }

  #places(
    table: Table,
    repeated: Outcome<Edit> | undefined,
    becomes: Becomes | undefined,
  ): TemplateResult | typeof nothing {
    if (table.length === 0) return nothing;
    const cells = this.#over.rows * this.#over.columns;
    const from = (row: number): string =>
      repeated ? `repeated over the ${cells} cells selected` : `over the rows from row ${row + 1} on`;
    const { where } = this;
    const row = this.#from;
    const words: readonly (readonly [Where['kind'], string])[] = [
      ...(row !== undefined ? [['from', from(row)] as const] : []),
      ['replace', 'in place of the rows there'],
      ['behind', 'behind the rows there'],
    ];
    const below = becomes ? belowWords(becomes) : '';
    return html`${choiceOf('Where the rows go', words, where.kind, (kind) => {
      this.where = kind === 'from' ? { kind, row: row ?? 0 } : { kind };
    })}
    ${below === '' ? nothing : html`<p class="quiet">${below}</p>`}`;
  }

  /** That the other columns are still asked about, beside the button that takes nothing yet; it leads to the question. */
  #openQuestion(): TemplateResult {
    const show = (): void => this.renderRoot.querySelector<HTMLElement>('.others input')?.focus();
    return html`<button type="button" class="why" @click=${show}>
      Not yet: say what becomes of the other columns
    </button>`;
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

  /** The edit that repeats the one cell of a text over the cells it was pasted over, where it can be repeated. */
  #repeat(found: FoundRows): Outcome<Edit> | undefined {
    return this.place && repeatCell(this.#notebook, this.place, this.#over, found);
  }

  #take(table: Table, { read }: FoundRows, over: Outcome<Edit> | undefined): void {
    if (!this.place || !read.ok) return;
    const account = read.counts ? accountWords(read.counts, read.value.problems) : '';
    const kept = keptColumns(table, read.value, this.where);
    const rows = putRows(
      this.place.sheet,
      table,
      read.value,
      this.where,
      account,
      othersMeant(kept, this.others),
    );
    const made = this.#newTable ? joinEdits(rows.label, [this.#newTable.edit, rows]) : rows;
    const edit = over ?? succeed(made);
    const done = edit.ok ? this.session.apply(edit.value) : edit;
    if (done.ok) this.#close();
    else this.refusal = done.problems.map(problemWords).join('. ');
  }

  readonly #file = (event: Event): void => {
    const [file] = (event.target as HTMLInputElement).files ?? [];
    if (file) void this.#takeFile(file);
  };

  /** A file dropped anywhere on the dialog is read as one that was chosen. */
  readonly #drop = (event: DragEvent): void => {
    if (event.target instanceof HTMLInputElement && event.target.type === 'file') return;
    const [file, ...more] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    this.#forgetFile();
    if (more.length > 0) this.refusal = 'nothing was read: drop one file at a time';
    else void this.#takeFile(file);
  };

  async #takeFile(file: File): Promise<void> {
    this.refusal = '';
    const { place } = this;
    try {
      const read = await readTableFile(file);
      // Meanwhile the dialog may have been closed, and opened for another table.
      if (this.place !== place) return;
      const { where } = this;
      if (read.ok) {
        this.#begin(read.value.text);
        this.where = where;
        this.remarks = read.value.problems;
        return;
      }
      this.#forgetFile();
      this.refusal = `${file.name}: ${read.problems.map(problemWords).join('. ')}`;
    } catch (error) {
      if (this.place !== place) return;
      this.#forgetFile();
      this.refusal = `${file.name} cannot be read: ${reasonOf(error)}`;
    }
  }

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}
