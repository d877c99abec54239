import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Outcome, Problem } from '../../diagnostics/index.ts';
import { insertTableRows, replaceTableRows, type Table } from '../../document/index.ts';
import { type ReadTable, readTable } from '../../tables/index.ts';
import { findPlace } from '../editing/find-place.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../shell/dialog-styles.ts';
import { fieldsStyles } from '../shell/fields-styles.ts';

/** The most problems of rows that are named one by one. */
const most = 12;

/** Takes rows for a table from a text with headers, pasted or from a file; shows what it makes of them beforehand. */
export class TableRowsDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    place: { state: true },
    text: { state: true },
    behind: { state: true },
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
      .found {
        max-height: 12rem;
        overflow: auto;
      }
    `,
  ];
  declare session: Session;
  declare place: CellPlace | undefined;
  declare text: string;
  declare behind: boolean;
  declare refusal: string;

  constructor() {
    super();
    this.place = undefined;
    this.text = '';
    this.behind = false;
    this.refusal = '';
  }

  show(place: CellPlace): void {
    this.place = place;
    this.text = '';
    this.behind = false;
    this.refusal = '';
    void this.updateComplete.then(() => this.renderRoot.querySelector('dialog')?.showModal());
  }

  get #table(): Table | undefined {
    const found = this.place && findPlace(this.session.notebook.book, this.place);
    return found?.part.kind === 'table' ? found.part : undefined;
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
    const read = this.text.trim() === '' ? undefined : readTable(this.text, table.columns);
    const given = table.columns.filter(({ kind }) => kind === 'given').map(({ name }) => name);
    return html`<p class="quiet">
        The first line names the columns (${given.join(', ')}), with a unit in brackets where it is another one:
        “thickness (m)”.
      </p>
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
      <div class="found" role="status" tabindex="0" aria-label="What was read">${read ? this.#found(read) : nothing}</div>
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

  #found(read: Outcome<ReadTable>): TemplateResult {
    const problems = read.ok ? read.value.problems : read.problems;
    const count = read.ok ? read.value.length : 0;
    return html`${read.ok ? html`<p>${count} ${count === 1 ? 'row' : 'rows'}, all are taken.</p>` : nothing}
      ${problems.slice(0, most).map((problem) => html`<p class="trouble">${inWords(problem)}</p>`)}
      ${problems.length > most ? html`<p class="trouble">and ${problems.length - most} more like these</p>` : nothing}`;
  }

  #take(table: Table, { length, cells }: ReadTable): void {
    if (!this.place) return;
    const at = { sheet: this.place.sheet, table: table.id };
    const rows = { length, cells };
    const edit = this.behind
      ? insertTableRows(at, table, table.length ?? 0, rows)
      : replaceTableRows(at, table, rows);
    const done = this.session.apply(edit);
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

function inWords({ message, hints }: Problem): string {
  return [message, ...hints].join('; ');
}
