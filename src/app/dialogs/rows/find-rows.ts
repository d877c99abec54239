import type { Outcome } from '../../../diagnostics/index.ts';
import type { Table } from '../../../document/index.ts';
import { type Notebook, tryCells } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import {
  type Delimiter,
  type Destination,
  lineNumbers,
  type Mapping,
  namedMapping,
  readMapped,
  type TableText,
  type TextColumn,
  tableText,
  textColumns,
} from '../../../tables/index.ts';
import { onScreenMapping } from '../../editing/clipboard/on-screen-mapping.ts';

import { isSingleNumber } from '../../editing/clipboard/single-number.ts';
import type { Where } from '../../editing/clipboard/where.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { guessParting, type Parting } from './guess-parting.ts';
import { rowsPreview, type TakenAs } from './rows-preview.ts';
import type { Said } from './rows-questions.ts';
import type { RowsReading } from './rows-reading.ts';

/** What the person settled for one column of the text, which is asked anew once it is called otherwise. */
export interface Settled {
  readonly called: string;
  readonly to: Destination;
}

/** A text for a table, and what the person said of it; what is undefined is found out or asked. Plain data. */
export interface RowsRequest {
  readonly text: string;
  /** Whether how it is parted and headed is guessed first, as of a text that was pasted. */
  readonly guess: boolean;
  readonly delimiter: Delimiter | undefined;
  /** Whether its first row names the columns. */
  readonly headed: boolean;
  readonly said: Said;
  /** The lines to leave out, as they are typed: 1-3, 14. */
  readonly skipped: string;
  readonly settled: ReadonlyMap<number, Settled>;
  /** A place in the table that the rows are for, and where in it they go. */
  readonly place: CellPlace;
  readonly where: Where;
  /** The units that the page shows. */
  readonly view: UnitsView;
}

/** What was made of a text: its columns and where they go; the rows, or why there are none. Plain data. */
export interface FoundRows {
  readonly columns: readonly TextColumn[];
  readonly mapping: Mapping;
  readonly read: RowsReading;
  /** What the columns are taken as, by position, as far as the text can be read. */
  readonly taken: ReadonlyMap<number, TakenAs>;
  /** What parts the cells of a line; undefined where the text has no rows. */
  readonly delimiter: Delimiter | undefined;
  /** How the text is parted and headed, where that was to be guessed. */
  readonly guessed: Parting | undefined;
}

/** Reads texts for the tables of a notebook, one request after the other. */
export type RowsFinder = (request: RowsRequest) => FoundRows;

/** A finder of rows that does not part the same text twice in a row. */
export function openRowsFinder(notebook: Notebook): RowsFinder {
  let last: { readonly key: readonly unknown[]; readonly parted: Outcome<TableText> } | undefined;
  return (request) => {
    const table = tableAt(notebook, request.place);
    const { text, skipped } = request;
    const { registry } = notebook.model;
    const guessed = request.guess ? guessParting(text, table.columns, registry) : undefined;
    const whole = isSingleNumber(text) ? '\t' : undefined;
    const delimiter = guessed?.delimiter ?? request.delimiter ?? whole;
    const key = [text, delimiter, skipped, table];
    if (!last || key.some((one, at) => one !== last?.key[at])) {
      const options = { registry, skipped: new Set(lineNumbers(skipped)), ...(delimiter && { delimiter }) };
      last = { key, parted: tableText(text, table.columns, options) };
    }
    const headed = guessed?.headed ?? request.headed;
    return { ...findRows(notebook, table, last.parted, { ...request, headed }), guessed };
  };
}

/** What a text gives for a table, as the page shows the table's units: by its headers, its place and what was answered. */
function findRows(
  notebook: Notebook,
  table: Table,
  text: Outcome<TableText>,
  request: RowsRequest,
): Omit<FoundRows, 'guessed'> {
  const { headed, said, settled, place, view, where } = request;
  if (!text.ok) {
    const mapping = { headed, goes: new Map() };
    return {
      columns: [],
      mapping,
      read: { ...text, counts: undefined },
      taken: new Map(),
      delimiter: undefined,
    };
  }
  const columns = textColumns(text.value, headed);
  const goes = new Map(
    headed ? namedMapping(text.value, table.columns).goes : byPlace(notebook, table, request, columns),
  );
  for (const column of columns) {
    const answer = settled.get(column.position);
    if (answer?.called === callOf(column)) goes.set(column.position, answer.to);
  }
  const { sheet } = place;
  const mapping = { headed, goes };
  const meant = onScreenMapping(notebook, { sheet, table, view }, mapping);
  const id = `${sheet}.${table.name}`;
  const { account, ...read } = readMapped(text.value, table.columns, meant, {
    check: tryCells(notebook, id),
    inPlace: where.kind === 'from',
    ...said,
  });
  return {
    columns,
    mapping,
    read: { ...read, counts: account?.counts },
    taken: read.ok ? rowsPreview(notebook, id, view, columns, mapping, read.value) : new Map(),
    delimiter: text.value.delimiter,
  };
}

/** Cells that were pasted without headings, one column beside the other from where they were pasted on. */
function byPlace(
  notebook: Notebook,
  table: Table,
  { place, where }: RowsRequest,
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

function tableAt({ book }: Notebook, place: CellPlace): Table {
  const part = findPlace(book, place)?.part;
  if (part?.kind !== 'table') throw new Error('rows are for a table, at a place in one');
  return part;
}

/** What a column of a text is known by when lines of it are left out: its header; one without is known by its place. */
export function callOf({ header }: TextColumn): string {
  return header;
}
