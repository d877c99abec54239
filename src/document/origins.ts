import type { Patch } from './edits/patch.ts';
import type { About, Book, Sheet } from './schema/book.ts';

/** What one origin of a book says of itself, and the sheets it holds for. */
export interface AboutSheets {
  /** What the origin is called; undefined for the book itself. */
  readonly title: string | undefined;
  readonly about: About | undefined;
  readonly sheets: readonly Sheet[];
}

/** What a book and each book that sheets were brought from say of themselves, for the sheets that there are. */
export function aboutsOf({ about, origins = [], sheets }: Book): readonly AboutSheets[] {
  const own = sheets.filter(({ origin }) => origin === undefined);
  const brought = origins.map((origin) => ({
    title: origin.title,
    about: origin.about,
    sheets: sheets.filter((sheet) => sheet.origin === origin.id),
  }));
  const all = [...(about || own.length > 0 ? [{ title: undefined, about, sheets: own }] : []), ...brought];
  return all.filter((one) => one.sheets.length > 0);
}

/** What holds for one sheet: the words of the book it was brought from, else those of its own book. */
export function aboutOf(book: Book, key: string): About | undefined {
  return aboutsOf(book).find(({ sheets }) => sheets.some((sheet) => sheet.key === key))?.about;
}

/** The patches that take off the list the origins of which no sheet is left once the one with the key is gone. */
export function withoutOriginOf({ origins = [], sheets }: Book, key: string): readonly Patch[] {
  const origin = sheets.find((sheet) => sheet.key === key)?.origin;
  if (origin === undefined || sheets.some((sheet) => sheet.key !== key && sheet.origin === origin)) return [];
  return [
    origins.length > 1 ? { kind: 'remove', at: ['origins', origin] } : { kind: 'set', at: ['origins'] },
  ];
}
