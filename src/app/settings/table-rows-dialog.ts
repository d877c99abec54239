import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Outcome, Problem } from '../../diagnostics/index.ts';
import { type GivenColumn, insertTableRows, replaceTableRows, type Table } from '../../document/index.ts';
import { unreadCells } from '../../notebook/index.ts';
import type { ReadTable } from '../../tables/index.ts';
import { findPlace } from '../editing/find-place.ts';
import { putInLabel } from '../editing/put-in.ts';
import { readRows } from '../editing/read-rows.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../shell/dialog-styles.ts';
import { fieldsStyles } from '../shell/fields-styles.ts';

/** The most problems, and the most cells without a value, that are named one by one. */
const most = 8;

/** What was made of a text: the rows, or why there are none; and the cells that would have no value. */
interface Found {
  readonly read: Outcome<ReadTable>;
  readonly unread: readonly Problem[];
}

/** Takes rows for a table from a text with headers, pasted or from a file; shows what it makes of them beforehand. */
export class TableRowsDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    place: { state: true },
    text: { state: true },
    behind: { state: true },
    leaveOut: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      textarea {
        font: 13px/1.45 var(--code);
        white-space: pre;
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
  declare leaveOut: boolean;
  declare refusal: string;
  #found: Found | undefined;

  constructor() {
    super();
    this.place = undefined;
    this.text = '';
    this.behind = false;
    this.leaveOut = false;
    this.refusal = '';
  }

  show(place: CellPlace): void {
    this.place = place;
    this.text = '';
    this.behind = false;
    this.leaveOut = false;
    this.refusal = '';
    void this.updateComplete.then(() => this.renderRoot.querySelector('dialog')?.showModal());
  }

  get #table(): Table | undefined {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    return found?.part.kind === 'table' ? found.part : undefined;
  }

  override willUpdate(changed: PropertyValues): void {
    if (!['place', 'text', 'leaveOut'].some((name) => changed.has(name))) return;
    const table = this.#table;
    this.#found = table && this.text.trim() !== '' ? this.#read(table) : undefined;
  }

  #read(table: Table): Found {
    const { notebook } = this.session;
    const id = `${this.place?.sheet}.${table.name}`;
    const read = readRows(notebook, id, table, this.text, { leaveOut: this.leaveOut });
    return { read, unread: read.ok ? unreadCells(notebook, id, read.value.cells) : [] };
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
    return html`<p class="quiet">
        The first line names the columns by symbol or heading, with a unit in brackets where it is another one:
        “thickness (m)”. The columns are
      </p>
      <ul class="columns">
        ${table.columns.map((column) => (column.kind === 'given' ? columnLine(column) : nothing))}
      </ul>
      <label class="field"
        >Rows
        <textarea
          rows="8"
          autofocus
          .value=${this.text}
          @input=${(event: Event) => {
            this.text = (event.target as HTMLTextAreaElement).value;
          }}
        ></textarea>
      </label>
      <label class="field">
        Or a file
        <input type="file" accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values" @change=${this.#file} />
      </label>
      <fieldset class="choices">
        <legend>Where they go</legend>
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
      ${this.leaveOut || (found && lacksColumns(found.read)) ? this.#leaveOutChoice() : nothing}
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

  #leaveOutChoice(): TemplateResult {
    return html`<div class="choices">
      <label>
        <input
          type="checkbox"
          .checked=${this.leaveOut}
          @change=${() => {
            this.leaveOut = !this.leaveOut;
          }}
        />leave out what the table has no column for
      </label>
    </div>`;
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
    } catch (error) {
      this.refusal = `the file cannot be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  };

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}

/** The symbol of a column, and its heading and unit as a header may have them. */
function columnLine({ name, label, unit }: GivenColumn): TemplateResult {
  const heading = label === undefined || label === name ? '' : label;
  return html`<li>${name} <span>${heading} ${unit === undefined || unit === '' ? '' : `(${unit})`}</span></li>`;
}

/** Whether a text was refused for headers that name no column of the table. */
function lacksColumns(read: Outcome<ReadTable>): boolean {
  return !read.ok && read.problems.some(({ code }) => code === 'column-unknown');
}

function foundWords({ read, unread }: Found): TemplateResult {
  if (!read.ok) return named(read.problems);
  const { length, problems } = read.value;
  const rows = length === 1 ? '1 row is taken' : `${length} rows are taken`;
  const cells =
    unread.length === 1
      ? '; 1 cell cannot be read and is kept as written:'
      : `; ${unread.length} cells cannot be read and are kept as written:`;
  return html`<p>${rows}${unread.length > 0 ? cells : '.'}</p>
    ${named(unread)} ${named(problems)}`;
}

/** The first of some problems, and how many more there are. */
function named(problems: readonly Problem[]): TemplateResult {
  const more = problems.length - most;
  return html`${problems
    .slice(0, most)
    .map((one) => html`<p class=${one.severity === 'error' ? 'trouble' : 'quiet'}>${inWords(one)}</p>`)}
    ${more > 0 ? html`<p class="trouble">and ${more} more like these</p>` : nothing}`;
}

function inWords({ code, message, hints }: Problem): string {
  // The dialog lists the columns above.
  return code === 'column-unknown' ? message : [message, ...hints].join('; ');
}
