import { cellsBetween } from '../cells.ts';
import { canonicalJson } from '../json/canonical.ts';
import { cut, type IdRun, rowIdsOf } from '../row-ids.ts';
import type { Column } from '../schema/columns.ts';
import type { Table } from '../schema/parts.ts';
import { hashOf } from './seen.ts';

/** Rows of a table that stand together: from row `from` (counted from 0) to before `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where rows stand now, in the order they are named; undefined if one of them is gone. */
export function spansOf(table: Table, rows: readonly IdRun[]): readonly Span[] | undefined {
  const { runs } = rowIdsOf(table);
  const spans: Span[] = [];
  for (const { first, count } of rows) {
    let next = first;
    while (next < first + count) {
      let before = 0;
      const run = runs.find((one) => {
        if (next >= one.first && next < one.first + one.count) return true;
        before += one.count;
        return false;
      });
      if (!run) return undefined;
      const length = Math.min(first + count, run.first + run.count) - next;
      const from = before + next - run.first;
      const last = spans.at(-1);
      if (last?.to === from) spans[spans.length - 1] = { from: last.from, to: from + length };
      else spans.push({ from, to: from + length });
      next += length;
    }
  }
  return spans;
}

/** The identities of the rows of a span. */
export function idsBetween(table: Table, from: number, to: number): readonly IdRun[] {
  return cut(rowIdsOf(table).runs, from, to);
}

/** A name for what stands in rows: in one given column, or in all that is given and stated there. */
export function contentOf(table: Table, spans: readonly Span[], column?: string): string {
  const shown = column === undefined ? table.columns : table.columns.filter(({ id }) => id === column);
  const rows = spans.flatMap(({ from, to }) => idsBetween(table, from, to));
  return hashOf(canonicalJson(shown.map((one) => [one.id, contentOfColumn(one, spans, rows)])));
}

function contentOfColumn(column: Column, spans: readonly Span[], rows: readonly IdRun[]) {
  if (column.kind === 'given') return spans.flatMap(({ from, to }) => cellsBetween(column.chunks, from, to));
  if (column.kind === 'series') return [];
  return (column.stated ?? []).filter(({ row }) =>
    rows.some(({ first, count }) => row >= first && row < first + count),
  );
}
