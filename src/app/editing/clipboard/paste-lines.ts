import type { Book, Calc, Edit, Row } from '../../../document/index.ts';
import {
  applyEdit,
  type Fresh,
  findSheet,
  freshFor,
  insertPart,
  joinEdits,
  removeRow,
} from '../../../document/index.ts';
import { renameInFormula } from '../../../language/index.ts';
import { namesOf, type Respell, resolveName, respellLine, usesInPart } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { type Change, insertRows } from '../lines/line-edits.ts';
import { newBlock } from '../lines/new-items.ts';

/** Where lines go: below a place of a sheet, or at its end if there is none. */
export interface LinesGo {
  readonly sheet: string;
  readonly place: CellPlace | undefined;
}

const counted = (verb: string, count: number): string =>
  count === 1 ? `${verb} a line` : `${verb} ${count} lines`;

/** Where copied lines stood: their sheet, and the book if it is this one. */
export interface LinesFrom {
  readonly sheet: string;
  readonly book: Book | undefined;
}

/** A change by lines that were pasted, and what the person is to know of their formulas. */
export interface PastedLines extends Change {
  readonly remark?: string;
}

/**
 * Puts copies of lines below a place, under names of their own where theirs are taken. What the lines say of one another
 * they say of the copies; what else they say of the sheet they stood on is spelt with its key on another one. Names that
 * nothing of this book is known to stand for are told.
 */
export function pasteCopies(
  book: Book,
  { sheet, place }: LinesGo,
  lines: readonly Row[],
  from: LinesFrom | undefined,
): PastedLines | undefined {
  const target = findSheet(book, sheet);
  if (!target) return undefined;
  const fresh = freshFor(book, target);
  const copies = lines.map((line) => ({ ...line, id: fresh.id('r'), name: fresh.name(line.name) }));
  const renamed = new Map(lines.map(({ name }, at) => [name, copies[at]?.name ?? name]));
  const names = from?.book && namesOf(from.book);
  const adrift = new Set<string>();
  const respell = (written: string): string | undefined => {
    const own = from !== undefined && written.startsWith(`${from.sheet}.`);
    const brought = renamed.get(own ? written.slice(from.sheet.length + 1) : written);
    if (brought !== undefined || (names && from?.sheet === sheet)) return brought;
    const part = names && from && resolveName(written, names, from.sheet);
    if (!part) adrift.add(written);
    return part?.sheet === from?.sheet ? part?.id : undefined;
  };
  const respelt = copies.map((copy) => withFormula(copy, respell));
  const change = insertRows(book, sheet, place, respelt, fresh, counted('paste', lines.length));
  return change && { ...change, ...(adrift.size > 0 && { remark: adriftWords([...adrift]) }) };
}

/** The most names that a sentence lists. */
const MOST = 6;

function adriftWords(names: readonly string[]): string {
  const more = names.length - MOST;
  const listed = `${names.slice(0, MOST).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  return names.length === 1
    ? `the formulas pasted name ${listed}, which did not come along: here it means what this book calls so, or nothing`
    : `the formulas pasted name ${listed}, which did not come along: here they mean what this book calls so, or nothing`;
}

/**
 * Puts lines in place of selected lines of one block, which go. The names of lines that go are free for those that
 * come.
 */
export function pasteOver(
  book: Book,
  over: readonly CellPlace[],
  lines: readonly Row[],
  from: LinesFrom | undefined,
): PastedLines | undefined {
  const room = roomOf(book, over);
  const change = room && pasteCopies(room.without, room.to, lines, from);
  if (!change) return undefined;
  return { ...change, edit: joinEdits(change.edit.label, [...room.removals, change.edit]) };
}

/** A book without some lines, and where those go that come in their place. */
export interface RoomForLines {
  readonly removals: readonly Edit[];
  readonly without: Book;
  readonly to: LinesGo;
}

/** Makes room where lines of one block stand; undefined where they are of none. */
export function roomOf(book: Book, over: readonly CellPlace[]): RoomForLines | undefined {
  const [first] = over;
  const part = first && findSheet(book, first.sheet)?.parts.find(({ id }) => id === first.part);
  if (!first || part?.kind !== 'rows') return undefined;
  const gone = new Set(over.map(({ item }) => item));
  const removals = over.map(({ sheet, item }) => removeRow({ sheet, part: part.id, row: item }));
  const without = applyEdit(book, joinEdits('', removals));
  if (!without.ok) return undefined;
  const before = part.rows[part.rows.findIndex(({ id }) => gone.has(id)) - 1];
  const place = { ...first, item: before?.id ?? '' };
  return { removals, without: without.value.book, to: { sheet: first.sheet, place } };
}

/**
 * Moves lines that were cut on a sheet (`from`) below a place of any sheet, with what refers to them and what they refer
 * to: other lines, tables, charts and sketches follow to the new place, and what the lines say of the sheet they leave is
 * spelt with its key. The lines may still stand there or be gone already.
 */
export function moveLines(
  book: Book,
  from: string,
  lines: readonly Row[],
  { sheet: to, place }: LinesGo,
): Change | undefined {
  const source = findSheet(book, from);
  if (!source) return undefined;
  const ids = new Set(lines.map(({ id }) => id));
  const removals = source.parts.flatMap((part) =>
    part.kind === 'rows'
      ? part.rows
          .filter(({ id }) => ids.has(id))
          .map(({ id }) => removeRow({ sheet: from, part: part.id, row: id }))
      : [],
  );
  const without = removals.length > 0 ? applied(book, removals) : book;
  const target = without && findSheet(without, to);
  // As long as the names are resolved the lines stand on the sheet they came from.
  const within = without && applied(without, [insertPart(from, 0, newBlock(lines, heldIds(book)))]);
  if (!without || !target || !within) return undefined;
  const fresh = freshFor(without, target);
  const names = namesOf(within);
  const renamed = new Map(lines.map(({ name }) => [`${from}.${name}`, fresh.name(name)]));
  const follow: Respell = (written, sheet, table) => {
    const part = resolveName(written, names, sheet, table);
    const name = part && renamed.get(part.id);
    if (name === undefined) return undefined;
    const hidden = table !== undefined && names.get(`${table}.${name}`) !== undefined;
    return sheet === to && !hidden ? name : `${to}.${name}`;
  };
  const uses = without.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => usesInPart(key, part, follow)),
  );
  const moved = lines.map((line) => {
    const own = withFormula(
      { ...line, name: renamed.get(`${from}.${line.name}`) ?? line.name },
      (written) => {
        const part = resolveName(written, names, from);
        if (!part) return undefined;
        return renamed.get(part.id) ?? (part.id.startsWith(`${from}.`) && from !== to ? part.id : undefined);
      },
    );
    return own;
  });
  const change = insertRows(without, to, place, moved, fresh, counted('move', lines.length));
  return change && { ...change, edit: joinEdits(change.edit.label, [...removals, ...uses, change.edit]) };
}

/** Ids for a block that stands nowhere for long. */
function heldIds(book: Book): Fresh {
  const [sheet] = book.sheets;
  if (!sheet) throw new Error('lines that were cut come from a sheet');
  return freshFor(book, sheet);
}

function applied(book: Book, edits: readonly Edit[]): Book | undefined {
  const done = applyEdit(book, joinEdits('', edits));
  return done.ok ? done.value.book : undefined;
}

/** A line with other spellings of the names that it says. */
function withFormula<Line extends Row>(line: Line, respell: (written: string) => string | undefined): Row {
  if (line.kind === 'check') {
    const applies = line.applies === undefined ? {} : { applies: renameInFormula(line.applies, respell) };
    return { ...line, formula: renameInFormula(line.formula, respell), ...applies };
  }
  if (line.kind === 'calc') return respellLine<Calc>(line, respell);
  if (line.kind === 'choice' && line.from !== undefined)
    return { ...line, from: respell(line.from) ?? line.from };
  return line;
}
