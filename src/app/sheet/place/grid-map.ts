import type { Part, Row, Sheet } from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';

/** One row of the grid that a sheet is: where it stands and the fields it can be entered at, left to right. */
export interface GridRow {
  readonly part: string;
  readonly item: string;
  readonly fields: readonly string[];
}

/** All rows of a sheet in order; the rows of a long table are counted, never listed. */
export interface GridMap {
  readonly sheet: string;
  readonly count: number;
  readonly rowAt: (index: number) => GridRow | undefined;
  /** The index of the row a place is on; -1 if the sheet has no such row. */
  readonly indexOf: (place: { readonly part: string; readonly item: string }) => number;
}

/** Fields of a line that a person can enter. */
export const lineFields: Readonly<Record<Row['kind'], readonly string[]>> = {
  given: ['reference', 'name', 'label', 'value', 'unit'],
  choice: ['reference', 'name', 'label', 'value'],
  calc: ['reference', 'name', 'label', 'value', 'unit'],
  check: ['reference', 'name', 'label', 'value'],
};

type Segment =
  | { readonly kind: 'row'; readonly start: number; readonly row: GridRow }
  | {
      readonly kind: 'table rows';
      readonly start: number;
      readonly count: number;
      readonly part: string;
      readonly fields: readonly string[];
    };

/**
 * The rows of a sheet. `rowsOf` tells how many rows a table has; `undefined` while that is not known. Blocks in `titled`
 * have the row of their title though it is blank.
 */
export function gridMap(
  sheet: Sheet,
  rowsOf: (table: string) => number | undefined,
  titled: ReadonlySet<string> = new Set(),
): GridMap {
  const segments: Segment[] = [];
  const starts = new Map<string, number>();
  let count = 0;
  const add = (part: string, item: string, fields: readonly string[]): void => {
    starts.set(`${part}/${item}`, count);
    segments.push({ kind: 'row', start: count, row: { part, item, fields } });
    count += 1;
  };
  const addTableRows = (part: string, rows: number, fields: readonly string[]): void => {
    starts.set(`${part}/rows`, count);
    segments.push({ kind: 'table rows', start: count, count: rows, part, fields });
    count += rows;
  };
  for (const part of sheet.parts) addPart(part);

  function addPart(part: Part): void {
    if (part.kind === 'prose') add(part.id, '', ['text']);
    else if (part.kind === 'figure' || part.kind === 'chart') add(part.id, '', ['title']);
    else if (part.kind === 'rows') {
      if (hasTitle(part.title) || titled.has(part.id) || part.rows.length === 0) add(part.id, '', ['title']);
      for (const row of part.rows) add(part.id, row.id, lineFields[row.kind]);
    } else {
      const columns = part.columns.map(({ id }) => id);
      add(part.id, '', ['title']);
      add(part.id, 'head', columns);
      addTableRows(part.id, rowsOf(`${sheet.key}.${part.name}`) ?? 0, columns);
      for (const column of part.columns) {
        if (column.kind !== 'given') add(part.id, column.id, lineFields.calc);
      }
    }
  }

  return {
    sheet: sheet.key,
    count,
    rowAt: (index) => {
      const segment = segmentAt(segments, index);
      if (!segment) return undefined;
      if (segment.kind === 'row') return segment.row;
      return { part: segment.part, item: `r${index - segment.start}`, fields: segment.fields };
    },
    indexOf: ({ part, item }) => {
      const start = starts.get(`${part}/${item}`);
      if (start !== undefined) return start;
      const first = starts.get(`${part}/rows`);
      const row = tableRow(item);
      return first === undefined || row === undefined ? -1 : first + row;
    },
  };
}

/** Whether a block or table shows a title. */
export function hasTitle(title: string | undefined): boolean {
  return title !== undefined && title !== '';
}

/** The index of a table's row from its item, `r0`, `r1`…; undefined for any other item. */
export function tableRow(item: string): number | undefined {
  const found = /^r(\d+)$/.exec(item);
  return found ? Number(found[1]) : undefined;
}

/** The place of a field of a row; the first field if it has no such one. */
export function placeAt(map: GridMap, index: number, field: string): CellPlace | undefined {
  const row = map.rowAt(index);
  const at = row && (row.fields.includes(field) ? field : nearestField(row));
  if (!row || at === undefined) return undefined;
  return { sheet: map.sheet, part: row.part, item: row.item, field: at };
}

/** Where the person lands in a row that lacks the field they come from: on its value. */
function nearestField(row: GridRow): string | undefined {
  return row.fields.includes('value') ? 'value' : row.fields[0];
}

function segmentAt(segments: readonly Segment[], index: number): Segment | undefined {
  if (index < 0) return undefined;
  let low = 0;
  let high = segments.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((segments[middle]?.start ?? 0) <= index) low = middle;
    else high = middle - 1;
  }
  // Tables without rows leave empty segments behind.
  const found = segments[low];
  if (!found) return undefined;
  const size = found.kind === 'row' ? 1 : found.count;
  return index < found.start + size ? found : undefined;
}
