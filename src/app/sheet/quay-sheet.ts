import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { findSheet, type Part, type Sheet } from '../../document/index.ts';
import { cellContent } from '../editing/cell-content.ts';
import { enterText } from '../editing/cell-edits.ts';
import { insertBelow } from '../editing/line-edits.ts';
import type { NewKind } from '../editing/new-items.ts';
import { renameEdit } from '../editing/rename.ts';
import { loadFormulaField } from '../editor/load-formula-field.ts';
import { type CellPlace, samePlace } from '../session/place.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { QuayTable } from '../table/quay-table.ts';
import { tableStyles } from '../table/table-styles.ts';
import type { CellEdit, Commit } from './cell-edit.ts';
import { ClipboardEvents } from './clipboard-events.ts';
import { carryOut } from './commands.ts';
import { type GridMap, gridMap, hasTitle, placeAt } from './grid-map.ts';
import { commandOf } from './keys.ts';
import type { Room } from './line-source.ts';
import { lineStyles } from './line-styles.ts';
import { type Motion, moved } from './motions.ts';
import { PageElements } from './page-elements.ts';
import { pageStyle, roomFor, symbolWidth, tracksFor } from './page-measure.ts';
import { pageStyles } from './page-styles.ts';
import { PointerEvents } from './pointer-events.ts';
import { printStyles } from './print-styles.ts';
import { QuayLine } from './quay-line.ts';
import type { QuaySheetMenu } from './quay-sheet-menu.ts';
import { QuayWords } from './quay-words.ts';
import { type CellRange, rangeBetween } from './range.ts';
import type { SheetHost } from './sheet-host.ts';
import './quay-sheet-menu.ts';

/**
 * The page: one sheet of the open book on its paper, one grid of cells. It holds where the person is and what is being
 * edited, hands keys to commands, and has only those lines drawn again that an edit concerns.
 */
export class QuaySheet extends LitElement implements SheetHost {
  static override properties = { session: { attribute: false } };
  static override styles = [pageStyles, lineStyles, mathsStyles, tableStyles, printStyles];

  declare session: Session;

  /** Other end of the selected range; undefined while one cell is selected. */
  anchor: CellPlace | undefined;
  readonly #elements = new PageElements();
  #map: GridMap = { sheet: '', count: 0, rowAt: () => undefined, indexOf: () => -1 };
  #edit: CellEdit | undefined;
  #wanted = 'value';
  #room: Room = { beside: 18, below: 30 };
  #width = 0;
  #leave: (() => void) | undefined;
  #focusPending = false;
  readonly #resized = new ResizeObserver(([entry]) => {
    const width = Math.round(entry?.contentRect.width ?? 0);
    if (width > 0 && width !== this.#width) {
      this.#width = width;
      this.requestUpdate();
    }
  });

  constructor() {
    super();
    new PointerEvents(this);
    new ClipboardEvents(this);
    this.addEventListener('keydown', this.#key);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#leave = this.session?.subscribe(this.#told);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leave?.();
    this.#resized.disconnect();
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if (!changed.has('session')) return;
    this.#leave?.();
    this.#leave = this.session.subscribe(this.#told);
  }

  /** The rows of the sheet shown. */
  get map(): GridMap {
    return this.#map;
  }

  /** The sheet shown, as the book has it now. */
  get sheet(): Sheet | undefined {
    return findSheet(this.session.notebook.book, this.session.sheet);
  }

  /** The active cell; the first one of the page while the person has not been on it. */
  get place(): CellPlace | undefined {
    const { place } = this.session;
    return place && this.#map.indexOf(place) >= 0 ? place : undefined;
  }

  /** The selected block of cells; the active cell alone is none. */
  get range(): CellRange | undefined {
    const { place, anchor } = this;
    return place && anchor && !samePlace(place, anchor) ? rangeBetween(this.#map, anchor, place) : undefined;
  }

  /** Whether a cell is being edited. */
  get editing(): boolean {
    return this.#edit !== undefined;
  }

  /** Moves the active cell; with `extend` the other end of the range stays. */
  move(motion: Motion, extend: boolean): void {
    const from = this.place ?? placeAt(this.#map, 0, this.#wanted);
    if (!from) return;
    const page = Math.max(3, Math.floor(this.clientHeight / 44));
    const to = moved(this.#map, from, motion, this.#wanted, page);
    if (to) this.goTo(to, extend, motion.includes('up') || motion.includes('down'));
  }

  /** Makes a cell the active one and gives it the focus. */
  goTo(place: CellPlace, extend = false, keepWanted = false): void {
    if (!keepWanted) this.#wanted = place.field;
    this.anchor = extend ? (this.anchor ?? this.session.place) : undefined;
    this.#focusPending = true;
    if (samePlace(place, this.session.place)) this.#showPlace();
    else this.session.goTo(place);
  }

  /** Gives the focus to the active cell. */
  focusCell(): void {
    const place = this.place ?? placeAt(this.#map, 0, 'value');
    if (!place) return;
    this.#focusPending = true;
    if (this.place) this.#showPlace();
    else this.session.goTo(place);
  }

  /** Starts editing the active cell; `seed` replaces what it holds. */
  startEdit(seed?: string): void {
    const { place } = this;
    if (!place) return;
    const { kind, text } = cellContent(this.session.notebook.book, place);
    if (kind === undefined) {
      this.refuse(['this cell is calculated; its column’s heading has the formula']);
      return;
    }
    this.anchor = undefined;
    this.#edit = { place, kind, value: text, ...(seed !== undefined && { seed }) };
    this.#showPlace();
  }

  readonly commit = ({ value, move }: Commit): void => {
    const edit = this.#edit;
    if (!edit) return;
    if (value !== edit.value) {
      const entered =
        edit.kind === 'name'
          ? renameEdit(this.session, edit.place, value)
          : enterText(this.session.notebook.book, edit.place, value);
      const done = entered.ok ? this.session.apply(entered.value) : entered;
      if (!done.ok) {
        this.refuse(done.problems.map(({ message, hints }) => [message, ...hints].join('; ')));
        return;
      }
    }
    this.#edit = undefined;
    if (move === 'stay') {
      if (samePlace(edit.place, this.session.place)) this.#focusPending = true;
      this.#showPlace();
    } else this.#moveOn(move, edit.kind);
  };

  #moveOn(move: Exclude<Commit['move'], 'stay'>, kind: CellEdit['kind']): void {
    if (kind === 'prose') this.move('down', false);
    else this.move(move === 'right' ? 'next' : move === 'left' ? 'previous' : move, false);
    // At an edge of the page the person stays, and the cell shows again.
    this.#focusPending = true;
    this.#showPlace();
  }

  readonly cancel = (): void => {
    this.#edit = undefined;
    this.#focusPending = true;
    this.#showPlace();
  };

  /** Says near the active cell why something cannot be done. */
  refuse(sentences: readonly string[]): void {
    const note = this.renderRoot.querySelector<HTMLElement>('.refusal');
    const cell = this.place && this.#elements.cellAt(this.place);
    if (!note) return;
    note.textContent = sentences.join('. ');
    note.showPopover();
    const at = (cell ?? this).getBoundingClientRect();
    note.style.setProperty('left', `${Math.max(8, Math.min(at.left, innerWidth - note.offsetWidth - 8))}px`);
    note.style.setProperty('top', `${Math.min(at.bottom + 4, innerHeight - note.offsetHeight - 8)}px`);
  }

  /** Opens the menu of the active line or part. */
  openMenu(below?: HTMLElement): void {
    const { place } = this;
    const cell = place && this.#elements.cellAt(place);
    const menu = this.renderRoot.querySelector<QuaySheetMenu>('quay-sheet-menu');
    if (!place || !cell || !menu) return;
    const subject =
      place.item === '' ? 'part' : this.#elements.at(place) instanceof QuayTable ? 'table row' : 'line';
    void menu.open(subject, below ?? cell, cell, (action) => carryOut(this, { kind: 'menu action', action }));
  }

  /** Has the sum of the active column written below its table. */
  sumColumn(): void {
    const table = this.place && this.#elements.at(this.place);
    if (table instanceof QuayTable) table.sum();
  }

  readonly #key = (event: KeyboardEvent): void => {
    if (this.editing || event.defaultPrevented) return;
    const command = commandOf(event);
    if (!command) return;
    this.renderRoot.querySelector<HTMLElement>('.refusal:popover-open')?.hidePopover();
    if (command.kind === 'move' && !this.#leadsOn(command.motion)) return;
    event.preventDefault();
    carryOut(this, command);
  };

  /** Tab leaves the page behind its last cell, as it leaves any field. */
  #leadsOn(motion: Motion): boolean {
    if (motion !== 'next' && motion !== 'previous') return true;
    const { place } = this;
    return place !== undefined && !samePlace(moved(this.#map, place, motion, '', 1), undefined);
  }

  readonly #told = (event: SessionEvent): void => {
    if (event.kind === 'book') this.#bookChanged(event.changed, event.structure);
    else if (event.kind === 'units') {
      for (const element of this.#elements.all) redraw(element);
    } else if (event.kind === 'place') {
      if (this.session.sheet !== this.#map.sheet) this.#edit = undefined;
      if (this.session.place && !typesElsewhere(this)) this.#focusPending = true;
      if (this.session.sheet !== this.#map.sheet) this.requestUpdate();
      this.#showPlace();
    }
  };

  #bookChanged(changed: ReadonlySet<string>, structure: boolean): void {
    const { sheet } = this;
    if (structure || !sheet) this.requestUpdate();
    else for (const part of sheet.parts) this.#partChanged(sheet.key, part, changed);
  }

  #partChanged(sheet: string, part: Part, changed: ReadonlySet<string>): void {
    if (part.kind === 'rows') {
      for (const row of part.rows) {
        const line = this.#elements.at({ sheet, part: part.id, item: row.id, field: '' });
        if (!(line instanceof QuayLine)) continue;
        const id = `${sheet}.${row.name}`;
        const concerned = row.kind === 'check' || line.active !== '' || changed.has(id);
        if (line.source !== row) line.source = row;
        else if (concerned || line.drawnItem !== this.session.notebook.model.items.get(id))
          line.requestUpdate();
      }
    }
    const own = this.#elements.at({ sheet, part: part.id, item: '', field: '' });
    if (own instanceof QuayTable && part.kind === 'table') {
      const id = `${sheet}.${part.name}`;
      const concerned =
        own.table !== part ||
        changed.has(id) ||
        part.columns.some(({ name }) => changed.has(`${id}.${name}`));
      if (own.table !== part && own.length !== this.#lengths.get(part.id)) this.requestUpdate();
      own.table = part;
      if (concerned) redraw(own);
      for (const column of part.columns) {
        const line = this.#elements.at({ sheet, part: part.id, item: column.id, field: '' });
        if (!(line instanceof QuayLine) || column.kind === 'given') continue;
        line.source = column;
        if (concerned) line.requestUpdate();
      }
    } else if (own instanceof QuayWords && part.kind !== 'table') {
      own.source = part;
      if (part.kind === 'figure' || part.kind === 'chart') own.stamp += 1;
    }
  }

  #lengths = new Map<string, number>();

  override render(): TemplateResult {
    const { sheet, session } = this;
    if (!sheet) return html`<div class="page"><p class="empty">The book has no sheet.</p></div>`;
    this.#map = gridMap(sheet, (table) => session.notebook.rowsOf(table));
    const tracks = tracksFor(this.#width || 880, symbolWidth(sheet));
    this.#room = roomFor(tracks);
    const { count } = this.#map;
    return html`
      <div
        class="page"
        .style=${pageStyle(tracks)}
      >
        <slot name="title-block"></slot>
        <h2 class="sheet-title">${sheet.title || sheet.key}</h2>
        ${
          count === 0
            ? this.#empty()
            : html`<div
              class="grid"
              role="grid"
              aria-label=${sheet.title || sheet.key}
              aria-rowcount=${count}
              aria-colcount="6"
              aria-multiselectable="true"
            >
              ${repeat(
                sheet.parts,
                ({ id }) => id,
                (part) => this.#part(sheet.key, part),
              )}
            </div>`
        }
      </div>
      <quay-sheet-menu></quay-sheet-menu>
      <div class="refusal" role="alert" popover="auto"></div>
    `;
  }

  #empty(): TemplateResult {
    const add = (kind: NewKind, words: string): TemplateResult =>
      html`<button type="button" class="plain-button" @click=${() => this.#add(kind)}>${words}</button>`;
    return html`<div class="empty">
      <p>An empty sheet. Begin with a value you know, or with words.</p>
      <div>${add('given', 'A given value')} ${add('heading', 'A heading')} ${add('text', 'A text')} ${add('table', 'A table')}</div>
    </div>`;
  }

  #add(kind: NewKind): void {
    const change = insertBelow(this.session.notebook.book, this.session.sheet, undefined, kind);
    if (!change || !this.session.apply(change.edit).ok) return;
    if (change.place) this.goTo(change.place);
  }

  #part(sheet: string, part: Part): TemplateResult {
    const index = this.#map.indexOf({ part: part.id, item: '' });
    if (part.kind === 'table') return this.#table(sheet, part, index);
    const titled = part.kind !== 'rows' || hasTitle(part.title) || part.rows.length === 0;
    const words = html`<quay-words
      role="row"
      data-part=${part.id}
      data-item=""
      aria-rowindex=${index + 1}
      .host=${this}
      .session=${this.session}
      .sheet=${sheet}
      .source=${part}
    ></quay-words>`;
    if (part.kind !== 'rows') return html`<div role="rowgroup" class="part">${words}</div>`;
    return html`<div role="rowgroup" class="part block${titled ? '' : ' untitled'}" aria-label=${part.title ?? ''}>
      ${titled ? words : nothing}
      ${repeat(
        part.rows,
        ({ id }) => id,
        (row) => this.#line(sheet, part.id, row, ''),
      )}
    </div>`;
  }

  #table(sheet: string, part: Extract<Part, { kind: 'table' }>, index: number): TemplateResult {
    this.#lengths.set(part.id, this.session.notebook.rowsOf(`${sheet}.${part.name}`) ?? 0);
    return html`<div role="rowgroup" class="part">
        <quay-table
          role="none"
          data-part=${part.id}
          data-item=""
          .host=${this}
          .session=${this.session}
          .sheet=${sheet}
          .table=${part}
          .firstRow=${index + 1}
        ></quay-table>
      </div>
      ${
        part.columns.every(({ kind }) => kind === 'given')
          ? nothing
          : html`<div role="rowgroup" class="part column-lines" aria-label=${`formulas of ${part.title ?? part.name}`}>
            ${part.columns.map((column) =>
              column.kind === 'given' ? nothing : this.#line(sheet, part.id, column, part.name),
            )}
          </div>`
      }`;
  }

  #line(sheet: string, part: string, source: QuayLine['source'], table: string): TemplateResult {
    return html`<quay-line
      role="row"
      data-part=${part}
      data-item=${source.id}
      aria-rowindex=${this.#map.indexOf({ part, item: source.id }) + 1}
      .host=${this}
      .session=${this.session}
      .sheet=${sheet}
      .block=${part}
      .source=${source}
      .table=${table}
      .room=${this.#room}
    ></quay-line>`;
  }

  /** Ends an edit that the person left and whose editor had nothing to commit. */
  #abandon(place: CellPlace): void {
    if (!this.#edit || samePlace(this.#edit.place, place)) return;
    this.#edit = undefined;
    this.#showPlace();
  }

  override firstUpdated(): void {
    const page = this.renderRoot.querySelector('.page');
    if (page) this.#resized.observe(page);
    // The formula editor is large, and nobody needs it before the page stands.
    setTimeout(() => void loadFormulaField(), 600);
  }

  override updated(): void {
    this.#elements.collect(this.renderRoot);
    for (const element of this.#elements.all) if (element instanceof QuayTable) redraw(element);
    this.#showPlace();
  }

  /** Shows on the page where the person is; the focus follows if it is theirs to have. */
  #showPlace(): void {
    if (this.isUpdatePending || this.session.sheet !== this.#map.sheet) return;
    const { place, range } = this;
    const stop = place ?? placeAt(this.#map, 0, 'value');
    this.#elements.show(this.#map, { place, stop, range, edit: this.#edit });
    if (!place || !this.#focusPending) return;
    this.#focusPending = false;
    const element = this.#elements.at(place);
    void element?.updateComplete.then(() => {
      if (samePlace(this.#edit?.place, place) || !samePlace(place, this.session.place)) return;
      const cell = this.#elements.cellAt(place);
      cell?.focus({ preventScroll: true });
      cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      this.#abandon(place);
    });
  }
}

/** Whether the person is typing in a field that is not on the page. */
function typesElsewhere(page: QuaySheet): boolean {
  if (page.matches(':focus-within')) return false;
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active?.matches('input, textarea, select, [contenteditable]') ?? false;
}

/** Has an element drawn again whose values may have changed. */
function redraw(element: QuayLine | QuayWords | QuayTable): void {
  if (element instanceof QuayLine) element.requestUpdate();
  else element.stamp += 1;
}

customElements.define('quay-sheet', QuaySheet);
