import { encodingOf } from '../tables/index.ts';
import { readBytes } from './read-text.ts';
import { Refused } from './refused.ts';

/** The text of a file with a table, and the encoding it was found to have. */
export interface TableFile {
  readonly text: string;
  readonly encoding: string;
}

/** Reads a table file in UTF-8, UTF-16 or, where it is neither, Windows-1252. */
export function readTableFile(path: string): TableFile {
  const bytes = readBytes(path);
  const encoding = encodingOf(bytes);
  if (encoding === undefined)
    throw new Refused(`${path} is no text: it may be a spreadsheet file; save it as CSV in UTF-8`);
  return { text: new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes), encoding };
}
