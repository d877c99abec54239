import {
  type Book,
  idsOf,
  type Line,
  lineAt,
  type Part,
  type Place,
  partAt,
  rowOf,
  tableRowAt,
  takenAt,
  textAt,
  withPart,
  withText,
} from '../book.ts';
import { differences } from '../differences.ts';
import { isOnCells, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { changedTo, type Outcome, type State, unchanged } from '../state.ts';

/** What is selected: the range, else the chosen cell. */
export function selectedOf({ selected, place }: Seen): readonly Place[] {
  return selected.length > 1 ? selected : place ? [place] : [];
}

function byKey(
  name: string,
  weight: number,
  key: string,
  expect: (state: State, before: Seen, after: Seen) => readonly Outcome[],
): Kind<null> {
  return {
    name,
    weight: (seen) => (isOnCells(seen) ? weight : 0),
    draw: () => null,
    perform: async (hands) => {
      await hands.press(key);
      return true;
    },
    expect: (state, _args, before, after) => expect(state, before, after),
  };
}

const done = (state: State, book: Book): Outcome => ({
  ...changedTo(state, book),
  editor: { kind: 'closed' },
});

const clear = byKey('Delete', 1.2, 'Delete', (state, before) => {
  let { book } = state;
  for (const place of selectedOf(before)) {
    const takes = takenAt(book, place);
    const calculated = takes === 'formula' && tableRowAt(book, place) !== undefined;
    if (takes === undefined || takes === 'name' || calculated || (textAt(book, place) ?? '') === '') continue;
    book = withText(book, place, '');
  }
  return [done(state, book)];
});

/** The book without lines and parts that another has not. */
function without(book: Book, known: ReadonlySet<string>): Book {
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts
      .filter(({ id }) => known.has(`${sheet.key}/${id}`))
      .map((part) => ({
        ...part,
        ...(part.rows && { rows: part.rows.filter(({ id }) => known.has(`${sheet.key}/${id}`)) }),
      })),
  }));
  return { ...book, sheets };
}

/** Lines and parts of a book that another has not. */
function newOf(book: Book, known: ReadonlySet<string>): readonly (Line | Part)[] {
  return book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => [part, ...(part.rows ?? [])].filter(({ id }) => !known.has(`${key}/${id}`))),
  );
}

/** The page's book, where it is the model's with new lines that pass; else the model's, which shows what else changed. */
export function grown(state: State, after: Seen, passes: (fresh: readonly Line[]) => boolean): Outcome {
  const known = idsOf(state.book);
  const rest = without(after.book, known);
  const fresh = newOf(after.book, known).flatMap((one): readonly Line[] =>
    'rows' in one ? [] : [one as Line],
  );
  const sound = differences(state.book, rest, 1).length === 0 && passes(fresh);
  return sound ? done(state, after.book) : { ...done(state, state.book), past: [...state.past, state.book] };
}

/** A table with a row put in. */
function withRow(book: Book, place: Place, at: number, cellsOf: (column: Line) => string): Book {
  return withPart(book, place, (part) => ({
    ...part,
    length: (part.length ?? 0) + 1,
    columns: (part.columns ?? []).map((column) =>
      column.cells ? { ...column, cells: column.cells.toSpliced(at, 0, cellsOf(column)) } : column,
    ),
  }));
}

const insert = byKey('Control+Enter', 0.6, 'Control+Enter', (state, { place }, after) => {
  if (!place) return [unchanged(state)];
  const part = partAt(state.book, place);
  const row = tableRowAt(state.book, place);
  if (row !== undefined || place.item === 'head') {
    if (part?.length === undefined) return [unchanged(state)];
    return [
      done(
        state,
        withRow(state.book, place, row === undefined ? part.length : row + 1, () => ''),
      ),
    ];
  }
  const kind = lineAt(state.book, place)?.kind ?? 'given';
  const isBlank = ([line, ...more]: readonly Line[]): boolean =>
    more.length === 0 &&
    line !== undefined &&
    (line.formula ?? '') === '' &&
    ((line.entry ?? '') === '' || kind === 'choice');
  return [grown(state, after, isBlank)];
});

const remove = byKey('delete lines', 0.6, 'Control+Shift+Backspace', (state, before) => {
  const places = selectedOf(before);
  const items = new Set(places.map(({ part, item }) => `${part}/${item}`));
  const [first] = places;
  if (!first) return [unchanged(state)];
  const parts = new Set(places.map(({ part }) => part));
  let { book } = state;
  for (const id of parts)
    book = withPart(book, { sheet: first.sheet, part: id }, (part) => {
      const has = (item: string) => items.has(`${id}/${item}`);
      if (part.kind === 'prose' || (has('') && items.size === 1)) return undefined;
      if (part.rows)
        return part.rows.some((row) => has(row.id))
          ? { ...part, rows: part.rows.filter((row) => !has(row.id)) }
          : part;
      const gone = new Set(
        [...items].flatMap((item) =>
          item.startsWith(`${id}/r`) ? (rowOf(item.slice(id.length + 1)) ?? []) : [],
        ),
      );
      if (gone.size === 0 || part.length === undefined) return part;
      const columns = (part.columns ?? []).map((column) =>
        column.cells ? { ...column, cells: column.cells.filter((_, at) => !gone.has(at)) } : column,
      );
      return { ...part, length: part.length - gone.size, columns };
    });
  return [done(state, book)];
});

/** The book with the line, row or part of a place moved by one. */
function moved(book: Book, place: Place, by: 1 | -1): Book {
  const sheet = book.sheets.find(({ key }) => key === place.sheet);
  const part = partAt(book, place);
  if (!sheet || !part) return book;
  const row = rowOf(place.item);
  if (row !== undefined && part.columns) {
    const to = row + by;
    if (part.length === undefined || to < 0 || to >= part.length) return book;
    return withPart(book, place, (table) => ({
      ...table,
      columns: (table.columns ?? []).map((column) => ({
        ...column,
        ...(column.cells && { cells: swapped(column.cells, row, to) }),
      })),
    }));
  }
  const at = sheet.parts.indexOf(part);
  const lineIndex = part.rows?.findIndex(({ id }) => id === place.item) ?? -1;
  const line = part.rows?.[lineIndex];
  if (!line) {
    const to = at + by;
    if (place.item !== '' || to < 0 || to >= sheet.parts.length) return book;
    const parts = swapped(sheet.parts, at, to);
    return { ...book, sheets: book.sheets.map((one) => (one === sheet ? { ...one, parts } : one)) };
  }
  const to = lineIndex + by;
  if (to >= 0 && to < (part.rows?.length ?? 0))
    return withPart(book, place, (block) => ({ ...block, rows: swapped(block.rows ?? [], lineIndex, to) }));
  const others = by > 0 ? sheet.parts.slice(at + 1) : sheet.parts.slice(0, at).reverse();
  const next = others.find(({ kind }) => kind === 'rows');
  if (!next) return book;
  const rows = (block: Part): Part => ({
    ...block,
    rows: by > 0 ? [line, ...(block.rows ?? [])] : [...(block.rows ?? []), line],
  });
  const taken = withPart(book, place, (block) => ({
    ...block,
    rows: (block.rows ?? []).filter((one) => one !== line),
  }));
  return withPart(taken, { sheet: place.sheet, part: next.id }, rows);
}

function swapped<Item>(list: readonly Item[], from: number, to: number): readonly Item[] {
  const item = list[from];
  return item === undefined ? list : list.toSpliced(from, 1).toSpliced(to, 0, item);
}

const move = (key: string, by: 1 | -1): Kind<null> =>
  byKey(key, 0.4, key, (state, { place }) => [
    place ? done(state, moved(state.book, place, by)) : unchanged(state),
  ]);

const contents = ({ id: _id, name: _name, ...rest }: Line): object => rest;

const duplicate = byKey('duplicate', 0.4, 'Control+Shift+d', (state, { place }, after) => {
  if (!place) return [unchanged(state)];
  const row = rowOf(place.item);
  const part = partAt(state.book, place);
  if (row !== undefined && part?.columns) {
    if (part.length === undefined) return [grown(state, after, () => true)];
    return [
      done(
        state,
        withRow(state.book, place, row + 1, (column) => column.cells?.[row] ?? ''),
      ),
    ];
  }
  const line = part?.rows?.find(({ id }) => id === place.item);
  const isCopy = (fresh: readonly Line[]): boolean => {
    const [one, ...more] = fresh;
    if (!line) return true;
    return (
      more.length === 0 && one !== undefined && differences(contents(line), contents(one), 1).length === 0
    );
  };
  return [grown(state, after, isCopy)];
});

const fill = byKey('fill down', 0.5, 'Control+d', (state, before) => {
  const places = selectedOf(before);
  const lines = [...new Set(places.map(({ part, item }) => `${part}/${item}`))];
  const at = (line: string | undefined) => places.filter(({ part, item }) => `${part}/${item}` === line);
  let { book } = state;
  const first = at(lines[0]);
  for (const line of lines.slice(1))
    for (const [index, place] of at(line).entries()) {
      const source = first[index];
      if (!source) continue;
      const takes = takenAt(book, source);
      const calculated = takes === 'formula' && tableRowAt(book, place) !== undefined;
      if (takes === undefined || takes === 'name' || calculated || takenAt(book, place) !== takes) continue;
      book = withText(book, place, textAt(state.book, source) ?? '');
    }
  return [done(state, book)];
});

/** What adds, removes and moves lines. */
export const lineKinds = [
  clear,
  insert,
  remove,
  move('Alt+ArrowUp', -1),
  move('Alt+ArrowDown', 1),
  duplicate,
  fill,
].map(kindOf);
