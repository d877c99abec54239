import { html, LitElement, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { findSheet, type Sheet, type Table } from '../../document/index.ts';
import { cellContent, writtenAt } from '../editing/cell-content.ts';
import { findPlace } from '../editing/find-place.ts';
import { insertBelow } from '../editing/line-edits.ts';
import type { NewKind } from '../editing/new-items.ts';
import { loadFormulaField } from '../editor/load-formula-field.ts';
import type { EditInHand } from '../session/edit-in-hand.ts';
import { type CellPlace, samePlace } from '../session/place.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { flowStyles } from '../style/flow-styles.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { printedTableStyles } from '../table/printed-table.ts';
import { QuayTable } from '../table/quay-table.ts';
import { tableStyles } from '../table/table-styles.ts';
import type { About, Asked } from './asked.ts';
import { drawChanged } from './changed-parts.ts';
import { DrawnLater, redraw } from './drawn-later.ts';
import type { Commit } from './editing/cell-edit.ts';
import { CellText } from './editing/cell-text.ts';
import { ClipboardEvents } from './editing/clipboard-events.ts';
import { FlowMarks } from './flow-marks.ts';
import { lineStyles } from './line/line-styles.ts';
import { QuayLine } from './line/quay-line.ts';
import { subjectAt } from './menu/menu-subject.ts';
import type { QuaySheetMenu } from './menu/quay-sheet-menu.ts';
import { PageElements } from './page-elements.ts';
import { drawEmpty, drawHeads, drawPart } from './page-parts.ts';
import {
  describedWidth,
  PRINT_WIDTH,
  pageStyle,
  roomFor,
  symbolWidth,
  tracksFor,
} from './paper/page-measure.ts';
import { pageStyles } from './paper/page-styles.ts';
import { PaperTurn } from './paper/paper-turn.ts';
import { printStyles } from './paper/print-styles.ts';
import { CellFocus } from './place/cell-focus.ts';
import { carryOut } from './place/commands.ts';
import { fieldToFill } from './place/field-to-fill.ts';
import { isFocusLost, typesElsewhere } from './place/focus-elsewhere.ts';
import { type GridMap, type GridRow, gridMap, hasTitle, placeAt } from './place/grid-map.ts';
import { type Command, commandOf } from './place/keys.ts';
import { type Motion, moved } from './place/motions.ts';
import { PointerEvents } from './place/pointer-events.ts';
import { type CellRange, rangeBetween } from './place/range.ts';
import { type Scrolled, scrollBack, scrolled } from './scrolled.ts';
import type { SheetHost } from './sheet-host.ts';
import { Unfolding } from './unfolding.ts';
import './menu/quay-sheet-menu.ts';

/**
 * The page: one sheet of the open book on its paper, one grid of cells. It holds where the person is and what is being
 * edited, hands keys to commands, and has only those lines drawn again that an edit concerns.
 */
export class QuaySheet extends LitElement implements SheetHost {
  static override properties = { session: { attribute: false } };
  static override styles = [
    pageStyles,
    lineStyles,
    flowStyles,
    mathsStyles,
    tableStyles,
    printedTableStyles,
    printStyles,
  ];

  declare session: Session;

  /** Other end of the selected range; undefined while one cell is selected. */
  anchor: CellPlace | undefined;
  readonly #elements = new PageElements();
  #map: GridMap = { sheet: '', count: 0, rowAt: () => undefined, indexOf: () => -1 };
  /** The column that moves up and down keep to; whoever leads the person elsewhere leads to a new one. */
  #wanted = 'value';
  #keepsWanted = false;
  /** The field at which a run of Tab keys began, to which Enter leads back. */
  #tabbedFrom: string | undefined;
  #width = 0;
  /** The sheet that was drawn last. */
  #shown: string | undefined;
  /** The number of rows of each table as drawn. */
  #lengths: ReadonlyMap<string, number> = new Map();
  readonly #focus = new CellFocus({
    activeCell: () => {
      const { place } = this;
      const elsewhere = samePlace(this.#edit?.place, place) || this.#menu?.matches(':popover-open');
      return place && !elsewhere ? this.#elements.cellAt(place) : undefined;
    },
    isLost: () => isFocusLost(this),
    onKey: (event) => this.#key(event),
  });
  readonly #later = new DrawnLater();
  readonly #paper = new PaperTurn(this);
  readonly #flow = new FlowMarks();
  readonly #unfolding = new Unfolding((line) => {
    const cell = this.place && this.#elements.cellAt(this.place);
    if (cell && line.contains(cell)) cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });
  /** Where an input method composes a text. */
  #composed: CellPlace | undefined;
  /** How far each sheet was scrolled when it was left. */
  readonly #scrolls = new Map<string, Scrolled>();
  #refused = false;
  /** The calculated cell of a table where the person types in vain: what follows is not for its column either. */
  #inVain: CellPlace | undefined;
  #foundMenu: QuaySheetMenu | null = null;
  #marking = 0;
  #leave: (() => void) | undefined;
  #focusPending = false;
  readonly #resized = new ResizeObserver(([entry]) => {
    // What paper does to the page is not its width on the screen.
    if (this.#paper.printing) return;
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

  protected override createRenderRoot(): HTMLElement | DocumentFragment {
    const root = super.createRenderRoot();
    this.#later.watch(root);
    new CellText(this).watch(root);
    return root;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#leave = this.session?.subscribe(this.#told);
    if (this.session?.place) this.#focusPending = true;
    this.#focus.connect();
    this.#paper.connect();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leave?.();
    this.#resized.disconnect();
    this.#focus.disconnect();
    this.#paper.disconnect();
    this.#unfolding.stop();
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    // The page that is left still stands as it was.
    if (this.#shown !== undefined && this.#shown !== this.session.sheet)
      this.#scrolls.set(this.#shown, scrolled(this));
    if (!changed.has('session')) return;
    this.#scrolls.clear();
    this.#leave?.();
    this.#leave = this.session.subscribe(this.#told);
  }

  /** The lines, tables and words of the page. */
  get elements(): PageElements['all'] {
    return this.#elements.all;
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

  /** What is being typed into a cell of the sheet shown. */
  get #edit(): EditInHand | undefined {
    const { hand } = this.session;
    return hand?.place.sheet === this.#map.sheet ? hand : undefined;
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
    const to = moved(this.#map, from, motion, this.#wanted, page, this.#fill);
    const began = motion === 'next' || motion === 'previous' ? (this.#tabbedFrom ?? from.field) : undefined;
    if (to) this.goTo(to, extend, motion.includes('up') || motion.includes('down'));
    this.#tabbedFrom = began;
  }

  readonly #fill = (row: GridRow): string | undefined => this.sheet && fieldToFill(this.sheet, row);

  /** Makes a cell the active one and gives it the focus. */
  goTo(place: CellPlace, extend = false, keepWanted = false): void {
    if (!keepWanted) this.#wanted = place.field;
    this.#keepsWanted = keepWanted;
    this.#inVain = undefined;
    this.#tabbedFrom = undefined;
    this.anchor = extend ? (this.anchor ?? this.session.place) : undefined;
    this.#focusPending = true;
    if (samePlace(place, this.session.place)) this.#showPlace();
    else this.session.goTo(place);
    this.#keepsWanted = false;
  }

  /** Makes a cell the active one, and selects from it to another one. */
  select(place: CellPlace, anchor: CellPlace): void {
    this.goTo(place);
    if (!samePlace(place, this.session.place)) return;
    this.anchor = anchor;
    this.#showPlace();
  }

  /** Gives the focus to the active cell. */
  focusCell(): void {
    const place = this.place ?? placeAt(this.#map, 0, 'value');
    if (!place) return;
    this.#focusPending = true;
    if (this.place) this.#showPlace();
    else this.session.goTo(place);
  }

  /** Starts editing the active cell, of a calculated column its formula; `seed` replaces what it holds. */
  startEdit(seed?: string): void {
    const { place } = this;
    if (!place) return;
    const { book } = this.session.notebook;
    const source = writtenAt(book, place);
    // A number typed by chance must not replace the formula of a whole column.
    if (seed !== undefined && source !== place) {
      this.#inVain = place;
      this.refuse(['this cell is calculated; F2 opens the formula of its column']);
      return;
    }
    if (this.session.beginEdit(place, seed)) this.anchor = undefined;
    this.#showPlace();
  }

  /** Takes into the active cell what an input method has composed so far, in place of what the cell holds. */
  compose(text: string, done: boolean): void {
    const { place } = this;
    if (!done) this.#composed ??= place;
    const stayed = samePlace(this.#composed, place);
    if (done) this.#composed = undefined;
    // What was entered on the way elsewhere is not begun again there.
    if (!place || !stayed) return;
    if (cellContent(this.session.notebook.book, place).kind === 'choice') {
      // An option is looked for once the letters are there.
      if (done && text !== '') this.startEdit(text);
      return;
    }
    if (!this.#edit && !done && text !== '') this.startEdit('');
    if (!samePlace(this.#edit?.place, place)) return;
    if (done && text === '') this.cancel();
    else this.session.composeDraft(text, done);
  }

  readonly commit = ({ move }: Commit): void => {
    const edit = this.#edit;
    if (!edit || !this.session.endEdit('enter')) return;
    if (move === 'stay') {
      if (samePlace(edit.place, this.session.place)) this.#focusPending = true;
      this.#showPlace();
    } else this.#moveOn(move, edit.kind);
  };

  #moveOn(move: Exclude<Commit['move'], 'stay'>, kind: EditInHand['kind']): void {
    if (move === 'down' && this.#tabbedFrom !== undefined) this.#wanted = this.#tabbedFrom;
    if (kind === 'prose') this.move('down', false);
    else if (this.#leavesRows(move)) {
      // Whoever enters numbers one below the other would go on into a line that stands there.
      if (move === 'down') this.refuse(['this was the last row of the table; Ctrl+Enter puts one below it']);
    } else this.move(move === 'right' ? 'next' : move === 'left' ? 'previous' : move, false);
    // At an edge of the page the person stays, and the cell shows again.
    this.#focusPending = true;
    this.#showPlace();
  }

  /** Whether a move up or down leads from a row of a table out of its rows. */
  #leavesRows(move: Commit['move']): boolean {
    const { place } = this;
    if (!place || (move !== 'down' && move !== 'up')) return false;
    const { book } = this.session.notebook;
    if (findPlace(book, place)?.kind !== 'cell') return false;
    const to = this.#map.rowAt(this.#map.indexOf(place) + (move === 'down' ? 1 : -1));
    const found = to && findPlace(book, { ...place, ...to, field: place.field });
    return found?.kind !== 'cell';
  }

  readonly cancel = (): void => {
    this.session.endEdit('escape');
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
    this.#refused = true;
    const at = (cell ?? this).getBoundingClientRect();
    note.style.setProperty('left', `${Math.max(8, Math.min(at.left, innerWidth - note.offsetWidth - 8))}px`);
    note.style.setProperty('top', `${Math.min(at.bottom + 4, innerHeight - note.offsetHeight - 8)}px`);
  }

  #takeBackRefusal(): void {
    this.#refused = false;
    this.renderRoot.querySelector<HTMLElement>('.refusal:popover-open')?.hidePopover();
  }

  /** It stands behind all lines of a long page: found once. */
  get #menu(): QuaySheetMenu | null {
    if (!this.#foundMenu?.isConnected)
      this.#foundMenu = this.renderRoot.querySelector<QuaySheetMenu>('quay-sheet-menu');
    return this.#foundMenu;
  }

  /** Opens the menu of the active line or part. */
  openMenu(below?: HTMLElement): void {
    const { place } = this;
    const cell = place && this.#elements.cellAt(place);
    const menu = this.#menu;
    if (!place || !cell || !menu) return;
    const subject = subjectAt(this.session.notebook.book, place);
    void menu.open(subject, below ?? cell, cell, (action) => carryOut(this, { kind: 'menu action', action }));
  }

  /** Asks the app for what is said of the active cell elsewhere than on the page. */
  ask(about: About, text?: string): void {
    const { place } = this;
    if (!place) return;
    // The dialog gives the focus back to where it was.
    this.#focus.now();
    this.dispatchEvent(
      new CustomEvent<Asked>('ask', {
        detail: { about, place, ...(text !== undefined && { text }) },
        bubbles: true,
        composed: true,
      }),
    );
  }

  /** Opens the table that tells the same as the active picture, or closes it. */
  showAsTable(): void {
    const picture = this.place && this.#elements.at(this.place);
    picture?.querySelector('details')?.toggleAttribute('open');
    this.focusCell();
  }

  /** Has the sum of the active column written below its table. */
  sumColumn(): void {
    const table = this.place && this.#elements.at(this.place);
    if (table instanceof QuayTable) table.sum();
  }

  readonly #key = (event: KeyboardEvent): void => {
    // What is typed into the title block, which lies in a slot of the page, is not for its cells.
    const own = event.target === this || event.target === document.body;
    if (!own || this.editing || event.defaultPrevented) return;
    const command = commandOf(event);
    if (!command) return;
    if (this.#isTypedOn(event, command)) {
      event.preventDefault();
      this.startEdit(event.key);
      return;
    }
    this.#inVain = undefined;
    if (this.#refused) this.#takeBackRefusal();
    if (command.kind === 'move' && !this.#leadsOn(command.motion)) return;
    event.preventDefault();
    carryOut(this, command);
  };

  /** Whether a key goes on with what is typed into a calculated cell: its letters and spaces, Enter after them, corrections. */
  #isTypedOn({ key }: KeyboardEvent, { kind }: Command): boolean {
    const { place } = this;
    if (!place || writtenAt(this.session.notebook.book, place) === place) return false;
    if (!samePlace(place, this.#inVain)) return kind === 'edit' && key === ' ';
    return kind === 'clear' || (kind === 'edit' && key !== 'F2');
  }

  /** Tab leaves the page behind its last cell, as it leaves any field. */
  #leadsOn(motion: Motion): boolean {
    if (motion !== 'next' && motion !== 'previous') return true;
    const { place } = this;
    return place !== undefined && !samePlace(moved(this.#map, place, motion, '', 1, this.#fill), undefined);
  }

  readonly #told = (event: SessionEvent): void => {
    if (event.kind === 'book') {
      this.#bookChanged(event.changed, event.structure);
      this.#markFlowSoon();
    } else if (event.kind === 'values') this.#bookChanged(event.changed, false);
    else if (event.kind === 'units') {
      for (const element of this.#elements.all) redraw(element);
    } else if (event.kind === 'place') {
      if (this.session.place && !this.#keepsWanted) this.#wanted = this.session.place.field;
      this.#tabbedFrom = undefined;
      if (this.session.place && !event.turned && !typesElsewhere(this)) this.#focusPending = true;
      if (this.session.sheet !== this.#map.sheet) this.requestUpdate();
      this.#showPlace();
      this.#markFlowSoon();
    } else if (event.kind === 'hand') {
      this.#showPlace();
      this.#handChanged();
    }
  };

  /** Has the person go on typing where something is to be said of it; gives the focus back where an edit took it along. */
  #handChanged(): void {
    const edit = this.#edit;
    if (this.#refused) this.#takeBackRefusal();
    requestAnimationFrame(() => {
      if (edit?.remarks && this.#edit === edit) {
        this.renderRoot.querySelector<HTMLElement>('quay-cell-editor, quay-prose-editor')?.focus();
        this.refuse(edit.remarks);
      } else if (!this.session.hand && isFocusLost(this)) this.focusCell();
    });
  }

  #bookChanged(changed: ReadonlySet<string>, structure: boolean): void {
    const { sheet, session } = this;
    if (structure || !sheet || this.#rowsCameOrWent(sheet)) this.requestUpdate();
    if (!structure && sheet)
      drawChanged({ session, elements: this.#elements, later: this.#later }, sheet, changed);
  }

  #rowsCameOrWent(sheet: Sheet): boolean {
    return sheet.parts.some((part) => {
      if (part.kind === 'table') return this.#lengths.get(part.id) !== this.#lengthOf(sheet, part);
      const titled = this.#map.indexOf({ part: part.id, item: '' }) >= 0;
      return part.kind === 'rows' && titled !== (hasTitle(part.title) || part.rows.length === 0);
    });
  }

  #lengthOf(sheet: Sheet, { name }: Table): number {
    return this.session.notebook.rowsOf(`${sheet.key}.${name}`) ?? 0;
  }

  /** What flows where is marked right after the next frame, with the panel that tells the same. */
  #markFlowSoon(): void {
    cancelAnimationFrame(this.#marking);
    this.#marking = requestAnimationFrame(() => {
      setTimeout(() => this.#flow.show(this.session, this.#elements));
    });
  }

  override render(): TemplateResult {
    const { sheet, session } = this;
    if (!sheet) return html`<div class="page"><p class="empty">The book has no sheet.</p></div>`;
    this.#map = gridMap(sheet, (table) => session.notebook.rowsOf(table));
    // On paper the page has a width of its own, whatever the screen's.
    const { printing } = this.#paper;
    const width = printing ? PRINT_WIDTH : this.#width || 880;
    const tracks = tracksFor(width, symbolWidth(sheet), describedWidth(sheet));
    const { count } = this.#map;
    const page = {
      host: this,
      session,
      sheet: sheet.key,
      map: this.#map,
      room: roomFor(tracks, printing),
      printing,
    };
    this.#lengths = new Map(
      sheet.parts.flatMap((part) => (part.kind === 'table' ? [[part.id, this.#lengthOf(sheet, part)]] : [])),
    );
    return html`
      <div
        class="page"
        .style=${pageStyle(tracks, width)}
      >
        <slot name="title-block"></slot>
        <h2 class="sheet-title">${sheet.title || sheet.key}</h2>
        ${
          count === 0
            ? drawEmpty((kind) => this.#add(kind))
            : html`<div
              class="grid"
              role="grid"
              aria-label=${sheet.title || sheet.key}
              aria-rowcount=${count + 1}
              aria-colcount="6"
              aria-multiselectable="true"
            >
              ${drawHeads()}
              ${repeat(
                sheet.parts,
                ({ id }) => id,
                (part) => drawPart(page, part),
              )}
            </div>`
        }
      </div>
      <quay-sheet-menu></quay-sheet-menu>
      <div class="refusal" role="alert" popover="auto"></div>
    `;
  }

  #add(kind: NewKind): void {
    const change = insertBelow(this.session.notebook.book, this.session.sheet, undefined, kind);
    if (!change || !this.session.apply(change.edit).ok) return;
    if (change.place) this.goTo(change.place);
  }

  override firstUpdated(): void {
    const page = this.renderRoot.querySelector('.page');
    if (page) this.#resized.observe(page);
    // A book that opens takes the keys, unless the person is already somewhere.
    void this.updateComplete.then(() => {
      if (!this.session.place && document.activeElement === document.body) this.#goToFirstLine();
    });
    // The formula editor is large, and nobody needs it before the page stands.
    setTimeout(() => void loadFormulaField(), 600);
  }

  /** Words stand above the first line, and a key pressed by chance must not replace them. */
  #goToFirstLine(): void {
    const { sheet, count, rowAt } = this.#map;
    for (let at = 0; at < count; at += 1) {
      const row = rowAt(at);
      if (!row?.fields.includes('value')) continue;
      this.goTo({ sheet, part: row.part, item: row.item, field: 'value' });
      return;
    }
  }

  /** A sheet stands where it was left, a new one at its top; the person is on its first line unless they went elsewhere. */
  #turned(): void {
    const first = this.#shown === undefined;
    this.#shown = this.#map.sheet;
    const { sheet } = this.#map;
    scrollBack(this, this.#scrolls.get(sheet) ?? { top: 0 }, {
      cell: () => this.place && this.#elements.cellAt(this.place),
      stays: () => this.#map.sheet === sheet && !this.#focusPending,
    });
    if (!first && !this.session.place && document.activeElement === document.body) this.#goToFirstLine();
  }

  override updated(): void {
    this.#elements.collect(this.renderRoot);
    for (const element of this.#elements.all) if (element instanceof QuayTable) redraw(element);
    if (this.#shown !== this.#map.sheet) this.#turned();
    this.#showPlace();
    this.#markFlowSoon();
  }

  /** Shows on the page where the person is; the focus follows if it is theirs to have. */
  #showPlace(): void {
    if (this.isUpdatePending || this.session.sheet !== this.#map.sheet) return;
    const { place, range } = this;
    const stop = place ?? placeAt(this.#map, 0, 'value');
    this.#elements.show(this.#map, { place, stop, range, edit: this.#edit });
    const element = place && this.#elements.at(place);
    // Lines do not grow under a range that is being drawn.
    this.#unfolding.restOn(element instanceof QuayLine && !range ? element : undefined);
    if (!place || !this.#focusPending) return;
    this.#focusPending = false;
    void element?.updateComplete.then(() => {
      if (samePlace(this.#edit?.place, place) || !samePlace(place, this.session.place)) return;
      this.#focus.soon();
    });
  }
}

customElements.define('quay-sheet', QuaySheet);
