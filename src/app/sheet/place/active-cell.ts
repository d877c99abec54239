import type { Sheet } from '../../../document/index.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CommitMove } from '../../editor/cell-edit.ts';
import type { Session } from '../../session/session.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { type CellPlace, samePlace } from '../../view-model/place.ts';
import { type CursorMove, moveCursor } from './cursor-movement.ts';
import { fieldToFill } from './field-to-fill.ts';
import { type GridMap, type GridRow, placeAt } from './grid-map.ts';
import { type CellRange, rangeBetween } from './range.ts';

/** What the active cell needs of its page. */
interface Host {
  readonly session: Session;
  readonly map: GridMap;
  readonly sheet: Sheet | undefined;
  readonly clientHeight: number;
  /** Says near the active cell what there is to know; nothing was refused. */
  readonly remark: (sentence: string) => void;
  /** Shows where the person is. */
  readonly showPlace: () => void;
  /** Has the focus follow when the place is shown next. */
  readonly wantFocus: () => void;
}

/** About so many px high is a line, of which a page up or down takes as many as are in sight. */
const LINE = 44;

/** The active cell of a page, the range that reaches from it, and where moves lead. */
export class ActiveCell {
  readonly #host: Host;
  /** Other end of the selected range; undefined while one cell is selected. */
  anchor: CellPlace | undefined;
  /** The column that moves up and down keep to; whoever leads the person elsewhere leads to a new one. */
  #wanted = 'value';
  #keepsWanted = false;
  /** The field at which a run of Tab keys began, to which Enter leads back. */
  #tabbedFrom: string | undefined;

  constructor(host: Host) {
    this.#host = host;
  }

  /** The active cell; undefined while the person is on none of the sheet shown. */
  get place(): CellPlace | undefined {
    const { place } = this.#host.session;
    return place && this.#host.map.indexOf(place) >= 0 ? place : undefined;
  }

  /** The selected block of cells; the active cell alone is none. */
  get range(): CellRange | undefined {
    const { place, anchor } = this;
    return place && anchor && !samePlace(place, anchor)
      ? rangeBetween(this.#host.map, anchor, place)
      : undefined;
  }

  /** The cell that the Tab key reaches: the active one, else the first of the page. */
  get stop(): CellPlace | undefined {
    return this.place ?? placeAt(this.#host.map, 0, 'value');
  }

  /** Moves the active cell; with `extend` the other end of the range stays. */
  move(motion: CursorMove, extend: boolean): void {
    const { map, clientHeight } = this.#host;
    const from = this.place ?? placeAt(map, 0, this.#wanted);
    if (!from) return;
    const page = Math.max(3, Math.floor(clientHeight / LINE));
    const to = moveCursor(map, from, motion, this.#wanted, page, this.#fill);
    const began = motion === 'next' || motion === 'previous' ? (this.#tabbedFrom ?? from.field) : undefined;
    if (to) this.goTo(to, extend, motion.includes('up') || motion.includes('down'));
    this.#tabbedFrom = began;
  }

  readonly #fill = (row: GridRow): string | undefined =>
    this.#host.sheet && fieldToFill(this.#host.sheet, row);

  /** Makes a cell the active one and gives it the focus. */
  goTo(place: CellPlace, extend = false, keepWanted = false): void {
    const { session } = this.#host;
    if (!keepWanted) this.#wanted = place.field;
    this.#keepsWanted = keepWanted;
    this.#tabbedFrom = undefined;
    this.anchor = extend ? (this.anchor ?? session.place) : undefined;
    this.#host.wantFocus();
    if (samePlace(place, session.place)) this.#host.showPlace();
    else session.goTo(place);
    this.#keepsWanted = false;
  }

  /** Makes a cell the active one, and selects from it to another one. */
  select(place: CellPlace, anchor: CellPlace): void {
    this.goTo(place);
    if (!samePlace(place, this.#host.session.place)) return;
    this.anchor = anchor;
    this.#host.showPlace();
  }

  /** Takes note that the session has led the person elsewhere. */
  led(): void {
    const { place } = this.#host.session;
    if (place && !this.#keepsWanted) this.#wanted = place.field;
    this.#tabbedFrom = undefined;
  }

  /** Goes on from a cell in which something was entered; at an edge of the page, and of a table's rows, the person stays. */
  moveOn(move: Exclude<CommitMove, 'stay'>, kind: EditInHand['kind']): void {
    if (move === 'down' && this.#tabbedFrom !== undefined) this.#wanted = this.#tabbedFrom;
    if (kind === 'prose') this.move('down', false);
    else if (this.#leavesRows(move)) {
      // Whoever enters numbers one below the other would go on into a line that stands there.
      if (move === 'down')
        this.#host.remark('this was the last row of the table; Ctrl+Enter puts one below it');
    } else this.move(move === 'right' ? 'next' : move === 'left' ? 'previous' : move, false);
    this.#host.wantFocus();
    this.#host.showPlace();
  }

  /** Whether a move up or down leads from a row of a table out of its rows. */
  #leavesRows(move: CommitMove): boolean {
    const { place } = this;
    if (!place || (move !== 'down' && move !== 'up')) return false;
    const { map, session } = this.#host;
    const { book } = session.notebook;
    if (findPlace(book, place)?.kind !== 'cell') return false;
    const to = map.rowAt(map.indexOf(place) + (move === 'down' ? 1 : -1));
    const found = to && findPlace(book, { ...place, ...to, field: place.field });
    return found?.kind !== 'cell';
  }

  /** Whether a motion leads to another cell; Tab leaves the page behind its last one, as it leaves any field. */
  leadsOn(motion: CursorMove): boolean {
    if (motion !== 'next' && motion !== 'previous') return true;
    const { place } = this;
    return place !== undefined && moveCursor(this.#host.map, place, motion, '', 1, this.#fill) !== undefined;
  }
}
