import type { Problem } from '../../diagnostics/index.ts';
import { findSheet } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { findingsOf, groupedSheets } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { type GridMap, gridMap } from '../sheet/place/grid-map.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';

/** Where a problem is mended: its line, its row of a table, or the formula of its column; nowhere for the whole book. */
export function placeOfProblem(
  notebook: Notebook,
  { cell = '', code, data }: Problem,
): CellPlace | undefined {
  const place = placeOfId(notebook, cell);
  const item = notebook.model.items.get(cell);
  if (!place || item?.kind === 'input' || item?.kind === 'formula') return place;
  const { row } = data;
  if (
    code === 'row-fails' ||
    code === 'row-incomplete' ||
    ((code === 'key-not-found' || code === 'entry-unread') && typeof row === 'number')
  )
    return { ...place, item: `r${Number(row) - 1}` };
  return item?.kind === 'formula column' ? { ...place, item: item.column.id, field: 'value' } : place;
}

/**
 * The next place (or the one before, by `step`) that has a problem or a failing check, seen from where the person is;
 * after the last comes the first again. Undefined where the whole book has none.
 */
export function nextFinding(
  session: Pick<Session, 'notebook' | 'place' | 'sheet' | 'overview'>,
  step: 1 | -1,
): CellPlace | undefined {
  const { notebook } = session;
  const { problems, checks } = findingsOf(notebook);
  const places = [
    ...problems.flatMap((found) => placeOfProblem(notebook, found) ?? []),
    ...checks.flatMap(({ item, verdict }) =>
      verdict?.holds === false ? (placeOfId(notebook, item.id) ?? []) : [],
    ),
  ];
  const positionOf = positions(notebook);
  const stops = places
    .map((place) => ({ place, position: positionOf(place) }))
    .sort((a, b) => compared(a.position, b.position));
  const here = session.overview
    ? beforeAll
    : positionOf(session.place ?? { sheet: session.sheet, part: '', item: '', field: '' });
  const [found, again] =
    step === 1
      ? [stops.find(({ position }) => compared(position, here) > 0), stops[0]]
      : [stops.findLast(({ position }) => compared(position, here) < 0), stops.at(-1)];
  return (found ?? again)?.place;
}

/** Sheet, row of its grid, and column where the row is one of a table: a line is one place, whichever cell is chosen. */
type Position = readonly [sheet: number, row: number, column: number];

const beforeAll: Position = [-1, -1, -1];

function compared(a: Position, b: Position): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
}

function positions(notebook: Notebook): (place: CellPlace) => Position {
  const order = [...groupedSheets(notebook.book).values()].flat().map(({ key }) => key);
  const maps = new Map<string, GridMap>();
  return (place) => {
    const sheet = findSheet(notebook.book, place.sheet);
    if (!sheet) return beforeAll;
    const map = maps.get(sheet.key) ?? gridMap(sheet, (table) => notebook.rowsOf(table));
    maps.set(sheet.key, map);
    const row = map.indexOf(place);
    const fields = map.rowAt(row)?.fields ?? [];
    return [order.indexOf(sheet.key), row, fields.includes('value') ? 0 : fields.indexOf(place.field)];
  };
}
