import { type Problem, problem } from '../diagnostics/index.ts';
import { type Encoding, encodingOf } from './encoding.ts';

/** The text of some bytes, the encoding they were found to have, and what there is to say of that. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
  readonly problems: readonly Problem[];
}

/**
 * The characters of the bytes 0x80 to 0x9F in Windows-1252 (WHATWG Encoding, index windows-1252); five bytes have none
 * and keep their number.
 */
const BEYOND_LATIN_1 =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

/** Decodes bytes in an encoding, and throws a TypeError where they are none of it: what a host has a TextDecoder for. */
export type Decode = (encoding: Encoding, bytes: Uint8Array) => string;

/** The text of the bytes of a table, whatever program wrote it; undefined where they are no text. */
export function decodeText(bytes: Uint8Array, decode: Decode): DecodedText | undefined {
  const encoding = encodingOf(bytes);
  if (encoding === undefined) return undefined;
  if (encoding === 'windows-1252') {
    const text = windows1252(decode(encoding, bytes));
    return { text, encoding, problems: [guessedEncoding(text)] };
  }
  try {
    return { text: decode(encoding, bytes), encoding, problems: [] };
  } catch (error) {
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}

/** A text of Windows-1252. Node 20 decodes it as Latin-1, so the characters in which they differ are looked up here. */
function windows1252(decoded: string): string {
  return decoded.replace(
    /[\u0080-\u009f]/g,
    (control) => BEYOND_LATIN_1[control.charCodeAt(0) - 0x80] ?? control,
  );
}

/** That a text is read in an encoding that nothing in it confirms, with the first word that shows it. */
function guessedEncoding(text: string): Problem {
  const lines = text.split(/\r\n?|\n/);
  const at = lines.findIndex((line) => /[^\0-\x7f]/.test(line));
  const [word = ''] = /\S*[^\s\0-\x7f]\S*/.exec(lines[at] ?? '') ?? [];
  return problem('table-encoding-guessed', { from: 0, to: 0 }, { line: at + 1, text: word });
}
