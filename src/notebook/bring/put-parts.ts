import { type Outcome, succeed } from '../../diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  blankBook,
  type Edit,
  type Fresh,
  findSheet,
  joinEdits,
  type Part,
} from '../../document/index.ts';
import { type NamedPart, namesOf, resolveName } from '../names.ts';
import { type Respell, usesInPart } from '../names-in-parts.ts';
import { settingsFor } from './bring-settings.ts';
import { namesIn } from './take-along.ts';

/** Parts that were copied: where they stood, in the book itself or in one of their own that holds all they need. */
export interface CopiedParts {
  readonly book: Book;
  readonly sheet: string;
  readonly parts: readonly Part[];
}

/** Parts as they can be put on a sheet of a book, and the edits that the book needs in front of them. */
export interface PartsToPut {
  readonly parts: readonly Part[];
  readonly settings: readonly Edit[];
}

/**
 * Copies of parts with ids and names that are free on a sheet. What they say of one another they say of the copies; what
 * they say of other sheets of the same book is spelled as it is from there. Units of another book come along, or are
 * refused where this one has others of the same symbol.
 */
export function partsToPut(
  book: Book,
  to: string,
  { book: from, sheet, parts }: CopiedParts,
  fresh: Fresh,
): Outcome<PartsToPut> {
  const settings = settingsFor(book, from, [{ key: sheet, title: '', parts }]);
  if (!settings.ok) return settings;
  const names = namesOf({ ...from, sheets: withParts(from, sheet, parts) });
  const renamed = freeNames(book, to, parts, fresh);
  const own = new Set(parts.flatMap((part) => namesIn(part).map((name) => `${sheet}.${name}`)));
  const respell: Respell = (written, on, table) => {
    const part = resolveName(written, names, on, table);
    if (!part) return undefined;
    if (!own.has(part.id)) return part.sheet === to && part.kind === 'row' ? part.row.name : part.id;
    const bare = part.kind === 'column' && !written.includes('.');
    const name = bare
      ? (renamed.get(localOf(part))?.split('.').at(-1) ?? written)
      : renamed.get(localOf(part));
    // A column called so would be found in front of the line.
    const prefix = written === part.id ? `${to}.` : '';
    return name === undefined ? undefined : `${prefix}${name}`;
  };
  // The copies are respelled where they stood, and take their own names and ids last.
  const scratch: Book = {
    ...blankBook(),
    settings: from.settings,
    sheets: [{ key: sheet, title: '', parts }],
  };
  const uses = parts.flatMap((part) => usesInPart(sheet, part, respell));
  const respelt = applyEdit(scratch, joinEdits('', uses));
  if (!respelt.ok) return respelt;
  const after = findSheet(respelt.value.book, sheet)?.parts ?? [];
  return succeed({ parts: after.map((part) => copied(part, renamed, fresh)), settings: settings.value });
}

function withParts(book: Book, sheet: string, parts: readonly Part[]): Book['sheets'] {
  const known = book.sheets.find(({ key }) => key === sheet);
  if (!known) return [...book.sheets, { key: sheet, title: '', parts }];
  const ids = new Set(known.parts.map(({ id }) => id));
  const gone = parts.filter(({ id }) => !ids.has(id));
  return book.sheets.map((one) => (one === known ? { ...known, parts: [...known.parts, ...gone] } : one));
}

const localOf = (part: NamedPart): string => part.id.slice(part.sheet.length + 1);

/** The names of the copies by those of the parts: `name`, `table`, `table.column`. */
function freeNames(
  book: Book,
  to: string,
  parts: readonly Part[],
  fresh: Fresh,
): ReadonlyMap<string, string> {
  const lines = new Set(
    findSheet(book, to)?.parts.flatMap((part) =>
      part.kind === 'rows' ? part.rows.map(({ name }) => name) : part.kind === 'table' ? [part.name] : [],
    ),
  );
  const renamed = new Map<string, string>();
  for (const part of parts)
    for (const name of part.kind === 'rows'
      ? part.rows.map((row) => row.name)
      : part.kind === 'table'
        ? [part.name]
        : []) {
      const free = fresh.name(name);
      renamed.set(name, free);
      lines.add(free);
    }
  for (const part of parts) {
    if (part.kind !== 'table') continue;
    for (const { name } of part.columns) {
      // Columns of two tables may be called alike; a column and a line may not.
      const free = lines.has(name) ? fresh.name(name) : name;
      renamed.set(`${part.name}.${name}`, `${renamed.get(part.name)}.${free}`);
    }
  }
  return renamed;
}

function copied(part: Part, renamed: ReadonlyMap<string, string>, fresh: Fresh): Part {
  const id = fresh.id('p');
  if (part.kind === 'rows') {
    const rows = part.rows.map((row) => ({
      ...row,
      id: fresh.id('r'),
      name: renamed.get(row.name) ?? row.name,
    }));
    return { ...part, id, rows };
  }
  if (part.kind !== 'table') return { ...part, id };
  const columns = part.columns.map((column) => ({
    ...column,
    id: fresh.id('k'),
    name: renamed.get(`${part.name}.${column.name}`)?.split('.').at(-1) ?? column.name,
  }));
  return { ...part, id, name: renamed.get(part.name) ?? part.name, columns };
}
