import type { Outcome } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';
import { refusalWords } from '../../../record/index.ts';
import { clearCells, fillDown } from '../../editing/cells/range-edits.ts';
import { firstRemedy } from '../../editing/cells/remedy.ts';
import type { PastedOver } from '../../editing/clipboard/block.ts';
import { findPlace } from '../../editing/find-place.ts';
import { insertColumnBeside, moveColumnBy, removeColumnAt } from '../../editing/lines/column-edits.ts';
import { insertChart } from '../../editing/lines/insert-chart.ts';
import {
  type Change,
  duplicate,
  insertAbove,
  insertBelow,
  insertRowBelow,
  moveLine,
  removeLines,
  removeWholePart,
} from '../../editing/lines/line-edits.ts';
import { moveLinesBy } from '../../editing/lines/move-lines.ts';
import type { NewKind } from '../../editing/lines/new-items.ts';
import type { Session } from '../../session/session.ts';
import { NOTHING_TO_UNDO } from '../../session/undo-words.ts';
import type { CellPlace } from '../../view-model/place.ts';
import type { RequestKind } from '../app-request.ts';
import type { MenuAction } from '../menu/quay-sheet-menu.ts';
import type { CursorMove } from './cursor-movement.ts';
import { type GridMap, placeAt } from './grid-map.ts';
import type { Command } from './keys.ts';
import { type CellRange, cellsInRange } from './range.ts';

/** What commands need of the page. */
export interface CommandHost {
  readonly session: Session;
  readonly map: GridMap;
  readonly place: CellPlace | undefined;
  readonly range: CellRange | undefined;
  anchor: CellPlace | undefined;
  readonly move: (motion: CursorMove, extend: boolean) => void;
  readonly goTo: (place: CellPlace, extend?: boolean) => void;
  readonly select: (place: CellPlace, anchor: CellPlace) => void;
  readonly startEdit: (seed?: string) => void;
  readonly refuse: (sentences: readonly string[]) => void;
  /** Says what there is to know; nothing was refused. */
  readonly remark: (sentence: string) => void;
  readonly openMenu: () => void;
  readonly sumColumn: () => void;
  readonly showAsTable: () => void;
  /** Asks for what is said of the active cell elsewhere. */
  readonly ask: (about: RequestKind) => void;
  /** Asks what a text means that was pasted over the cells from a place on. */
  readonly askPasted: (place: CellPlace, pasted: PastedOver) => void;
}

type MenuCommand = { readonly kind: 'menu action'; readonly action: MenuAction };

type Handler = (host: CommandHost) => void;

const commands: Readonly<Record<Exclude<Command['kind'], 'move' | 'edit'>, Handler>> = {
  undo: (host) => {
    if (!host.session.undo() && !host.session.hand) host.remark(NOTHING_TO_UNDO);
  },
  redo: ({ session }) => session.redo(),
  collapse: (host) => host.place && host.goTo(host.place),
  menu: (host) => host.openMenu(),
  remedy: applyRemedy,
  'select all': selectAll,
  clear: (host) => applyEdit(host, clearCells(book(host), selectedCells(host))),
  'fill down': (host) => applyEdit(host, fillDown(book(host), selectedCells(host))),
  insert: insertLike,
  'insert above': (host) => changeAt(host, (place) => insertAbove(book(host), place)),
  'delete lines': removeSelected,
  'line up': (host) => moveSelected(host, -1),
  'line down': (host) => moveSelected(host, 1),
  duplicate: (host) => changeAt(host, (place) => duplicate(book(host), place)),
};

const actions: Readonly<Record<Exclude<MenuAction, `insert ${NewKind}`>, Handler>> = {
  'insert above': commands['insert above'],
  'insert row': (host) => changeAt(host, (place) => insertRowBelow(book(host), place)),
  'insert chart': chartBelow,
  'insert given column': (host) => changeAt(host, (place) => insertColumnBeside(book(host), place, 'given')),
  'insert calc column': (host) => changeAt(host, (place) => insertColumnBeside(book(host), place, 'calc')),
  'column left': (host) => changeAt(host, (place) => moveColumnBy(book(host), place, -1)),
  'column right': (host) => changeAt(host, (place) => moveColumnBy(book(host), place, 1)),
  'delete column': (host) => changeAt(host, (place) => removeColumnAt(book(host), place)),
  details: (host) => host.ask('details'),
  link: (host) => host.ask('link'),
  methods: (host) => host.ask('methods'),
  'read rows': (host) => host.ask('rows'),
  'write rows': (host) => host.ask('csv'),
  sum: (host) => host.sumColumn(),
  'as table': (host) => host.showAsTable(),
  duplicate: commands.duplicate,
  'move up': commands['line up'],
  'move down': commands['line down'],
  'delete line': removeSelected,
  'delete part': removePart,
};

/** Does on a page what a key or the menu asks for. */
export function dispatchCommand(host: CommandHost, command: Command | MenuCommand): void {
  if (command.kind === 'move') host.move(command.motion, command.extend);
  else if (command.kind === 'edit') host.startEdit(command.seed);
  else if (command.kind !== 'menu action') commands[command.kind](host);
  else if (isInsertion(command.action)) insertNew(host, command.action.slice('insert '.length) as NewKind);
  else actions[command.action](host);
}

function isInsertion(action: MenuAction): action is Extract<MenuAction, `insert ${NewKind}`> {
  return action.startsWith('insert ') && !(action in actions);
}

const book = (host: CommandHost) => host.session.notebook.book;

/** The cells selected, row by row: the range, else the active cell. */
export function selectedCells(host: CommandHost): readonly (readonly CellPlace[])[] {
  const { range, place, map } = host;
  if (range) return cellsInRange(map, range);
  return place ? [[place]] : [];
}

function insertNew(host: CommandHost, kind: NewKind): void {
  applyChange(host, insertBelow(book(host), host.session.sheet, host.place, kind));
}

function chartBelow(host: CommandHost): void {
  const change = host.place && insertChart(host.session.notebook, host.place);
  if (change && reportRefusal(host, change)) applyChange(host, change.value);
}

function changeAt(host: CommandHost, change: (place: CellPlace) => Change | undefined): void {
  if (host.place) applyChange(host, change(host.place));
}

function applyRemedy(host: CommandHost): void {
  const edit = host.place && firstRemedy(host.session.notebook, host.place);
  if (!edit) host.refuse(['no remedy is offered for this line']);
  else if (reportRefusal(host, edit)) applyEdit(host, edit.value);
}

function removePart(host: CommandHost): void {
  const { place, map } = host;
  if (!place) return;
  removeAt(host, removeWholePart(place), Math.max(map.indexOf({ part: place.part, item: '' }), 0));
}

/** A new line of the kind the person is on, below a choice one that takes what is typed; a new row in a table. */
function insertLike(host: CommandHost): void {
  const found = host.place && findPlace(book(host), host.place);
  const inTable = found?.kind === 'cell' || (found?.kind === 'column' && host.place?.item === 'head');
  if (inTable) actions['insert row'](host);
  else insertNew(host, found?.kind === 'row' && found.row.kind !== 'choice' ? found.row.kind : 'given');
}

/** Moves the line the person is on, or all lines or rows of the range, which stay selected. */
function moveSelected(host: CommandHost, by: -1 | 1): void {
  const { place, anchor, range } = host;
  if (!range || !anchor || !place) {
    changeAt(host, (at) => moveLine(book(host), at, by));
    return;
  }
  const places = selectedCells(host).flatMap(([first]) => first ?? []);
  const moved = moveLinesBy(book(host), places, by);
  if (!moved)
    host.refuse(['lines of blocks move together, or rows of one table; others stay where they are']);
  else if (moved.edit.patches.length > 0 && reportRefusal(host, host.session.apply(moved.edit)))
    host.select(moved.follow(place), moved.follow(anchor));
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
  if (!reportRefusal(host, host.session.apply(edit))) return;
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
  if (edit) reportRefusal(host, host.session.apply(edit));
}

function applyChange(host: CommandHost, change: Change | undefined): void {
  if (!change || !reportRefusal(host, host.session.apply(change.edit))) return;
  if (change.place) host.goTo(change.place);
}

/** Whether something was done; says why not where it was refused. */
export function reportRefusal<Done>(
  host: CommandHost,
  outcome: Outcome<Done>,
): outcome is Extract<Outcome<Done>, { ok: true }> {
  if (outcome.ok) return true;
  host.refuse(refusalWords(outcome.problems, host.session.notebook, host.session.sheet));
  return false;
}
