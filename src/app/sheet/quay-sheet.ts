import { html, LitElement, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { findSheet, type Sheet } from '../../document/index.ts';
import type { ChangedLines } from '../../notebook/index.ts';
import type { PastedOver } from '../editing/clipboard/block.ts';
import { insertBelow } from '../editing/lines/line-edits.ts';
import type { NewKind } from '../editing/lines/new-items.ts';
import type { Commit } from '../editor/cell-edit.ts';
import { loadFormulaField } from '../editor/formula/load-formula-field.ts';
import type { QuayCellEditor } from '../editor/quay-cell-editor.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { flowStyles } from '../style/flow-styles.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import type { EditInHand } from '../view-model/edit-in-hand.ts';
import { type CellPlace, isOffPage, samePlace } from '../view-model/place.ts';
import type { AppRequest, RequestKind } from './app-request.ts';
import { drawChanged } from './changed-parts.ts';
import { DeferredRendering, redraw } from './deferred-rendering.ts';
import { DependencyMarkers } from './dependency-markers.ts';
import { ActiveEdit } from './editing/active-edit.ts';
import { CellText } from './editing/cell-text.ts';
import { ClipboardEvents } from './editing/clipboard-events.ts';
import { FileDrop } from './editing/file-drop.ts';
import { ExpandedLine } from './expanded-line.ts';
import { isInSight } from './in-sight.ts';
import { lineStyles } from './line/line-styles.ts';
import { QuayLine } from './line/quay-line.ts';
import { stackedStyles } from './line/stacked-styles.ts';
import { ActiveMenu } from './menu/active-menu.ts';
import { PageElements } from './page-elements.ts';
import { drawEmpty, drawHeads, drawPart } from './page-parts.ts';
import { PageRows } from './page-rows.ts';
import { PageWidth } from './page-width.ts';
import { describedWidth, pageStyle, roomFor, symbolWidth, tracksFor } from './paper/page-measure.ts';
import { pageStyles } from './paper/page-styles.ts';
import { ActiveCell } from './place/active-cell.ts';
import { dispatchCommand } from './place/commands.ts';
import type { CursorMove } from './place/cursor-movement.ts';
import { blankAt, isFocusLost, typesElsewhere, typesInNoCell } from './place/focus-elsewhere.ts';
import type { GridMap } from './place/grid-map.ts';
import { commandOf } from './place/keys.ts';
import { PointerEvents } from './place/pointer-events.ts';
import type { CellRange } from './place/range.ts';
import { RovingFocus } from './place/roving-focus.ts';
import { RefusalNote } from './refusal-note.ts';
import type { SheetHost } from './sheet-host.ts';
import { SheetTurn } from './sheet-turn.ts';
import { QuayTable } from './table/quay-table.ts';
import { tableStyles } from './table/table-styles.ts';
import './menu/quay-sheet-menu.ts';

/**
 * The page: one sheet of the open book on its paper, one grid of cells. It hands keys to commands, shows where the person
 * is and what is being edited, and has only those lines drawn again that an edit concerns.
 */
export class QuaySheet extends LitElement implements SheetHost {
  static override properties = { session: { attribute: false } };
  static override styles = [pageStyles, lineStyles, stackedStyles, flowStyles, mathsStyles, tableStyles];

  declare session: Session;

  readonly #elements = new PageElements();
  readonly #rows = new PageRows();
  readonly #active = new ActiveCell(this);
  readonly #editing = new ActiveEdit(this, this.#active);
  readonly #refusal = new RefusalNote(this);
  readonly #menu = new ActiveMenu(this, (action) => dispatchCommand(this, { kind: 'menu action', action }));
  readonly #focus = new RovingFocus({
    page: this,
    activeCell: () => {
      const { place } = this;
      const elsewhere = samePlace(this.#edit?.place, place) || this.#menu.isOpen;
      return place && !elsewhere ? this.#elements.cellAt(place) : undefined;
    },
    isLost: () => isFocusLost(this),
    typesElsewhere: () => typesElsewhere(this),
    typesInNoCell: () => typesInNoCell(this),
    blankAt: (event) => blankAt(event, this),
    onKey: (event) => this.#key(event),
  });
  readonly #pointer = new PointerEvents(this);
  readonly #clipboard = new ClipboardEvents(this);
  readonly #rendering = new DeferredRendering();
  readonly #dependencies = new DependencyMarkers();
  readonly #expanded = new ExpandedLine(this, (line) => {
    const cell = this.place && this.#elements.cellAt(this.place);
    return cell && line.contains(cell) ? cell : undefined;
  });
  readonly #turn = new SheetTurn(this, () => this.place && this.#elements.cellAt(this.place));
  #leave: (() => void) | undefined;
  #focusPending = false;
  /** Whether the page is not scrolled sideways when the focus comes, for the person has not gone there by themselves. */
  #keepsSideways = false;
  readonly #width = new PageWidth(this);

  constructor() {
    super();
    new FileDrop(this);
    this.addEventListener('keydown', this.#key);
  }

  protected override createRenderRoot(): HTMLElement | DocumentFragment {
    const root = super.createRenderRoot();
    this.#rendering.watch(root);
    new CellText(this).watch(root);
    return root;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#leave = this.session?.subscribe(this.#onSessionEvent);
    // Whoever is typing beside the page goes on there.
    const { hand, place } = this.session ?? {};
    if (place && !(hand && isOffPage(hand.place))) this.#focusPending = true;
    this.#focus.connect();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leave?.();
    this.#width.disconnect();
    this.#focus.disconnect();
    this.#expanded.stop();
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    // The page that is left still stands as it was.
    this.#turn.leaveFor(this.session.sheet);
    if (!changed.has('session')) return;
    this.#turn.forget();
    this.#leave?.();
    this.#leave = this.session.subscribe(this.#onSessionEvent);
  }

  /** The rows of the sheet shown. */
  get map(): GridMap {
    return this.#rows.map;
  }

  /** The sheet shown, as the book has it now. */
  get sheet(): Sheet | undefined {
    return findSheet(this.session.notebook.book, this.session.sheet);
  }

  /** The active cell; undefined while the person is on none of this sheet. */
  get place(): CellPlace | undefined {
    return this.#active.place;
  }

  /** The selected block of cells; the active cell alone is none. */
  get range(): CellRange | undefined {
    return this.#active.range;
  }

  /** Other end of the selected range; undefined while one cell is selected. */
  get anchor(): CellPlace | undefined {
    return this.#active.anchor;
  }

  set anchor(place: CellPlace | undefined) {
    this.#active.anchor = place;
  }

  /** What is being typed into a cell of the sheet shown. */
  get #edit(): EditInHand | undefined {
    const { hand } = this.session;
    return hand?.place.sheet === this.map.sheet && !isOffPage(hand.place) ? hand : undefined;
  }

  /** Whether a cell is being edited. */
  get editing(): boolean {
    return this.#edit !== undefined;
  }

  /** Moves the active cell; with `extend` the other end of the range stays. */
  move(motion: CursorMove, extend: boolean): void {
    this.#active.move(motion, extend);
  }

  /** Makes a cell the active one and gives it the focus. */
  goTo(place: CellPlace, extend = false): void {
    this.#active.goTo(place, extend);
  }

  /** Makes a cell the active one, and selects from it to another one. */
  select(place: CellPlace, anchor: CellPlace): void {
    this.#active.select(place, anchor);
  }

  /** Has the focus follow when the place is shown next. */
  wantFocus(): void {
    this.#editing.goneOn();
    this.#focusPending = true;
  }

  /** Gives the focus to the active cell. */
  focusCell(): void {
    const { place, stop } = this.#active;
    if (!stop) return;
    this.wantFocus();
    if (place) this.showPlace();
    else this.session.goTo(stop);
  }

  /** Starts editing the active cell, of a calculated column its formula; `seed` replaces what it holds. */
  startEdit(seed?: string): void {
    this.#editing.start(seed);
  }

  /** Takes into the active cell what an input method has composed so far, in place of what the cell holds. */
  compose(text: string, done: boolean): void {
    this.#editing.compose(text, done);
  }

  readonly commit = (done: Commit): void => this.#editing.commit(done);

  readonly cancel = (): void => this.#editing.cancel();

  /** Says near the active cell why something cannot be done. */
  refuse(sentences: readonly string[]): void {
    const isEdited = this.#edit !== undefined;
    this.#refusal.say(sentences, this.place && this.#elements.cellAt(this.place), isEdited);
  }

  /** Says near the active cell what there is to know; nothing was refused. */
  remark(sentence: string): void {
    this.#refusal.say([sentence], this.place && this.#elements.cellAt(this.place), false, 'remark');
  }

  /** Opens the menu of the active line or part. */
  openMenu(below?: HTMLElement): void {
    this.#menu.open(this.place && this.#elements.cellAt(this.place), below);
  }

  /** Asks the app for what is said of the active cell elsewhere than on the page. */
  ask(about: RequestKind): void {
    if (this.place) this.#dispatchAsk({ about, place: this.place });
  }

  /** The place of the cell under the pointer, if there is one. */
  placeAtPointer(event: MouseEvent): CellPlace | undefined {
    return this.#pointer.placeOf(event);
  }

  /** Takes the text of a file that was dropped on a place, or beside all of them. */
  dropText(place: CellPlace | undefined, text: string): void {
    this.#clipboard.drop(place, text);
  }

  /** Asks the app for the rows that a text makes, from the first of the cells it was pasted over. */
  askPasted(place: CellPlace, pasted: PastedOver): void {
    this.#dispatchAsk({ about: 'rows', place, pasted });
  }

  #dispatchAsk(detail: AppRequest): void {
    // The dialog gives the focus back to where it was.
    this.#focus.now();
    this.dispatchEvent(new CustomEvent<AppRequest>('ask', { detail, bubbles: true, composed: true }));
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
    if (this.#editing.typesOn(event, command)) {
      event.preventDefault();
      return;
    }
    this.#refusal.takeBack();
    if (command.kind === 'move' && !this.#active.leadsOn(command.motion)) return;
    event.preventDefault();
    dispatchCommand(this, command);
  };

  readonly #onSessionEvent = (event: SessionEvent): void => {
    if (event.kind === 'book') {
      this.#bookChanged(event.changed, event.structure);
      this.#dependencies.showSoon(this, this.#elements);
    } else if (event.kind === 'values') this.#bookChanged(event.changed, false);
    else if (event.kind === 'units') {
      for (const element of this.#elements.all) redraw(element);
    } else if (event.kind === 'place') {
      this.#active.led();
      // What was said was said where the person is no more.
      this.#refusal.takeBack();
      // What is typed next is for the place the person was led to, wherever they typed before; a button keeps the focus.
      if (this.session.place && (!event.turned || typesElsewhere(this))) this.#focusPending = true;
      if (this.session.sheet !== this.map.sheet) this.requestUpdate();
      this.showPlace();
      this.#dependencies.showSoon(this, this.#elements);
    } else if (event.kind === 'hand') {
      this.showPlace();
      this.#handChanged();
    }
  };

  /** Has the person go on typing where something is to be said of it; gives the focus back where an edit took it along. */
  #handChanged(): void {
    const edit = this.#edit;
    this.#refusal.takeBack();
    requestAnimationFrame(() => {
      if (edit?.remarks && this.#edit === edit) {
        const editor = this.renderRoot.querySelector<QuayCellEditor | HTMLElement>(
          'quay-cell-editor, quay-prose-editor',
        );
        editor?.focus();
        // One sentence in one place: below the field, with what mends it, which is drawn in the next frame at the latest.
        const remarks = edit.remarks;
        requestAnimationFrame(() => {
          if (this.#edit !== edit) return;
          if (!(editor && 'isRefusalSaid' in editor && editor.isRefusalSaid)) this.refuse(remarks);
        });
      } else if (!this.session.hand && isFocusLost(this)) this.focusCell();
    });
  }

  #bookChanged(changed: ChangedLines, structure: boolean): void {
    const { sheet, session } = this;
    // What is drawn under another key is drawn anew as a whole: until then its parts ask for ids that are gone.
    const anew = structure || sheet?.key !== this.map.sheet;
    if (anew || !sheet || this.#rows.isOutdated(session, sheet)) this.requestUpdate();
    if (!anew && sheet)
      drawChanged({ session, elements: this.#elements, rendering: this.#rendering }, sheet, changed);
  }

  override render(): TemplateResult {
    const { sheet, session } = this;
    if (!sheet) return html`<div class="page"><p class="empty">The book has no sheet.</p></div>`;
    this.#rows.take(session, sheet);
    const width = this.#width.px || 880;
    const tracks = tracksFor(width, symbolWidth(sheet), describedWidth(sheet));
    const { count } = this.map;
    const page = {
      host: this,
      session,
      sheet: sheet.key,
      map: this.map,
      room: roomFor(tracks),
      paper: undefined,
    };
    return html`
      <div
        class=${tracks.stacked ? 'page stacked' : 'page'}
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
      ${this.#refusal.draw()}
    `;
  }

  #add(kind: NewKind): void {
    const change = insertBelow(this.session.notebook.book, this.session.sheet, undefined, kind);
    if (!change || !this.session.apply(change.edit).ok) return;
    if (change.place) this.goTo(change.place);
  }

  override firstUpdated(): void {
    const page = this.renderRoot.querySelector('.page');
    if (page) this.#width.observe(page);
    // A book that opens takes the keys, unless the person is already somewhere.
    void this.updateComplete.then(() => {
      if (!this.session.place && document.activeElement === document.body) this.goToFirstLine();
    });
    // The formula editor is large, and nobody needs it before the page stands.
    setTimeout(() => void loadFormulaField(), 600);
  }

  /** Makes the first line in sight the active one: words above it must not be replaced by a key pressed by chance. */
  goToFirstLine(): void {
    const lines = [...this.#elements.all].filter((element) => element instanceof QuayLine);
    const line = lines.find((one) => isInSight(one, this)) ?? lines[0];
    const { part = '', item = '' } = line?.dataset ?? {};
    // Where the window is narrower than the paper, the page would be scrolled sideways off its descriptions.
    this.#keepsSideways = true;
    if (line) this.goTo({ sheet: this.map.sheet, part, item, field: 'value' });
  }

  override updated(): void {
    this.#elements.collect(this.renderRoot);
    for (const element of this.#elements.all) if (element instanceof QuayTable) redraw(element);
    const turned = this.#turn.drawn(this.map.sheet, () => !this.#focusPending);
    const isFree = document.activeElement === document.body || typesElsewhere(this);
    // On another sheet the person is on its first line, unless they went elsewhere.
    if (turned === 'another' && !this.session.place && isFree) this.goToFirstLine();
    this.showPlace();
    this.#dependencies.showSoon(this, this.#elements);
  }

  /** Shows on the page where the person is; the focus follows if it is theirs to have. */
  showPlace(): void {
    if (this.isUpdatePending || this.session.sheet !== this.map.sheet) return;
    const { place, range, stop } = this.#active;
    this.#elements.show(this.map, { place, stop, range, edit: this.#edit });
    const element = place && this.#elements.at(place);
    // Lines do not grow under a range that is being drawn.
    this.#expanded.restOn(element instanceof QuayLine && !range ? element : undefined);
    if (!place || !this.#focusPending) return;
    this.#focusPending = false;
    const keepsSideways = this.#keepsSideways;
    this.#keepsSideways = false;
    void element?.updateComplete.then(() => {
      if (samePlace(this.#edit?.place, place) || !samePlace(place, this.session.place)) return;
      this.#focus.soon(keepsSideways);
    });
  }
}

customElements.define('quay-sheet', QuaySheet);
