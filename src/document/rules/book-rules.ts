import { inCell, type Problem, problem } from '../../diagnostics/index.ts';
import { pathText } from '../json/path.ts';
import type { Book, Sheet } from '../schema/book.ts';
import { idProblems } from './ids.ts';
import { methodProblems } from './methods.ts';
import { nameProblems } from './names.ts';
import { tableProblems } from './tables.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * Fields that the rules between the parts of a book look at. Changing any other field cannot break a rule, so an
 * edit of it needs the schema of that field only.
 */
export const RULED_FIELDS: ReadonlySet<string> = new Set([
  'sheets',
  'origins',
  'origin',
  'key',
  'parts',
  'rows',
  'columns',
  'name',
  'options',
  'from',
  'length',
  'ids',
  'stated',
  'chunks',
  'formula',
  'by',
  'methods',
  'for',
]);

/** What breaks a rule between the parts of a book whose fields are each sound; empty if nothing does. */
export function bookProblems(book: Book): Problem[] {
  return [...identityProblems(book), ...book.sheets.flatMap((_, index) => sheetProblems(book, index))];
}

/** What breaks a rule within the sheet at `index`; ids and keys, which concern the whole book, are not looked at. */
export function sheetProblems(book: Book, index: number): Problem[] {
  const sheet = book.sheets[index];
  if (sheet === undefined) return [];
  const keys = new Set(book.sheets.map(({ key }) => key));
  return [...nameProblems(sheet, keys), ...partProblems(sheet, index)];
}

/** The rules that concern the whole book: ids, the keys of sheets, and where sheets were brought from. */
export function identityProblems(book: Book): Problem[] {
  return [...sheetKeyProblems(book), ...idProblems(book), ...originProblems(book)];
}

/** Each origin has an id of its own, and each sheet that names one names one of the book's. */
function originProblems({ origins = [], sheets }: Book): Problem[] {
  const known = new Map<string, string>();
  const problems: Problem[] = [];
  for (const [o, { id }] of origins.entries()) {
    const path = pathText(['origins', o]);
    const first = known.get(id);
    if (first === undefined) known.set(id, path);
    else problems.push(problem('book-id-twice', NOWHERE, { path, id, first }));
  }
  for (const [s, { key, origin }] of sheets.entries())
    if (origin !== undefined && !known.has(origin))
      problems.push(
        problem('book-origin-unknown', NOWHERE, { path: pathText(['sheets', s]), sheet: key, origin }),
      );
  return problems;
}

function sheetKeyProblems(book: Book): Problem[] {
  const seen = new Set<string>();
  const twice = book.sheets.filter(({ key }) => seen.size === seen.add(key).size);
  return twice.map(({ key }) => problem('book-key-of-two-sheets', NOWHERE, { key }));
}

function partProblems(sheet: Sheet, index: number): Problem[] {
  const problems: Problem[] = [];
  for (const [p, part] of sheet.parts.entries()) {
    const at = ['sheets', index, 'parts', p];
    if (part.kind === 'table') {
      problems.push(...tableProblems(part, at).map((found) => inCell(found, `${sheet.key}.${part.name}`)));
      for (const [c, column] of part.columns.entries())
        if (column.kind === 'calc')
          problems.push(
            ...methodProblems(column, [...at, 'columns', c], `${sheet.key}.${part.name}.${column.name}`),
          );
    }
    if (part.kind !== 'rows') continue;
    for (const [r, row] of part.rows.entries()) {
      if (row.kind === 'calc')
        problems.push(...methodProblems(row, [...at, 'rows', r], `${sheet.key}.${row.name}`));
      if (row.kind !== 'choice' || (row.options === undefined) !== (row.from === undefined)) continue;
      const facts = { path: pathText([...at, 'rows', r]), name: row.name };
      problems.push(inCell(problem('book-choice-source', NOWHERE, facts), `${sheet.key}.${row.name}`));
    }
  }
  return problems;
}
