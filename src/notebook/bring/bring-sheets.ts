import { type Outcome, succeed } from '../../diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  type Edit,
  type Fresh,
  freshFor,
  hashBook,
  idsInPart,
  insertSheet,
  joinEdits,
  type Part,
  type Sheet,
  startOf,
  startWithIds,
} from '../../document/index.ts';
import { namesOf, resolveName } from '../names.ts';
import { type Respell, usesInPart } from '../names-in-parts.ts';
import type { Notebook } from '../notebook.ts';
import { namesInOrigin } from '../started-pairs.ts';
import { originsFor } from './bring-origins.ts';
import { settingsFor } from './bring-settings.ts';
import { type HeldReferences, heldReferences } from './held-references.ts';

/** Sheets on their way into a book. */
export interface BroughtSheets {
  readonly edit: Edit;
  /** The key each sheet has there, by the one it had. */
  readonly keys: ReadonlyMap<string, string>;
  /** What they take from sheets that do not come along, as names of the book they come from. */
  readonly held: readonly string[];
}

/**
 * The one edit that puts sheets of another book into a book, in front of position `index` of its list. Keys, names and ids
 * that are taken are replaced by free ones, and what the sheets say of one another follows. What they say of sheets that
 * do not come along is put in front of the first that says it, as lines and tables that hold the values these had, to be
 * linked. No value of either book changes; one that is held is the nearest that a number in its unit has. Units, datums and what the sheets' book says of itself come along. Refused
 * where the two books mean different things by a unit.
 */
export function bringSheets(
  book: Book,
  source: Notebook,
  wanted: readonly string[],
  index: number,
): Outcome<BroughtSheets> {
  const chosen = source.book.sheets.filter(({ key }) => wanted.includes(key));
  const keys = freeKeys(book, chosen);
  const both: Book = {
    ...book,
    sheets: [...book.sheets, ...chosen.map((sheet) => ({ ...sheet, key: keys.get(sheet.key) ?? sheet.key }))],
  };
  const written = danglingNames(source.book, chosen);
  const fresh = new Map<string, Fresh>();
  for (const sheet of chosen) {
    // Ids are given once in a book, names once on a sheet.
    const id = [...fresh.values()][0]?.id;
    const own = reserving(freshFor(both, sheet), written);
    fresh.set(sheet.key, id ? { ...own, id } : own);
  }
  const freshOn = (sheet: string): Fresh => {
    const found = fresh.get(sheet);
    if (!found) throw new Error(`the sheet ${sheet} does not come along`);
    return found;
  };
  const tables = tableNames(both, chosen, freshOn);
  const held = heldReferences(source, freshOn);
  const taken: string[] = [];
  const respell = respelling(book, source.book, { keys, tables, held, taken });
  const uses = chosen.flatMap(({ key, parts }) => parts.flatMap((part) => usesInPart(key, part, respell)));
  const respelt = applyEdit(source.book, joinEdits('', uses));
  if (!respelt.ok) return respelt;
  const ids = freeIds(book, chosen, freshOn);
  const origins = originsFor(book, source.book, chosen);
  const content = hashBook(source.book);
  const { revision, ...titles } = source.book.title;
  const title = titles.subject || titles.project;
  /** What is held on a sheet, by what it was called where the sheet came from first. */
  const heldInOrigin = ({ key }: Sheet, first: string): (readonly [string, string])[] => {
    const called = namesInOrigin(source.book, first);
    return [...held.standing(key)].map(([id, name]) => [id, called.get(name) ?? name]);
  };
  const sheets = chosen.flatMap((was): Sheet[] => {
    const sheet = respelt.value.book.sheets.find(({ key }) => key === was.key);
    if (!sheet) return [];
    const { origin: _, start: __, ...kept } = sheet;
    const origin = origins.of(was);
    const start = startWithIds(startOf(was, { title, version: revision }, content), (id) => ids.get(id));
    const stands = [...(start.held ? Object.entries(start.held) : []), ...heldInOrigin(was, start.content)];
    const parts = sheet.parts.map((part) => renamed(part, ids, (name) => tables.get(`${was.key}.${name}`)));
    return [
      {
        ...kept,
        key: keys.get(was.key) ?? was.key,
        ...(origin !== undefined && { origin }),
        start: { ...start, ...(stands.length > 0 && { held: Object.fromEntries(stands) }) },
        parts: [...held.partsOn(was.key), ...parts],
      },
    ];
  });
  const settings = settingsFor(book, source.book, sheets);
  if (!settings.ok) return settings;
  const label = sheets.length === 1 ? 'add a sheet' : `add ${sheets.length} sheets`;
  const inserts = sheets.map((sheet, at) => insertSheet(index + at, sheet));
  const edit = joinEdits(label, [...settings.value, ...origins.edits, ...inserts]);
  return succeed({ edit, keys, held: [...new Set(taken)] });
}

/** Keys that neither a sheet nor a table of the book has, and that no formula of it waits for. */
function freeKeys(book: Book, chosen: readonly Sheet[]): ReadonlyMap<string, string> {
  const taken = new Set([
    ...book.sheets.map(({ key }) => key),
    ...book.sheets.flatMap(({ parts }) =>
      parts.flatMap((part) => (part.kind === 'table' ? [part.name] : [])),
    ),
    ...danglingNames(book, book.sheets),
  ]);
  const keys = new Map<string, string>();
  for (const { key } of chosen) {
    let free = key;
    for (let n = 2; taken.has(free); n += 1) free = `${key.replace(/_?\d+$/, '').slice(0, 50)}_${n}`;
    taken.add(free);
    keys.set(key, free);
  }
  return keys;
}

/** The names that sheets write and that stand for nothing, each by its first word. */
function danglingNames(book: Book, sheets: readonly Sheet[]): ReadonlySet<string> {
  const names = namesOf(book);
  const found = new Set<string>();
  const note: Respell = (written, sheet, table) => {
    if (!resolveName(written, names, sheet, table)) found.add(written.split('.', 1)[0] ?? written);
    return undefined;
  };
  for (const { key, parts } of sheets) for (const part of parts) usesInPart(key, part, note);
  return found;
}

/** Gives no name that is to stay free: one that stands for nothing so far would come to mean it. */
function reserving({ id, name }: Fresh, reserved: ReadonlySet<string>): Fresh {
  return {
    id,
    name: (wanted) => {
      let free = name(wanted);
      while (reserved.has(free)) free = name(wanted);
      return free;
    },
  };
}

/** The new names of tables that are called as a sheet of the book is, by `sheet.table`. */
function tableNames(
  { sheets }: Book,
  chosen: readonly Sheet[],
  freshOn: (sheet: string) => Fresh,
): ReadonlyMap<string, string> {
  const keys = new Set(sheets.map(({ key }) => key));
  const names = new Map<string, string>();
  for (const { key, parts } of chosen)
    for (const part of parts)
      if (part.kind === 'table' && keys.has(part.name))
        names.set(`${key}.${part.name}`, freshOn(key).name(part.name));
  return names;
}

/** New ids for the parts, rows and columns whose ids the book has already. */
function freeIds(
  book: Book,
  chosen: readonly Sheet[],
  freshOn: (sheet: string) => Fresh,
): ReadonlyMap<string, string> {
  const taken = new Set(
    book.sheets.flatMap(({ parts, start }) => [...parts, ...(start?.parts ?? [])].flatMap(idsInPart)),
  );
  const ids = new Map<string, string>();
  for (const { key, parts, start } of chosen)
    for (const id of [...parts, ...(start?.parts ?? [])].flatMap(idsInPart))
      if (taken.has(id)) ids.set(id, freshOn(key).id(/^[A-Za-z]*/.exec(id)?.[0] || 'x'));
  return ids;
}

function renamed(
  part: Part,
  ids: ReadonlyMap<string, string>,
  tableName: (name: string) => string | undefined,
): Part {
  const free = <Item extends { readonly id: string }>(item: Item): Item => {
    const id = ids.get(item.id);
    return id === undefined ? item : { ...item, id };
  };
  if (part.kind === 'rows') return free({ ...part, rows: part.rows.map((row) => free(row)) });
  if (part.kind !== 'table') return free(part);
  const name = tableName(part.name) ?? part.name;
  return free({ ...part, name, columns: part.columns.map((column) => free(column)) });
}

interface Renaming {
  readonly keys: ReadonlyMap<string, string>;
  readonly tables: ReadonlyMap<string, string>;
  readonly held: HeldReferences;
  /** Takes note of what is held. */
  readonly taken: string[];
}

/** How names that the sheets write are spelled in the book that they come to. */
function respelling(book: Book, source: Book, { keys, tables, held, taken }: Renaming): Respell {
  const names = namesOf(source);
  const elsewhere = new Set([...book.sheets.map(({ key }) => key), ...keys.values()]);
  const spelled = (at: { readonly sheet: string; readonly name: string }, sheet: string): string =>
    at.sheet === sheet ? at.name : `${keys.get(at.sheet) ?? at.sheet}.${at.name}`;
  return (written, sheet, table) => {
    const part = resolveName(written, names, sheet, table);
    if (!part) {
      const [head = '', ...rest] = written.split('.');
      if (rest.length === 0) return undefined;
      const key = keys.get(head);
      if (key !== undefined) return [key, ...rest].join('.');
      if (!elsewhere.has(head)) return undefined;
      taken.push(written);
      return spelled(held.holdNothing(written, sheet), sheet);
    }
    const key = keys.get(part.sheet);
    if (key === undefined) {
      if (part.kind === 'table') return undefined;
      taken.push(part.id);
      return spelled(held.hold(part, sheet), sheet);
    }
    const tableId = part.kind === 'row' ? undefined : `${part.sheet}.${part.table.name}`;
    const tableName = tableId === undefined ? undefined : tables.get(tableId);
    const steps = written.split('.');
    const isOwnColumn = part.kind === 'column' && steps.length === 1;
    if (tableName !== undefined && !isOwnColumn)
      steps[steps.length - (part.kind === 'table' ? 1 : 2)] = tableName;
    if (written === part.id) steps[0] = key;
    const next = steps.join('.');
    return next === written ? undefined : next;
  };
}
