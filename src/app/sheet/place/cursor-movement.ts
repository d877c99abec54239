import type { CellPlace } from '../../view-model/place.ts';
import { type GridMap, type GridRow, placeAt } from './grid-map.ts';

/** A move of the active cell. */
export type CursorMove =
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'row start'
  | 'row end'
  | 'first'
  | 'last'
  | 'page up'
  | 'page down'
  | 'next'
  | 'previous';

/**
 * Where a motion leads. `wanted` is the field the person came down in, which short rows between do not make them
 * lose; `page` is how many rows a page has. Stays where it is at the edges. Behind the last cell of a row Tab goes to
 * the next one that `fill` knows a field of, so that what is typed on never replaces a source, a title or a formula.
 */
export function moveCursor(
  map: GridMap,
  place: CellPlace,
  motion: CursorMove,
  wanted: string,
  page: number,
  fill: (row: GridRow) => string | undefined = ({ fields }) => fields[0],
): CellPlace | undefined {
  const index = map.indexOf(place);
  const row = map.rowAt(index);
  if (!row) return placeAt(map, 0, wanted);
  const column = row.fields.indexOf(place.field);
  const within = (to: number): CellPlace | undefined => {
    const field = row.fields[Math.min(Math.max(to, 0), row.fields.length - 1)];
    return field === undefined ? undefined : { ...place, field };
  };
  const vertical = (to: number): CellPlace | undefined =>
    placeAt(map, Math.min(Math.max(to, 0), map.count - 1), wanted);
  switch (motion) {
    case 'up':
      return vertical(index - 1);
    case 'down':
      return vertical(index + 1);
    case 'page up':
      return vertical(index - page);
    case 'page down':
      return vertical(index + page);
    case 'left':
      return within(column - 1);
    case 'right':
      return within(column + 1);
    case 'row start':
      return within(0);
    case 'row end':
      return within(row.fields.length - 1);
    case 'first':
      return endOf(map, 0, 'start');
    case 'last':
      return endOf(map, map.count - 1, 'end');
    case 'next':
      return column + 1 < row.fields.length ? within(column + 1) : nextToFill(map, index + 1, fill);
    case 'previous':
      return column > 0 ? within(column - 1) : endOf(map, index - 1, 'end');
  }
}

function endOf(map: GridMap, index: number, end: 'start' | 'end'): CellPlace | undefined {
  const row = map.rowAt(index);
  const field = row?.fields.at(end === 'start' ? 0 : -1);
  return row && field !== undefined ? { sheet: map.sheet, part: row.part, item: row.item, field } : undefined;
}

function nextToFill(
  map: GridMap,
  from: number,
  fill: (row: GridRow) => string | undefined,
): CellPlace | undefined {
  for (let index = from; index < map.count; index += 1) {
    const row = map.rowAt(index);
    const field = row && fill(row);
    if (row && field !== undefined) return { sheet: map.sheet, part: row.part, item: row.item, field };
  }
  return undefined;
}
