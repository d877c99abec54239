import type { Basis, Edit, Review } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { type BookState, bookState, isSame, type Rows, type Standing } from './book-state.ts';
import type { Ground } from './grounds.ts';

/** What one line, column, cell or table was and is; absent where it was not there or is gone. */
export interface Change {
  /** The id of a line, column or table, and of a cell the identity of its row. */
  readonly item: string;
  readonly row?: number;
  readonly was?: string;
  readonly is?: string;
}

type Lines = ReadonlyMap<string, Rows>;

/** How the book stood at a basis of its review; undefined where a basis on the way is missing. */
export function stateAt({ bases }: Review, id: string): BookState | undefined {
  const byId = new Map(bases.map((basis) => [basis.id, basis]));
  const chain: Basis[] = [];
  for (let at: string | undefined = id; at !== undefined; at = chain.at(-1)?.since) {
    const basis = byId.get(at);
    if (!basis || chain.includes(basis)) return undefined;
    chain.push(basis);
  }
  let units = '';
  const lines = new Map<string, Map<number, Standing>>();
  for (const basis of chain.toReversed()) {
    units = basis.units ?? units;
    for (const { item, row = 0, is, si } of basis.lines) {
      const of = lines.get(item) ?? new Map<number, Standing>();
      lines.set(item, of);
      if (is === undefined) of.delete(row);
      else of.set(row, { is, ...(si !== undefined && { si }) });
    }
  }
  return { units, lines };
}

/** A basis of how the book stands now: the newest one of its review where nothing has changed since, else a new one to be put in. */
export function basisNow(notebook: Notebook): { readonly id: string; readonly edit?: Edit } {
  const { review } = notebook.book;
  const now = bookState(notebook);
  const newest = review.bases.at(-1);
  const before = newest && stateAt(review, newest.id);
  if (newest && before && areAlike(before, now)) return { id: newest.id };
  const id = freshId(review.bases, 'b');
  const basis: Basis = {
    id,
    ...(newest && before && { since: newest.id }),
    ...(now.units !== before?.units && { units: now.units }),
    lines: differences(before?.lines ?? new Map(), now.lines).map(({ item, row, is }) => ({
      item,
      ...(row !== 0 && { row }),
      ...is,
    })),
  };
  const at = ['review', 'bases'];
  return {
    id,
    edit: {
      label: 'note how the book stands',
      patches: [{ kind: 'insert', at, index: review.bases.length, value: basis }],
    },
  };
}

/** An id that none of a list has: the prefix with the next number. */
export function freshId(list: readonly { readonly id: string }[], prefix: string): string {
  const numbers = list.map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0));
  return `${prefix}${Math.max(0, ...numbers) + 1}`;
}

interface Difference {
  readonly item: string;
  readonly row: number;
  readonly was: Standing | undefined;
  readonly is: Standing | undefined;
}

/** What differs between two states of the lines of a book. */
function differences(before: Lines, now: Lines): readonly Difference[] {
  const found: Difference[] = [];
  for (const item of new Set([...before.keys(), ...now.keys()])) {
    const [was, is] = [before.get(item), now.get(item)];
    for (const row of new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])]))
      if (!isSame(was?.get(row), is?.get(row)))
        found.push({ item, row, was: was?.get(row), is: is?.get(row) });
  }
  return found;
}

function areAlike(before: BookState, now: BookState): boolean {
  return before.units === now.units && differences(before.lines, now.lines).length === 0;
}

/** What has changed since a basis, to be asked for one value after the other. */
export interface Since {
  readonly isEmpty: boolean;
  /** That the book’s own units, its currency or its datums have changed, which every value can rest on. */
  readonly units: readonly Change[];
  /** What has changed of one ground. */
  readonly of: (ground: Ground) => readonly Change[];
  /** All that has changed, in the order of the book then and what is new behind it. */
  readonly all: readonly Change[];
}

/** What differs between how a book stood at a basis and how it stands now. */
export function changesSince(before: BookState, now: BookState): Since {
  const all = differences(before.lines, now.lines);
  const units = before.units === now.units ? [] : [{ item: '', was: before.units, is: now.units }];
  const byItem = new Map<string, Difference[]>();
  for (const one of all) {
    const known = byItem.get(one.item);
    if (known) known.push(one);
    else byItem.set(one.item, [one]);
  }
  return {
    isEmpty: all.length === 0 && units.length === 0,
    units,
    of: (ground) =>
      (byItem.get(ground.item) ?? [])
        .filter(({ row }) => ground.rows === 'all' || row === 0 || row === ground.rows)
        .map(changeOf),
    all: [...all.map(changeOf), ...units],
  };
}

function changeOf({ item, row, was, is }: Difference): Change {
  return {
    item,
    ...(row !== 0 && { row }),
    ...(was && { was: was.is }),
    ...(is && { is: is.is }),
  };
}
