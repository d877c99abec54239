import type { Book, Sheet } from './schema/book.ts';
import type { Part } from './schema/parts.ts';
import { idsInPart } from './started.ts';

/** Gives ids that no part, row or column of the book has, and names that a sheet has not. */
export interface Fresh {
  readonly id: (prefix: string) => string;
  /** `wanted` if it is free, else the first of `wanted_2`, `wanted_3`… */
  readonly name: (wanted: string) => string;
}

/** Fresh ids and names for a sheet of a book; what was given once is not given again, nor what lines had that are gone since the sheet came. */
export function freshFor(book: Book, sheet: Sheet): Fresh {
  const ids = new Set(
    book.sheets.flatMap(({ parts, start }) => [...parts, ...(start?.parts ?? [])].flatMap(idsInPart)),
  );
  const names = new Set([...book.sheets.map(({ key }) => key), ...sheet.parts.flatMap(namesOf)]);
  return {
    id: (prefix) => claim(ids, `${prefix}1`, (n) => `${prefix}${n}`),
    name: (wanted) => claim(names, wanted, (n) => `${wanted.replace(/_?\d+$/, '')}_${n}`),
  };
}

function claim(taken: Set<string>, wanted: string, numbered: (n: number) => string): string {
  let found = wanted;
  for (let n = 2; taken.has(found); n += 1) found = numbered(n);
  taken.add(found);
  return found;
}

function namesOf(part: Part): readonly string[] {
  if (part.kind === 'rows') return part.rows.map(({ name }) => name);
  if (part.kind === 'table') return [part.name, ...part.columns.map(({ name }) => name)];
  return [];
}
