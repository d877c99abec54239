import type { RowIds, Table } from './schema/parts.ts';

/** Consecutive identities: the first one, and how many. */
export type IdRun = RowIds['runs'][number];

/**
 * The identities of a table's rows, which follow them wherever they go and are never given twice. A table that says
 * nothing has its rows numbered from 1 on.
 */
export function rowIdsOf({ ids, length = 0 }: Pick<Table, 'ids' | 'length'>): RowIds {
  return ids ?? { runs: length > 0 ? [{ first: 1, count: length }] : [], next: length + 1 };
}

/** The identity of a row (counted from 0); undefined beyond the last. */
export function idOfRow({ runs }: RowIds, row: number): number | undefined {
  let before = 0;
  for (const { first, count } of runs) {
    if (row >= before && row < before + count) return first + row - before;
    before += count;
  }
  return undefined;
}

/** The identity that a row has, or gets when its table grows by rows behind the last one. */
export function idOfRowOrNext(table: Pick<Table, 'ids' | 'length'>, row: number): number {
  const ids = rowIdsOf(table);
  return idOfRow(ids, row) ?? ids.next + row - (table.length ?? 0);
}

/** Where the row with an identity stands, counted from 0; undefined if there is none. */
export function rowWithId({ runs }: RowIds, id: number): number | undefined {
  let before = 0;
  for (const { first, count } of runs) {
    if (id >= first && id < first + count) return before + id - first;
    before += count;
  }
  return undefined;
}

/** How many rows have an identity. */
export function countOfIds({ runs }: RowIds): number {
  return runs.reduce((sum, { count }) => sum + count, 0);
}

/** Whether no identity stands twice, and none is one that is still to be given. */
export function areSound({ runs, next }: RowIds): boolean {
  const sorted = runs.toSorted((a, b) => a.first - b.first);
  return sorted.every(({ first, count }, i) => first + count <= (sorted[i + 1]?.first ?? next));
}

/**
 * The identities after `remove` rows from row `from` on have given way to `insert` others, which get `given` or else
 * identities never used before.
 */
export function spliceIds(
  ids: RowIds,
  from: number,
  remove: number,
  insert: number,
  given?: readonly IdRun[],
): RowIds {
  const fresh: readonly IdRun[] = given ?? (insert > 0 ? [{ first: ids.next, count: insert }] : []);
  const used = Math.max(ids.next, ...fresh.map(({ first, count }) => first + count));
  const runs = [
    ...cut(ids.runs, 0, from),
    ...fresh,
    ...cut(ids.runs, from + remove, Number.POSITIVE_INFINITY),
  ];
  return { runs: joined(runs), next: used };
}

/** The runs of rows `from` to before `to`. */
export function cut(runs: readonly IdRun[], from: number, to: number): readonly IdRun[] {
  const found: IdRun[] = [];
  let before = 0;
  for (const { first, count } of runs) {
    const start = Math.max(from, before);
    const end = Math.min(to, before + count);
    if (end > start) found.push({ first: first + start - before, count: end - start });
    before += count;
  }
  return found;
}

/** Runs that follow one another as one. */
function joined(runs: readonly IdRun[]): readonly IdRun[] {
  const out: IdRun[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last && last.first + last.count === run.first)
      out[out.length - 1] = { first: last.first, count: last.count + run.count };
    else out.push(run);
  }
  return out;
}
