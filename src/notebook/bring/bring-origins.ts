import { type Book, canonicalJson, type Edit, type Origin, type Sheet } from '../../document/index.ts';

/** The origins that sheets have in a book they are brought to. */
export interface BroughtOrigins {
  /** The id of a sheet's origin there; undefined where the book's own words are those of the sheet. */
  readonly of: (sheet: Sheet) => string | undefined;
  /** The edits that list those that the book does not know yet. */
  readonly edits: readonly Edit[];
}

/** Finds or makes the origins of sheets that are brought from another book, and of those it had them from. */
export function originsFor(book: Book, source: Book, sheets: readonly Sheet[]): BroughtOrigins {
  const known = [...(book.origins ?? [])];
  const ids = new Map<Sheet, string>();
  for (const sheet of sheets) {
    const origin = source.origins?.find(({ id }) => id === sheet.origin) ?? ownOrigin(source);
    if (origin === undefined || (book.about && sameAbout(origin, { id: '', title: '', about: book.about })))
      continue;
    const same = known.find((one) => one.title === origin.title && sameAbout(one, origin));
    const id = same?.id ?? freshId(known);
    if (!same) known.push({ ...origin, id });
    ids.set(sheet, id);
  }
  const isNew = known.length > (book.origins?.length ?? 0);
  return {
    of: (sheet) => ids.get(sheet),
    edits: isNew
      ? [{ label: 'list origins', patches: [{ kind: 'set', at: ['origins'], value: known }] }]
      : [],
  };
}

/** A book as the origin of its own sheets; undefined where it says nothing of itself. */
function ownOrigin({ about, title }: Book): Origin | undefined {
  const words = title.subject || title.project;
  if (!about && words === '') return undefined;
  return { id: '', title: words, ...(about && { about }) };
}

function sameAbout(a: Origin, b: Origin): boolean {
  if (!a.about || !b.about) return a.about === b.about;
  return canonicalJson(a.about) === canonicalJson(b.about);
}

function freshId(known: readonly Origin[]): string {
  const taken = new Set(known.map(({ id }) => id));
  let number = known.length + 1;
  while (taken.has(`o${number}`)) number += 1;
  return `o${number}`;
}
