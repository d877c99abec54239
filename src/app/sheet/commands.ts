import type { Outcome } from '../../diagnostics/index.ts';
import type { Edit } from '../../document/index.ts';
import {
  type Change,
  duplicate,
  insertBelow,
  insertRowBelow,
  moveLine,
  removeLines,
  removeWholePart,
} from '../editing/line-edits.ts';
import { findPlace } from '../editing/find-place.ts';
import type { NewKind } from '../editing/new-items.ts';
import { clearCells, fillDown } from '../editing/range-edits.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import { type GridMap, placeAt } from './grid-map.ts';
import type { Command } from './keys.ts';
import type { Motion } from './motions.ts';
import type { MenuAction } from './quay-sheet-menu.ts';
import { type CellRange, cellsInRange } from './range.ts';

/** What commands need of the page. */
export interface CommandHost {
  readonly session: Session;
  readonly map: GridMap;
  readonly place: CellPlace | undefined;
  readonly range: CellRange | undefined;
  anchor: CellPlace | undefined;
  readonly move: (motion: Motion, extend: boolean) => void;
  readonly goTo: (place: CellPlace, extend?: boolean) => void;
  readonly startEdit: (seed?: string) => void;
  readonly refuse: (sentences: readonly string[]) => void;
  readonly openMenu: () => void;
  readonly sumColumn: () => void;
}

type MenuCommand = { readonly kind: 'menu action'; readonly action: MenuAction };

/** Does on a page what a key or the menu asks for. */
export function carryOut(host: CommandHost, command: Command | MenuCommand): void {
  switch (command.kind) {
    case 'move':
      return host.move(command.motion, command.extend);
    case 'edit':
      return host.startEdit(command.seed);
    case 'undo':
      host.session.undo();
      return;
    case 'redo':
      host.session.redo();
      return;
    case 'collapse':
      if (host.place) host.goTo(host.place);
      return;
    case 'menu':
      return host.openMenu();
    case 'select all':
      return selectAll(host);
    case 'clear':
      return applyEdit(host, clearCells(book(host), selectedCells(host)));
    case 'fill down':
      return applyEdit(host, fillDown(book(host), selectedCells(host)));
    case 'insert':
      return insertLike(host);
    case 'menu action':
      return act(host, command.action);
    default:
      return act(host, actions[command.kind]);
  }
}

const actions = {
  'delete lines': 'delete line',
  'line up': 'move up',
  'line down': 'move down',
  duplicate: 'duplicate',
} as const;

const book = (host: CommandHost) => host.session.notebook.book;

/** The cells selected, row by row: the range, else the active cell. */
export function selectedCells(host: CommandHost): readonly (readonly CellPlace[])[] {
  const { range, place, map } = host;
  if (range) return cellsInRange(map, range);
  return place ? [[place]] : [];
}

function act(host: CommandHost, action: MenuAction): void {
  const { place } = host;
  if (action.startsWith('insert ') && action !== 'insert row') {
    const kind = action.slice('insert '.length) as NewKind;
    return applyChange(host, insertBelow(book(host), host.session.sheet, place, kind));
  }
  if (!place) return;
  switch (action) {
    case 'sum':
      return host.sumColumn();
    case 'insert row':
      return applyChange(host, insertRowBelow(book(host), place));
    case 'duplicate':
      return applyChange(host, duplicate(book(host), place));
    case 'move up':
    case 'move down':
      return applyChange(host, moveLine(book(host), place, action === 'move up' ? -1 : 1));
    case 'delete line':
      return removeSelected(host);
    case 'delete part': {
      const index = host.map.indexOf({ part: place.part, item: '' });
      return removeAt(host, removeWholePart(place), Math.max(index, 0));
    }
  }
}

/** A new line of the kind the person is on; a new row in a table. */
function insertLike(host: CommandHost): void {
  const found = host.place && findPlace(book(host), host.place);
  if (host.place && (found?.kind === 'cell' || (found?.kind === 'column' && host.place.item === 'head')))
    return applyChange(host, insertRowBelow(book(host), host.place));
  const kind = found?.kind === 'row' ? found.row.kind : 'given';
  applyChange(host, insertBelow(book(host), host.session.sheet, host.place, kind));
}

function removeSelected(host: CommandHost): void {
  const places = selectedCells(host).flatMap((row) => row[0] ?? []);
  const first = places[0];
  const edit = removeLines(book(host), places);
  if (first && edit) removeAt(host, edit, host.map.indexOf(first));
}

/** Removes, and leaves the person on what stands there now. */
function removeAt(host: CommandHost, edit: Edit, index: number): void {
  const field = host.place?.field ?? 'value';
  if (!told(host, host.session.apply(edit))) return;
  host.anchor = undefined;
  queueMicrotask(() => {
    const place = placeAt(host.map, Math.min(index, host.map.count - 1), field);
    if (place) host.goTo(place);
  });
}

/** From the first cell to the last, in the width of a whole line. */
function selectAll(host: CommandHost): void {
  const { map } = host;
  const first = map.rowAt(0);
  const last = map.rowAt(map.count - 1);
  if (!first || !last) return;
  host.goTo({ sheet: map.sheet, part: first.part, item: first.item, field: first.fields[0] ?? '' });
  host.goTo({ sheet: map.sheet, part: last.part, item: last.item, field: last.fields.at(-1) ?? '' }, true);
}

function applyEdit(host: CommandHost, edit: Edit | undefined): void {
  if (edit) told(host, host.session.apply(edit));
}

function applyChange(host: CommandHost, change: Change | undefined): void {
  if (!change || !told(host, host.session.apply(change.edit))) return;
  if (change.place) host.goTo(change.place);
}

/** Whether something was done; says why not where it was refused. */
export function told(host: CommandHost, outcome: Outcome<unknown>): boolean {
  if (outcome.ok) return true;
  host.refuse(outcome.problems.map(({ message, hints }) => [message, ...hints].join('; ')));
  return false;
}
