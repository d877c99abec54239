import type { EditInHand } from '../view-model/edit-in-hand.ts';
import type { CellPlace } from '../view-model/place.ts';
import { QuayLine } from './line/quay-line.ts';
import { QuayWords } from './line/quay-words.ts';
import { type GridMap, tableRow } from './place/grid-map.ts';
import { type CellRange, fieldsInRange } from './place/range.ts';
import { QuayTable } from './table/quay-table.ts';

/** Where the person is, as the page shows it. */
export interface Standing {
  readonly place: CellPlace | undefined;
  readonly stop: CellPlace | undefined;
  readonly range: CellRange | undefined;
  readonly edit: EditInHand | undefined;
}

type Drawn = QuayLine | QuayWords | QuayTable;

/** The elements of a page by part and item, told where the person is; only those concerned draw again. */
export class PageElements {
  #byKey: ReadonlyMap<string, Drawn> = new Map();
  #touched: ReadonlySet<Drawn> = new Set();

  /** Takes stock of a page that was drawn anew. */
  collect(root: ParentNode): void {
    const found = new Map<string, Drawn>();
    for (const element of root.querySelectorAll('quay-line, quay-words, quay-table')) {
      if (element instanceof QuayTable || element instanceof QuayWords || element instanceof QuayLine)
        found.set(`${element.dataset.part}/${element.dataset.item}`, element);
    }
    this.#byKey = found;
  }

  get all(): Iterable<Drawn> {
    return this.#byKey.values();
  }

  /** The element that draws a place. */
  at(place: CellPlace): Drawn | undefined {
    const own = this.#byKey.get(`${place.part}/${place.item}`);
    if (own) return own;
    return this.#byKey.get(`${place.part}/`);
  }

  /** The line of a place, if it is one. */
  lineAt(place: CellPlace): QuayLine | undefined {
    const element = this.at(place);
    return element instanceof QuayLine ? element : undefined;
  }

  /** The cell of a place, if it is drawn. */
  cellAt(place: CellPlace): HTMLElement | undefined {
    const element = this.at(place);
    const cell = `[data-field="${CSS.escape(place.field)}"]`;
    const selector = element instanceof QuayTable ? `[data-item="${CSS.escape(place.item)}"] ${cell}` : cell;
    return element?.querySelector<HTMLElement>(selector) ?? undefined;
  }

  /** Shows where the person is now, and no longer where they were. */
  show(map: GridMap, standing: Standing): void {
    const now = new Set<Drawn>();
    const { place, stop, range, edit } = standing;
    for (const one of [place, stop, edit?.place]) {
      const element = one && this.at(one);
      if (element) now.add(element);
    }
    if (range) for (const element of this.#inRange(map, range)) now.add(element);
    for (const element of new Set([...this.#touched, ...now])) {
      if (element instanceof QuayTable) showInTable(element, map, standing);
      else showInLine(element, map, standing);
    }
    this.#touched = now;
  }

  *#inRange(map: GridMap, range: CellRange): Iterable<Drawn> {
    for (const element of this.#byKey.values()) {
      const first = map.indexOf({ part: element.dataset.part ?? '', item: element.dataset.item ?? '' });
      const last = element instanceof QuayTable ? first + 1 + element.length : first;
      if (last >= range.top && first <= range.bottom) yield element;
    }
  }
}

function showInLine(
  element: QuayLine | QuayWords,
  map: GridMap,
  { place, stop, range, edit }: Standing,
): void {
  const { part = '', item = '' } = element.dataset;
  const here = (one: CellPlace | undefined): boolean => one?.part === part && one.item === item;
  element.active = place && here(place) ? place.field : '';
  element.stop = stop && here(stop) ? stop.field : '';
  element.edit = edit && here(edit.place) ? edit : undefined;
  const index = map.indexOf({ part, item });
  const fields = map.rowAt(index)?.fields ?? [];
  const selected = range && index >= range.top && index <= range.bottom ? fieldsInRange(range, fields) : none;
  if (selected.length > 0 || element.selected.length > 0) element.selected = selected;
}

const none: readonly string[] = [];

function showInTable(element: QuayTable, map: GridMap, { place, stop, range, edit }: Standing): void {
  const { part } = element.dataset;
  const mine = (one: CellPlace | undefined): one is CellPlace =>
    one?.part === part &&
    (one?.item === '' || one?.item === 'head' || tableRow(one?.item ?? '') !== undefined);
  element.activeItem = mine(place) ? place.item : '';
  element.activeField = mine(place) ? place.field : '';
  element.stopItem = mine(stop) ? stop.item : '';
  element.stopField = mine(stop) ? stop.field : '';
  element.edit = mine(edit?.place) ? edit : undefined;
  const first = map.indexOf({ part: part ?? '', item: 'r0' });
  // The title of a table and its headings stand in front of its first row.
  const overlaps = range && range.bottom >= first - 2 && range.top < first + element.length;
  const moved = overlaps ? { ...range, top: range.top - first, bottom: range.bottom - first } : undefined;
  if (moved || element.range) element.range = moved;
}
