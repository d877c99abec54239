import { type Problem, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import { areSound, countOfIds } from '../row-ids.ts';
import { CHUNK_CELLS, type GivenColumn } from '../schema/columns.ts';
import type { Table } from '../schema/parts.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * The rules of a table: it has a length, or one series column and then neither a length nor given columns; each
 * given column has a cell for every row, in chunks of 1024 of which only the last is shorter.
 */
export function tableProblems(table: Table, at: Path): Problem[] {
  const series = table.columns.filter((column) => column.kind === 'series').length;
  if (series > 0) return seriesProblems(table, series, at);
  const { length } = table;
  if (length === undefined) {
    return [problem('book-table-length', NOWHERE, { path: pathText(at), table: table.name })];
  }
  return [
    ...idProblems(table, length, at),
    ...table.columns.flatMap((column, i) =>
      column.kind === 'given' ? columnProblems(column, length, [...at, 'columns', i]) : [],
    ),
  ];
}

/** Each row has one identity, and no other row has it or will get it. */
function idProblems({ ids, name }: Table, length: number, at: Path): Problem[] {
  if (!ids || (countOfIds(ids) === length && areSound(ids))) return [];
  const facts = { path: pathText([...at, 'ids']), table: name, ids: countOfIds(ids), length };
  return [problem('book-row-ids', NOWHERE, facts)];
}

function seriesProblems(table: Table, series: number, at: Path): Problem[] {
  const others = [
    series > 1 && 'another series column',
    table.length !== undefined && 'a length',
    table.ids !== undefined && 'identities of rows',
    table.columns.some((column) => column.kind === 'calc' && column.stated) && 'a stated cell',
    table.columns.some((column) => column.kind === 'given') && 'a given column',
  ].filter((what) => what !== false);
  return others.map((what) =>
    problem('book-table-series', NOWHERE, { path: pathText(at), table: table.name, what }),
  );
}

function columnProblems(column: GivenColumn, length: number, at: Path): Problem[] {
  const last = column.chunks.length - 1;
  let cells = 0;
  for (const [i, chunk] of column.chunks.entries()) {
    cells += chunk.length;
    if (i < last && chunk.length !== CHUNK_CELLS) {
      const path = pathText([...at, 'chunks', i]);
      return [problem('book-chunk-length', NOWHERE, { path, cells: chunk.length, wanted: CHUNK_CELLS })];
    }
  }
  if (cells === length) return [];
  return [problem('book-column-length', NOWHERE, { path: pathText(at), column: column.name, cells, length })];
}
