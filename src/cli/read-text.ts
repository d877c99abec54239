import { closeSync, openSync, readSync } from 'node:fs';
import { BOOK_BYTE_LIMIT } from '../document/index.ts';
import { Refused } from './refused.ts';

/** Bytes read at a time. */
const PIECE = 1_000_000;

/** The text of a file, which may be of UTF-8 alone and not larger than a book. */
export function readText(path: string): string {
  const bytes = readBytes(path);
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new Refused(`${path} is not UTF-8 text; save it as UTF-8`);
  }
}

/** The bytes of a file, piece by piece: the size that a pipe or a device states says nothing of how much comes out of it. */
export function readBytes(path: string): Uint8Array {
  let file: number | undefined;
  try {
    file = openSync(path, 'r');
    const pieces: Uint8Array[] = [];
    let size = 0;
    for (let more = true; more; ) {
      const piece = new Uint8Array(PIECE);
      const length = readSync(file, piece);
      pieces.push(piece.subarray(0, length));
      size += length;
      if (size > BOOK_BYTE_LIMIT) throw tooLarge(path);
      more = length > 0;
    }
    return Buffer.concat(pieces, size);
  } catch (error) {
    if (error instanceof Refused) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    throw new Refused(`${path} cannot be read (${wordsOf(code)})`);
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

function tooLarge(path: string): Refused {
  const megabytes = BOOK_BYTE_LIMIT / 1_000_000;
  return new Refused(`${path} has more than ${megabytes} MB, and at most ${megabytes} MB are read`);
}

const errorWords: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read',
};

function wordsOf(code: string): string {
  return errorWords[code] ?? `the system says ${code}`;
}
