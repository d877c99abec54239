import type { Outcome } from '../../diagnostics/index.ts';
import type { Table } from '../../document/index.ts';
import { tryCells } from '../../notebook/index.ts';
import {
  type Destination,
  type Mapping,
  namedMapping,
  readMapped,
  type TableReading,
  type TableText,
  type TextColumn,
  textColumns,
} from '../../tables/index.ts';
import { findPlace } from '../editing/find-place.ts';
import { onScreenMapping } from '../editing/on-screen-mapping.ts';
import type { Where } from '../editing/put-rows.ts';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import type { Said } from './rows-questions.ts';

/** What the person settled for one column of the text, which is asked anew once it is called otherwise. */
export interface Settled {
  readonly called: string;
  readonly to: Destination;
}

/** What the person said of a text; what is undefined is found out or asked. */
export interface RowsAnswers {
  /** Whether its first row names the columns. */
  readonly headed: boolean;
  readonly said: Said;
  readonly settled: ReadonlyMap<number, Settled>;
}

/** The table that rows are for, and where in it. */
export interface RowsTarget {
  readonly place: CellPlace;
  readonly table: Table;
  readonly where: Where;
}

/** What was made of a text: its columns and where they go; the rows, or why there are none. */
export interface FoundRows {
  readonly columns: readonly TextColumn[];
  readonly mapping: Mapping;
  readonly read: TableReading;
}

/** What a text gives for a table, as the page shows the table's units: by its headers, its place and what was answered. */
export function findRows(
  session: Session,
  target: RowsTarget,
  text: Outcome<TableText>,
  { headed, said, settled }: RowsAnswers,
): FoundRows {
  if (!text.ok)
    return { columns: [], mapping: { headed, goes: new Map() }, read: { ...text, account: undefined } };
  const { table } = target;
  const columns = textColumns(text.value, headed);
  const goes = new Map(
    headed ? namedMapping(text.value, table.columns).goes : byPlace(session, target, columns),
  );
  for (const column of columns) {
    const answer = settled.get(column.position);
    if (answer?.called === callOf(column)) goes.set(column.position, answer.to);
  }
  const { sheet } = target.place;
  const mapping = { headed, goes };
  const meant = onScreenMapping(session.notebook, { sheet, table, view: session.units }, mapping);
  const read = readMapped(text.value, table.columns, meant, {
    check: tryCells(session.notebook, `${sheet}.${table.name}`),
    ...said,
  });
  return { columns, mapping, read };
}

/** Cells that were pasted without headings, one column beside the other from where they were pasted on. */
function byPlace(
  { notebook }: Session,
  { place, table, where }: RowsTarget,
  columns: readonly TextColumn[],
): readonly (readonly [number, Destination])[] {
  const found = findPlace(notebook.book, place);
  if (where.kind !== 'from' || (found?.kind !== 'cell' && found?.kind !== 'column')) return [];
  const first = table.columns.indexOf(found.column);
  return columns.flatMap(({ position }) => {
    const column = table.columns[first + position];
    return column?.kind === 'given'
      ? [[position, { kind: 'column', name: column.name, unit: '' }] as const]
      : [];
  });
}

/** What a column of a text is known by when the text changes: its header, or else its first value. */
export function callOf({ header, first }: TextColumn): string {
  return header === '' ? (first?.text ?? '') : header;
}
