import type { Book } from '../../document/index.ts';
import { element, type Markup } from '../../markup/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import type { Checking } from '../../review/index.ts';
import type { Shown } from '../numbers/worked-formula.ts';

/** What the parts of a record are written from. */
export interface RecordSource extends Shown {
  readonly notebook: Notebook;
  readonly book: Book;
  /** The content hash of the book. */
  readonly hash: string;
  /** The name and version of the program. */
  readonly program: string;
  /** What the second engine found, a sentence each; none where the book was not computed twice. */
  readonly recheck: readonly string[];
  /** How far everything has come in checking. */
  readonly checking: Checking;
  /** What of a line or column is not as it came, in words, by its id. */
  readonly otherwise: ReadonlyMap<string, string>;
}

/** The id of the section of a sheet in the page. */
export const idOfSheet = (key: string): string => `sheet:${key}`;

/** The id of a line, column or check in the page. */
export const idOfLine = (id: string): string => `line:${id}`;

/** Words that lead to a place of the page. */
export function linkTo(id: string, words: Markup | string): Markup {
  return element('a', { href: `#${encodeURIComponent(id)}` }, words);
}

/** The title of a sheet, or its key where it has none. */
export function titleOfSheet({ sheets }: Book, key: string): string {
  return sheets.find((sheet) => sheet.key === key)?.title || key;
}
