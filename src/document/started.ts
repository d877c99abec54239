import { hashBook } from './hash/hasher.ts';
import type { Book, Sheet, Start } from './schema/book.ts';
import type { Column } from './schema/columns.ts';
import type { Method } from './schema/methods.ts';
import type { Part } from './schema/parts.ts';
import type { Row } from './schema/rows.ts';

/** Where sheets come from: a shipped template, or a book by its title. */
export type Source = Pick<Start, 'template' | 'title' | 'version'>;

/** A book whose sheets know what they are now, for those that do not know yet where they came from. */
export function withStarts(book: Book, source: Source): Book {
  const content = hashBook(book);
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({ ...sheet, start: startOf(sheet, source, content) })),
  };
}

/** What a sheet knows of where it came from; without that, it comes from `source` as it is now. */
export function startOf(sheet: Sheet, source: Source, content: string): Start {
  return sheet.start ?? { ...source, content, key: sheet.key, parts: asStarted(sheet.parts) };
}

/** The lines and tables among parts, without what is entered in them or remarked beside them. */
function asStarted(parts: readonly Part[]): Part[] {
  return parts.flatMap((part): Part[] => {
    if (part.kind === 'rows') return [{ id: part.id, kind: 'rows', rows: part.rows.map(startOfRow) }];
    if (part.kind !== 'table') return [];
    const { id, kind, name, columns } = part;
    return [{ id, kind, name, columns: columns.map(startOfColumn) }];
  });
}

/** A line without its entry and what is remarked beside it. One that is linked is what it is without the link. */
export function startOfRow(row: Row): Row {
  const { note: _, reference: __, ...said } = row;
  switch (said.kind) {
    case 'given':
    case 'choice': {
      const { toLink: ___, ...line } = said;
      return { ...line, entry: '' };
    }
    case 'check':
      return said;
    case 'calc': {
      const { link, methods, ...line } = said;
      if (!link) return { ...line, ...(methods && { methods: methods.map(startOfMethod) }) };
      const { id, name, label, unit } = line;
      const named = { id, name, ...(label !== undefined && { label }), ...link, entry: '' };
      return named.kind === 'given' && unit !== undefined ? { ...named, unit } : named;
    }
  }
}

/** A column without its cells and what is remarked beside it. */
export function startOfColumn(column: Column): Column {
  const { note: _, reference: __, ...said } = column;
  if (said.kind === 'series') return said;
  if (said.kind === 'given') {
    const { toLink: ___, ...line } = said;
    return { ...line, chunks: [] };
  }
  const { methods, ...line } = said;
  return { ...line, ...(methods && { methods: methods.map(startOfMethod) }) };
}

function startOfMethod({ note: _, reference: __, ...said }: Method): Method {
  return said;
}

/** The ids of a part and of what is in it. */
export function idsInPart(part: Part): readonly string[] {
  if (part.kind === 'rows') return [part.id, ...part.rows.map(({ id }) => id)];
  if (part.kind === 'table') return [part.id, ...part.columns.map(({ id }) => id)];
  return [part.id];
}

/** The same with other ids for its lines and columns, as those of its sheet were given others. */
export function startWithIds(start: Start, idFor: (id: string) => string | undefined): Start {
  const free = <Item extends { readonly id: string }>(item: Item): Item => {
    const id = idFor(item.id);
    return id === undefined ? item : { ...item, id };
  };
  const parts = start.parts.map((part): Part => {
    if (part.kind === 'rows') return free({ ...part, rows: part.rows.map((row) => free(row)) });
    if (part.kind === 'table') return free({ ...part, columns: part.columns.map((column) => free(column)) });
    return free(part);
  });
  const { held } = start;
  if (!held) return { ...start, parts };
  const ids = Object.entries(held).map(([id, name]) => [idFor(id) ?? id, name] as const);
  return { ...start, parts, held: Object.fromEntries(ids) };
}
