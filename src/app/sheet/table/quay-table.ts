import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Column, Table } from '../../../document/index.ts';
import { type CellView, type ColumnView, columnSum, columnView, rowsOnPaper } from '../../../record/index.ts';
import { unitInPrint, writeNumber } from '../../../units/index.ts';
import type { Session } from '../../session/session.ts';
import { drawSign } from '../../style/signs.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { cellEditor } from '../editing/cell-editor.ts';
import { drawSymbol } from '../line/formula-view.ts';
import { drawOriginMark } from '../line/origin-mark.ts';
import type { OnPaper } from '../paper/on-paper.ts';
import { tableRow } from '../place/grid-map.ts';
import type { CellRange } from '../place/range.ts';
import type { SheetHost } from '../sheet-host.ts';
import { type BadRow, badRows, unreadRows } from './bad-rows.ts';
import { type BlankRows, blankRows } from './blank-rows.ts';
import { columnWidth, isText, numberWidth, ROW_HEIGHT } from './column-width.ts';
import { printedStated } from './printed-stated.ts';
import { printedTable } from './printed-table.ts';
import { SideScroll } from './side-scroll.ts';
import { drawTableAdditions } from './table-additions.ts';
import { hasNoLine, tableSources } from './table-sources.ts';
import { VirtualRows } from './virtual-rows.ts';

/** Tables up to so many rows stand whole on the page; longer ones scroll in a window of their own. */
const WHOLE_ROWS = 40;

/** The headings stand one row above the first one of a table. */
const HEAD_ROW = -1;
/** That of the title, which stands in front of them. */
const TITLE_ROW = -2;

/**
 * A table of the page: its title, heads and rows, a group of rows of the sheet's grid. It draws into the sheet's own
 * tree; of a long table only the rows in sight, and the one the person is on.
 */
export class QuayTable extends LitElement {
  static override properties = {
    host: { attribute: false },
    session: { attribute: false },
    sheet: { attribute: false },
    table: { attribute: false },
    firstRow: { attribute: false },
    activeItem: { attribute: false },
    activeField: { attribute: false },
    stopItem: { attribute: false },
    stopField: { attribute: false },
    range: { attribute: false },
    edit: { attribute: false },
    paper: { attribute: false },
    stamp: { attribute: false },
  };

  declare host: SheetHost;
  declare session: Session;
  declare sheet: string;
  declare table: Table;
  /** The number of the grid's row that the title is, from 1. */
  declare firstRow: number;
  /** The row and column the person is on; empty while elsewhere. */
  declare activeItem: string;
  declare activeField: string;
  /** The cell that the Tab key reaches, if it is one of this table. */
  declare stopItem: string;
  declare stopField: string;
  /** The selected block, its rows counted from the table's first; undefined if none is. */
  declare range: CellRange | undefined;
  declare edit: EditInHand | undefined;
  /** Given where the page is laid out for paper. */
  declare paper: OnPaper | undefined;
  /** Grows when values of the table changed. */
  declare stamp: number;

  readonly #window = () => this.querySelector<HTMLElement>('.table-window');
  readonly #virtual = new VirtualRows(this, ROW_HEIGHT, this.#window);
  readonly #side = new SideScroll(this, this.#window, () => this.#edges);
  #views: readonly ColumnView[] = [];
  #widths: readonly number[] = [];
  #edges: readonly number[] = [];
  #bad: { readonly listed: readonly BadRow[]; readonly more: boolean } = { listed: [], more: false };
  #unread: readonly BadRow[] = [];
  #blank: BlankRows | undefined;
  #sum: { readonly column: string; readonly text: string } | undefined;

  constructor() {
    super();
    this.activeItem = '';
    this.activeField = '';
    this.stopItem = '';
    this.stopField = '';
    this.range = undefined;
    this.edit = undefined;
    this.paper = undefined;
    this.stamp = 0;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  get modelId(): string {
    return `${this.sheet}.${this.table.name}`;
  }

  /** How many rows the table has. */
  get length(): number {
    return this.session.notebook.rowsOf(this.modelId) ?? 0;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (!changed.has('stamp') && !changed.has('table') && !changed.has('session')) return;
    const { notebook, units } = this.session;
    this.#views = this.table.columns.map((column) =>
      columnView(notebook, `${this.modelId}.${column.name}`, column, units),
    );
    this.#bad = badRows(notebook, this.modelId, this.table, 4);
    this.#unread = unreadRows(notebook, this.modelId, this.table);
    this.#blank = blankRows(this.table);
    this.#sum = undefined;
    this.#virtual.setCount(this.length);
    this.#widths = this.#views.map((view) => columnWidth(view, this.length));
    let edge = numberWidth(this.length);
    this.#edges = this.#widths.map((width) => {
      edge += width;
      return edge;
    });
  }

  /** Whether the first column, by which rows are known, stays in sight: where it leaves half of the room to the others. */
  get #firstStays(): boolean {
    return this.#widths.length > 2 && this.#side.width >= 2 * (this.#edges[0] ?? 0);
  }

  /** The table as paper has it, with what is stated in its cells. */
  #printed({ cite, summarises }: OnPaper, length: number, number: number): TemplateResult {
    const { notebook, units } = this.session;
    const { columns } = this.table;
    const onPaper = rowsOnPaper(notebook, this.modelId, columns, length, summarises);
    return html`${printedTable(this.#views, number, length, onPaper, (column) => !hasNoLine(notebook, this.modelId, column))}
    ${tableSources(notebook, this.modelId, columns, cite)} ${printedStated(notebook, this.modelId, columns, units)}`;
  }

  override render(): TemplateResult {
    const length = this.length;
    const long = length > WHOLE_ROWS;
    const number = numberWidth(length);
    const tracks = [number, ...this.#widths].map((width) => `${width}px`).join(' ');
    const { scrolled, beyond, head } = this.#side;
    const measures = `--columns: ${tracks}; --number: ${number}px; --stuck: ${this.#stuck}px; --head: ${head}px`;
    if (this.paper)
      return html`${this.#title()} ${this.#printed(this.paper, length, number)}
        <div class="table-foot">${this.#rowsToMend()}</div>`;
    return html`
      ${this.#title()}
      <div
        class="table-frame${scrolled ? ' scrolled' : ''}${beyond > 0 ? ' goes-on' : ''}"
        role="none"
        .style=${measures}
      >
        <div class="table-window${long ? ' long' : ''}" role="none">
          <div class="table-grid" role="none">
            <div class="table-row head" role="row" data-item="head" aria-rowindex=${this.firstRow + 1}>
              <div class="row-number" role="none"></div>
              ${this.#views.map((view, at) => this.#head(view, at))}
            </div>
            ${long ? this.#rowsInSight() : this.#rows(Array.from({ length }, (_, row) => row))}
          </div>
        </div>
        ${this.#wideEditor()}
      </div>
      ${this.#foot(length)}
    `;
  }

  /** How much of the left stays in sight, in px. */
  get #stuck(): number {
    return this.#firstStays ? (this.#edges[0] ?? 0) : numberWidth(this.length);
  }

  #title(): TemplateResult {
    const { title, name } = this.table;
    const edit = this.edit?.place.item === '' ? this.edit : undefined;
    return html`<div class="part-title" role="row" data-item="" aria-rowindex=${this.firstRow}>
      <div
        class="cell title"
        role="gridcell"
        data-field="title"
        aria-colindex="1"
        aria-selected=${(this.activeItem === '' && this.activeField === 'title') || this.#isSelected(TITLE_ROW, 0) ? 'true' : 'false'}
        tabindex=${this.stopItem === '' && this.stopField === 'title' ? '0' : '-1'}
      >
        ${edit ? this.#editor(edit) : html`${title ?? 'Table'} <span class="quiet name">${name}</span>`}
      </div>
      <div class="cell mark" role="gridcell" aria-colindex="2" aria-readonly="true">
        <button class="menu-button" type="button" tabindex="-1" data-menu aria-label=${`menu of ${name}`} aria-haspopup="menu">
          ${drawSign('menu')}
        </button>
      </div>
    </div>`;
  }

  #head({ column, unit }: ColumnView, at: number): TemplateResult {
    const shown = unitInPrint(unit);
    const here = this.activeItem === 'head' && this.activeField === column.id;
    return html`<div
      class="cell column-head${this.#classes(column, at)}"
      role="columnheader"
      data-field=${column.id}
      aria-colindex=${at + 1}
      aria-selected=${here || this.#isSelected(HEAD_ROW, at) ? 'true' : 'false'}
      tabindex=${this.stopItem === 'head' && this.stopField === column.id ? '0' : '-1'}
    >
      <span class="label">${column.label ?? ''}</span>
      <span class="symbol-unit"
        ><span class="symbol">${drawSymbol(column.name)}</span>${shown === '' ? nothing : html` <span class="unit">${shown}</span>`} ${drawOriginMark(this.session, `${this.modelId}.${column.name}`)}</span
      >
    </div>`;
  }

  /** The rows in sight of a long table, in a space as high as all of them. */
  #rowsInSight(): TemplateResult {
    const rows = this.#virtual.rows.map(({ index }) => index);
    const active = tableRow(this.activeItem);
    if (active !== undefined && active < this.length && !rows.includes(active)) rows.push(active);
    return html`<div class="table-space" role="none" .style=${`height: ${this.#virtual.totalHeight}px`}>
      ${this.#rows(rows, true)}
    </div>`;
  }

  #rows(rows: readonly number[], placed = false): unknown {
    return repeat(
      rows,
      (row) => row,
      (row) => this.#row(row, placed),
    );
  }

  #row(row: number, placed: boolean): TemplateResult {
    const item = `r${row}`;
    const active = this.activeItem === item;
    return html`<div
      class="table-row${active ? ' active' : ''}"
      role="row"
      data-item=${item}
      aria-rowindex=${this.firstRow + 2 + row}
      .style=${placed ? `transform: translateY(${row * ROW_HEIGHT}px)` : ''}
    >
      <div class="row-number" role="rowheader" data-row-number>${row + 1}</div>
      ${this.#views.map((view, at) => this.#cell(view, at, row, item, active))}
    </div>`;
  }

  #cell(view: ColumnView, at: number, row: number, item: string, active: boolean): TemplateResult {
    const { id } = view.column;
    const shown = view.at(row);
    const { state } = shown;
    const edited = this.edit?.place.item === item && this.edit.place.field === id;
    const edit = edited && !this.#editsWide ? this.edit : undefined;
    const here = active && this.activeField === id;
    const stop = this.stopItem === item && this.stopField === id;
    return html`<div
      class="cell ${state}${this.#classes(view.column, at)}${edit ? ' edited' : ''}"
      role="gridcell"
      data-field=${id}
      aria-colindex=${at + 1}
      aria-readonly=${view.column.kind === 'series' || this.table.length === undefined ? 'true' : nothing}
      aria-selected=${here || this.#isSelected(row, at) ? 'true' : 'false'}
      tabindex=${stop ? '0' : '-1'}
    data-behind=${(!edit && shown.behind) || nothing}
    >${edit ? this.#editor(edit) : drawCell(shown)}</div>`;
  }

  #classes(column: Column, at: number): string {
    const stays = at === 0 && this.#firstStays;
    return `${isText(column) ? ' words' : ''}${stays ? ' stays' : ''}`;
  }

  /** Whether what is edited needs more room than its cell has: a heading, a formula, the reason for a stated value. */
  get #editsWide(): boolean {
    return this.edit?.place.item === 'head' || this.edit?.kind === 'formula' || this.edit?.kind === 'reason';
  }

  /** The editor of a heading or formula: it begins at its cell and lies over the table, whose window would cut it off. */
  #wideEditor(): unknown {
    const { edit } = this;
    if (!edit || !this.#editsWide || edit.place.item === '') return nothing;
    const { scrollLeft = 0, scrollTop = 0 } = this.#window() ?? {};
    const at = this.table.columns.findIndex(({ id }) => id === edit.place.field);
    const left =
      (this.#edges[at - 1] ?? numberWidth(this.length)) - (at === 0 && this.#firstStays ? 0 : scrollLeft);
    const row = tableRow(edit.place.item);
    // A reason stands below the value that it is for.
    const below = edit.kind === 'reason' ? ROW_HEIGHT : 0;
    const top = this.#side.head + (row === undefined ? 0 : row * ROW_HEIGHT - scrollTop) + below;
    return html`<div class="wide-editor${edit.kind === 'reason' ? ' below' : ''} edited" .style=${`--left: ${left}px; --top: ${top}px`}>${this.#editor(edit)}</div>`;
  }

  #isSelected(row: number, column: number): boolean {
    const { range } = this;
    if (!range) return false;
    return row >= range.top && row <= range.bottom && column >= range.left && column <= range.right;
  }

  get #activeColumn(): Column | undefined {
    const column = this.table.columns.find(({ id }) => id === this.activeField);
    const result = column && this.session.notebook.column(`${this.modelId}.${column.name}`);
    return result?.status === 'ok' && result.reading.holds === 'number' ? column : undefined;
  }

  /** Writes the sum of the column the person is on below the table. */
  sum(): void {
    const column = this.#activeColumn;
    if (!column) return;
    const { notebook, units } = this.session;
    const text = columnSum(notebook, `${this.modelId}.${column.name}`, units);
    this.#sum = { column: column.id, text: text ?? 'none, for some rows have no value' };
    this.requestUpdate();
  }

  #foot(length: number): TemplateResult {
    const active = this.#activeColumn;
    const summed = active && this.#sum?.column === active.id ? this.#sum : undefined;
    const sum = summed
      ? html`<span>sum of ${active?.name}: <output>${summed.text}</output></span>`
      : html`<button type="button" class="quiet-button" tabindex="-1" @click=${() => this.sum()}>
          sum of ${active?.name}
        </button>`;
    return html`<div class="table-foot" role="row">
      <div role="gridcell" aria-colindex="1" aria-readonly="true">
        <span>${length === 1 ? '1 row' : `${writeNumber(length)} rows`}</span>
        ${drawTableAdditions(this.table, length)}
        ${this.#goOn()} ${active ? sum : nothing} ${this.#rowsToMend()}
      </div>
    </div>`;
  }

  /** Tells of rows that are blank, and of those that fail. */
  #rowsToMend(): TemplateResult {
    const causes = this.#unread.filter(({ isCause }) => isCause === true);
    const others = this.#unread.filter((one) => !causes.includes(one));
    return html`${this.#blankRows()} ${causes.map((unread) => this.#unreadRow(unread))} ${this.#bad.listed.map((bad) => this.#badRow(bad))}
    ${this.#bad.more ? html`<p class="quiet">more rows have problems</p>` : nothing}
    ${others.map((unread) => this.#unreadRow(unread))}`;
  }

  /** Tells of the columns out of sight at the right, and leads to them. */
  #goOn(): unknown {
    const { beyond } = this.#side;
    if (beyond === 0) return nothing;
    const words = beyond === 1 ? 'one more column' : `${beyond} more columns`;
    return html`<button type="button" class="quiet-button" tabindex="-1" @click=${() => this.#side.goOn(this.#stuck)}>
      ${words} at the right
    </button>`;
  }

  /** Tells in one place what all results wait for while rows are blank. */
  #blankRows(): unknown {
    const blank = this.#blank;
    const field = this.table.columns.find(({ kind }) => kind === 'given')?.id;
    if (!blank || field === undefined) return nothing;
    const { first, count } = blank;
    const needed = this.table.columns.some(
      (one) => one.kind === 'given' && one.optional !== true && one.default === undefined,
    );
    return html`<p class="sentence without-sign">
      <button type="button" class="quiet-button" tabindex="-1" data-go-item=${`r${first}`} data-go-field=${field}>
        ${count === 1 ? `row ${first + 1} is blank` : `${writeNumber(count)} rows are blank, the first is row ${first + 1}`}</button
      >${needed ? `: what is computed from the table waits until ${count === 1 ? 'it is' : 'they are'} filled in or deleted` : nothing}
    </p>`;
  }

  #badRow({ row, column, name, message }: BadRow): TemplateResult {
    return html`<p class="sentence problem">
      ${drawSign('problem')}<span
        ><button type="button" class="quiet-button" tabindex="-1" data-go-item=${`r${row}`} data-go-field=${column}>
          row ${row + 1}, ${name}</button
        >: ${message}</span
      >
    </p>`;
  }

  /** A remark on entries of a column that nothing reads; the sentence names the rows. */
  #unreadRow({ row, column, name, message }: BadRow): TemplateResult {
    return html`<p class="sentence warning">
      ${drawSign('warning')}<span
        ><button type="button" class="quiet-button" tabindex="-1" data-go-item=${`r${row}`} data-go-field=${column}>
          ${name}</button
        >: ${message}</span
      >
    </p>`;
  }

  #editor(edit: EditInHand): TemplateResult {
    return cellEditor(this.session, this.host, edit);
  }
}

/** A cell's text, with what its state says beside it. */
function drawCell({ text, state }: CellView): unknown {
  if (state === 'bad') return html`${drawSign('problem', 'has a problem')}${text}`;
  return state === 'stated' ? html`${text}<span class="said">stated</span>` : text;
}

customElements.define('quay-table', QuayTable);
