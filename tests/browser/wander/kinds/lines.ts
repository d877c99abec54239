import {
  type Book,
  hasMethods,
  type Line,
  type Part,
  type Place,
  partAt,
  rowOf,
  tableRowAt,
  takenAt,
  textAt,
  withFormula,
  withPart,
  withRows,
  withText,
} from '../book.ts';
import { done, grown, selectedOf, withRow } from '../changed-book.ts';
import { differences } from '../differences.ts';
import { isOnCells, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { type Outcome, type State, unchanged, unitOf } from '../state.ts';
import { isStatedAt, statableAt, statedFrom, statementAt, withComputed, withStatement } from '../stated.ts';
import { isTaken } from '../units-beside.ts';

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

/** What becomes of a formula among several methods is known where it is typed, for then the page says in which one it is. */
function unlessMethods(kind: Kind<null>): Kind<null> {
  const isMet = (seen: Seen): boolean => selectedOf(seen).some((place) => hasMethods(seen.book, place));
  return { ...kind, weight: (seen, state) => (isMet(seen) ? 0 : kind.weight(seen, state)) };
}

const clear = byKey('Delete', 1.2, 'Delete', (state, before) => {
  let { book } = state;
  for (const place of selectedOf(before)) {
    const takes = takenAt(book, place);
    if (isStatedAt(book, place)) {
      book = withComputed(book, place);
      continue;
    }
    const calculated = takes === 'formula' && tableRowAt(book, place) !== undefined;
    if (takes === undefined || takes === 'name' || calculated || (textAt(book, place) ?? '') === '') continue;
    book = withText(book, place, '');
  }
  return [done(state, book)];
});

const insert = byKey('Control+Enter', 0.6, 'Control+Enter', (state, { place }, after) => {
  if (!place) return [unchanged(state)];
  const part = partAt(state.book, place);
  const row = tableRowAt(state.book, place);
  if (row !== undefined || place.item === 'head') {
    if (part?.length === undefined) return [unchanged(state)];
    return [done(state, withRow(state.book, place, row === undefined ? part.length : row + 1))];
  }
  const isBlank = ([line, ...more]: readonly Line[]): boolean =>
    more.length === 0 && line !== undefined && (line.formula ?? '') === '' && (line.entry ?? '') === '';
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
        withRows(column, (cells) => cells.filter((_, at) => !gone.has(at))),
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
      columns: (table.columns ?? []).map((column) => withRows(column, (cells) => swapped(cells, row, to))),
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

/** The lines of one block that are selected together: the block, and where its first and last of them stand. */
function linesTogether(
  seen: Seen,
): { readonly part: Place; readonly first: number; readonly last: number } | undefined {
  const places = selectedOf(seen);
  const [part] = places;
  const rows = (part && partAt(seen.book, part)?.rows) ?? [];
  const at = places.map(({ item }) => rows.findIndex(({ id }) => id === item));
  const isOne = part !== undefined && places.every((place) => place.part === part.part) && !at.includes(-1);
  return isOne ? { part, first: Math.min(...at), last: Math.max(...at) } : undefined;
}

/** The book with several lines of a block moved by one within it; undefined where they reach its end. */
function movedTogether(seen: Seen, book: Book, by: 1 | -1): Book | undefined {
  const together = linesTogether(seen);
  if (!together) return undefined;
  const { part, first, last } = together;
  const [from, to] = by > 0 ? [last + 1, first] : [first - 1, last];
  if (from < 0 || from >= (partAt(book, part)?.rows?.length ?? 0)) return undefined;
  return withPart(book, part, (block) => ({ ...block, rows: swapped(block.rows ?? [], from, to) }));
}

const move = (key: string, by: 1 | -1): Kind<null> => {
  const own = byKey(key, 0.4, key, (state, before) => {
    const { place } = before;
    if (!place) return [unchanged(state)];
    const several = new Set(selectedOf(before).map(({ item }) => item)).size > 1;
    const together = several ? movedTogether(before, state.book, by) : undefined;
    return [done(state, together ?? moved(state.book, place, by))];
  });
  // What becomes of lines of two blocks, or at the end of one, is not told beforehand.
  const isClear = (seen: Seen): boolean =>
    new Set(selectedOf(seen).map(({ item }) => item)).size < 2 ||
    movedTogether(seen, seen.book, by) !== undefined;
  return { ...own, weight: (seen, state) => (isClear(seen) ? own.weight(seen, state) : 0) };
};

const contents = ({ id: _id, name: _name, ...rest }: Line): object => rest;

const duplicate = byKey('duplicate', 0.4, 'Control+Shift+d', (state, { place }, after) => {
  if (!place) return [unchanged(state)];
  const row = rowOf(place.item);
  const part = partAt(state.book, place);
  if (row !== undefined && part?.columns) {
    if (part.length === undefined) return [grown(state, after, () => true)];
    return [done(state, withRow(state.book, place, row + 1, row))];
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

/** The book in which a statement of one place stands at another; on what is entered its value alone. */
export function statedAgain(book: Book, from: Place, to: Place, after: Seen): Book {
  const statement = statementAt(book, from);
  const kind = statableAt(book, to);
  if (!statement || kind === 'check' || (!kind && takenAt(book, to) !== 'entry')) return book;
  const written = textAt(after.book, to) ?? '';
  const isSound = isTaken(written, statement.entry, unitOf(book, from) ?? '', unitOf(book, to));
  const entry = isSound ? written : statement.entry;
  if (!kind) return withText(book, to, entry);
  const again = statedFrom(statementAt(book, to), { ...statement, entry }, statementAt(after.book, to));
  return withStatement(book, to, again);
}

const fill = byKey('fill down', 0.5, 'Control+d', (state, before, after) => {
  const places = selectedOf(before);
  const lines = [...new Set(places.map(({ part, item }) => `${part}/${item}`))];
  const at = (line: string | undefined) => places.filter(({ part, item }) => `${part}/${item}` === line);
  let { book } = state;
  const first = at(lines[0]);
  for (const line of lines.slice(1))
    for (const [index, place] of at(line).entries()) {
      const source = first[index];
      if (!source) continue;
      if (statementAt(state.book, source)) {
        book = statedAgain(book, source, place, after);
        continue;
      }
      const takes = takenAt(book, source);
      const calculated = takes === 'formula' && tableRowAt(book, place) !== undefined;
      if (takes === undefined || takes === 'name' || calculated) continue;
      const text = textAt(state.book, source) ?? '';
      // A formula goes beside what is stated, which stays.
      if (takes === 'formula' && isStatedAt(book, place)) book = withFormula(book, place, text);
      else if (takenAt(book, place) === takes) book = withText(book, place, text);
    }
  return [done(state, book)];
});

/** What adds, removes and moves lines. */
export const lineKinds = [
  unlessMethods(clear),
  insert,
  remove,
  move('Alt+ArrowUp', -1),
  move('Alt+ArrowDown', 1),
  duplicate,
  unlessMethods(fill),
].map(kindOf);
