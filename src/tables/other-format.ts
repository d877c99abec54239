import { type Problem, problem } from '../diagnostics/index.ts';

/** A kind of file that is no table in text, by how it begins, with what to do about it. */
interface Format {
  readonly begins: RegExp;
  readonly name: string;
  readonly remedy: string;
}

const SAVE = 'save the sheet as CSV in UTF-8 from the program that made it';

const FORMATS: readonly Format[] = [
  // ISO 32000-1, 7.5.2: the header of the file.
  {
    begins: /^%PDF-/,
    name: 'a PDF',
    remedy: 'copy the table out of it, or ask for the list that it was printed from',
  },
  {
    // The letters and two control characters of an entry, from memory.
    begins: /^PK(?:\p{Cc}){2}/u,
    name: 'a ZIP archive, as workbooks of a spreadsheet are',
    remedy: SAVE,
  },
  // The first four bytes of a compound file, from memory.
  { begins: /^\u00d0\u00cf\p{Cc}\u00e0/u, name: 'a workbook of an old spreadsheet', remedy: SAVE },
  {
    begins: /^\s*(?:<!doctype\s+html|<html[\s>]|<table[\s>]|<meta[\s>])/i,
    name: 'a page in HTML',
    remedy: 'open it, and copy the table out of it',
  },
  { begins: /^\s*<\?xml\s/i, name: 'a file in XML', remedy: SAVE },
  { begins: /^\{\\rtf/, name: 'a formatted text in RTF', remedy: 'open it, and copy the table out of it' },
];

/** So much of a file tells its format. */
const BEGINNING = 64;

const NOWHERE = { from: 0, to: 0 };

/** That a text begins as a file of another format does; undefined where it does not. */
export function otherFormat(text: string): Problem | undefined {
  const start = text.slice(0, BEGINNING);
  const found = FORMATS.find(({ begins }) => begins.test(start));
  return found && problem('table-other-format', NOWHERE, { format: found.name, remedy: found.remedy });
}

/** What is wrong with bytes that are no text. */
export function notText(bytes: Uint8Array): Problem {
  const start = String.fromCharCode(...bytes.subarray(0, BEGINNING));
  return otherFormat(start) ?? problem('table-not-text', NOWHERE, {});
}
