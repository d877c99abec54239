import type { Book, Column, Row, Table } from '../document/index.ts';

/** Something that has a name in the book, with the part of the document it comes from. */
export type NamedPart =
  | { readonly kind: 'row'; readonly id: string; readonly sheet: string; readonly row: Row }
  | { readonly kind: 'table'; readonly id: string; readonly sheet: string; readonly table: Table }
  | {
      readonly kind: 'column';
      readonly id: string;
      readonly sheet: string;
      readonly table: Table;
      readonly column: Column;
    };

/** Every name of a book by its full id: `sheet.name`, `sheet.table`, `sheet.table.column`, in the book's order. */
export type Names = ReadonlyMap<string, NamedPart>;

export function namesOf(book: Pick<Book, 'sheets'>): Names {
  const known = namesByBook.get(book);
  if (known) return known;
  const names = new Map<string, NamedPart>();
  for (const { key: sheet, parts } of book.sheets) {
    for (const part of parts) {
      if (part.kind === 'rows') {
        for (const row of part.rows)
          names.set(`${sheet}.${row.name}`, { kind: 'row', id: `${sheet}.${row.name}`, sheet, row });
      } else if (part.kind === 'table') {
        const id = `${sheet}.${part.name}`;
        names.set(id, { kind: 'table', id, sheet, table: part });
        for (const column of part.columns) {
          const columnId = `${id}.${column.name}`;
          names.set(columnId, { kind: 'column', id: columnId, sheet, table: part, column });
        }
      }
    }
  }
  namesByBook.set(book, names);
  return names;
}

/** A book is a value, so its names are found once. */
const namesByBook = new WeakMap<object, Names>();

/**
 * What a name written on a sheet, in a column formula of `table` or not, stands for: a column of the formula's own
 * table, then a name of the sheet, then a name with its sheet or table in front.
 */
export function resolveName(
  name: string,
  names: Names,
  sheet: string,
  table?: string,
): NamedPart | undefined {
  const own = table !== undefined && !name.includes('.') ? names.get(`${table}.${name}`) : undefined;
  return own ?? names.get(`${sheet}.${name}`) ?? names.get(name);
}
