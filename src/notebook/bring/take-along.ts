import { applyEdit, type Book, blankBook, freshFor, joinEdits, type Part } from '../../document/index.ts';
import { namesOf, resolveName } from '../names.ts';
import { type Respell, usesInPart } from '../names-in-parts.ts';
import type { Notebook } from '../notebook.ts';
import { heldReferences } from './held-references.ts';

/**
 * A book of one sheet that holds parts of a sheet and all that they take from elsewhere, as lines and tables that hold the
 * values these had: so they can be copied into any book. Undefined where that cannot be made.
 */
export function takeAlong(source: Notebook, sheet: string, parts: readonly Part[]): Book | undefined {
  const { book } = source;
  const was = book.sheets.find(({ key }) => key === sheet);
  if (!was) return undefined;
  const names = namesOf(book);
  const own = new Set(parts.flatMap((part) => namesIn(part).map((name) => `${sheet}.${name}`)));
  const fresh = freshFor(book, was);
  const held = heldReferences(source, () => fresh);
  const respell: Respell = (written, on, table) => {
    const part = resolveName(written, names, on, table);
    if (!part) return held.holdNothing(written, sheet).name;
    if (own.has(part.id) || part.kind === 'table') return undefined;
    return held.hold(part, sheet).name;
  };
  const picked: Book = { ...book, sheets: book.sheets.map((one) => (one === was ? { ...was, parts } : one)) };
  const uses = parts.flatMap((part) => usesInPart(sheet, part, respell));
  const respelt = applyEdit(picked, joinEdits('', uses));
  if (!respelt.ok) return undefined;
  const after = respelt.value.book.sheets.find(({ key }) => key === sheet)?.parts ?? [];
  const { title } = book;
  const blank = blankBook();
  return {
    ...blank,
    title: { ...blank.title, project: title.project, subject: title.subject },
    settings: book.settings,
    sheets: [{ key: sheet, title: was.title, parts: [...held.partsOn(sheet), ...after] }],
  };
}

/** The names of lines and tables of a part, and of the columns with their table's in front. */
export function namesIn(part: Part): readonly string[] {
  if (part.kind === 'rows') return part.rows.map(({ name }) => name);
  if (part.kind !== 'table') return [];
  return [part.name, ...part.columns.map(({ name }) => `${part.name}.${name}`)];
}
