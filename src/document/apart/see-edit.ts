import { type Outcome, succeed } from '../../diagnostics/index.ts';
import { applyPatch } from '../edits/apply-edit.ts';
import type { Edit, Patch } from '../edits/patch.ts';
import { identityIn } from '../edits/places.ts';
import type { Path } from '../json/path.ts';
import { cut, type IdRun, idOfRow, rowIdsOf } from '../row-ids.ts';
import type { Book } from '../schema/book.ts';
import type { Table } from '../schema/parts.ts';
import { contentOf, idsBetween } from './rows-seen.ts';
import { type SeenEdit, type SeenPatch, type Sight, sightOf, valueAt } from './seen.ts';

/** Gives so many consecutive identities that no row of any copy of the book has or had: the first of them. */
export type FreshIds = (count: number) => number;

/**
 * An edit of `book` with what its author sees of all it changes, so that it can be applied to a copy that others have
 * changed since. Rows put in get identities from `fresh`, which are theirs in every copy.
 */
export function seeEdit(book: Book, edit: Edit, fresh: FreshIds): Outcome<SeenEdit> {
  const patches: SeenPatch[] = [];
  let now = book;
  for (const patch of edit.patches) {
    const seen = seePatch(now, patch, fresh);
    const step = applyPatch(now, seen.patch);
    if (!step.ok) return step;
    patches.push(seen);
    now = step.value.book;
  }
  return succeed({ label: edit.label, patches });
}

function seePatch(book: Book, patch: Patch, fresh: FreshIds): SeenPatch {
  const saw = sightsOf(patch).map((at) => sightOf(book, at));
  switch (patch.kind) {
    case 'set':
    case 'remove':
      return { patch, saw };
    case 'insert':
      return { patch, saw, front: frontOf(book, patch.at, patch.index) };
    case 'move':
      return { patch, saw, front: frontOf(book, patch.at.slice(0, -1), patch.to, patch.at.at(-1)) };
    case 'cells': {
      const table = valueAt(book, patch.at.slice(0, -2)) as Table | undefined;
      if (!table) return { patch, saw };
      const span = { from: patch.from, to: patch.from + patch.values.length };
      const rows = idsBetween(table, span.from, span.to);
      return { patch, saw, rows, stood: contentOf(table, [span], String(patch.at.at(-1))) };
    }
    case 'splice':
      return seeSplice(book, patch, saw, fresh);
  }
}

function seeSplice(
  book: Book,
  patch: Extract<Patch, { kind: 'splice' }>,
  saw: readonly Sight[],
  fresh: FreshIds,
): SeenPatch {
  const table = valueAt(book, patch.at) as Table | undefined;
  if (!table) return { patch, saw };
  const { back, ...plain } = patch;
  const { from, remove, insert } = patch;
  // What takes another edit back says all identities after it; those of its own rows are enough.
  const known: readonly IdRun[] | undefined =
    plain.ids ??
    (back ? cut(back.runs, from, from + insert) : back === null ? numbered(from, insert) : undefined);
  const ids = known ?? (insert > 0 ? [{ first: fresh(insert), count: insert }] : undefined);
  const span = { from, to: from + remove };
  return {
    patch: { ...plain, ...(ids && { ids }) },
    saw,
    rows: idsBetween(table, span.from, span.to),
    behind: from === 0 ? 0 : (idOfRow(rowIdsOf(table), from - 1) ?? 0),
    stood: contentOf(table, [span]),
  };
}

/** The identities of rows of a table that says none. */
function numbered(from: number, count: number): readonly IdRun[] {
  return count > 0 ? [{ first: from + 1, count }] : [];
}

/** The item in front of position `index` of a list, not counting `without`. */
function frontOf(book: Book, list: Path, index: number, without?: string | number): string | null {
  const items = valueAt(book, list);
  const identity = identityIn(list.at(-1));
  if (!Array.isArray(items) || identity === undefined) return null;
  const names = items.map((item: Readonly<Record<string, string>>) => item[identity] ?? '');
  return names.filter((name) => name !== without)[index - 1] ?? null;
}

/** The fields of a line or column in which its value is said, and which say how it is read. */
const VALUE_FIELDS = [
  'entry',
  'unit',
  'stated',
  'range',
  'type',
  'default',
  'options',
  'from',
  'formula',
  'applies',
];

/** What says how entries are read wherever they stand. */
const TERMS: readonly Path[] = [
  ['settings', 'units'],
  ['settings', 'currency'],
];

/** The places that the author of a patch has to have seen as they are. */
function sightsOf(patch: Patch): readonly Path[] {
  const { at } = patch;
  const [top, , , , items, item, field] = at;
  if (patch.kind === 'move') return [];
  if (patch.kind === 'insert') return at.at(-1) === 'columns' ? [...TERMS, ...rowsOf(at.slice(0, 4))] : TERMS;
  if (patch.kind === 'splice') {
    const columns = Object.keys(patch.cells).map((id) => [...at, 'columns', id]);
    return [
      ...TERMS,
      ...columns.flatMap((column) => [
        [...column, 'unit'],
        [...column, 'type'],
      ]),
    ];
  }
  if (patch.kind === 'cells')
    return [...TERMS, ...['name', 'unit', 'type', 'default'].map((name) => [...at, name])];
  if (patch.kind === 'remove') return items === 'columns' ? [at, ...rowsOf(at.slice(0, 4))] : [at];
  // Whoever says what a unit is says it for all that is written in it.
  if (top === 'settings') return [at, ['sheets']];
  if ((items !== 'rows' && items !== 'columns') || item === undefined || field === undefined) return [at];
  const whole = at.slice(0, 6);
  if (!VALUE_FIELDS.includes(String(field)) && field !== 'chunks') return [at, [...whole, 'name']];
  return [
    at,
    ...TERMS,
    ...['name', ...VALUE_FIELDS].map((name) => [...whole, name]),
    ...(items === 'columns' ? [[...whole, 'chunks'], ...rowsOf(at.slice(0, 4))] : []),
  ];
}

/** Which rows a table has. */
function rowsOf(table: Path): readonly Path[] {
  return [
    [...table, 'length'],
    [...table, 'ids'],
  ];
}
