/** What a file of a book is called after its words. */
export const BOOK_EXTENSION = '.quaybook.json';

/** Bytes of a name that every system takes, its extension included, with room for a number behind it. */
const NAME_BYTES = 200;

/** Names that some systems keep for devices. */
const deviceName = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A file name made of words, in characters and a length that every system takes. */
export function fileNameOf(words: string, extension: string): string {
  // A mark goes with its letter, without which it is a sign of nothing.
  const plain = words
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\p{M}]+|(?<![\p{L}\p{N}\p{M}])\p{M}+/gu, '-')
    .replace(/-+/g, '-');
  const encoder = new TextEncoder();
  let stem = '';
  let bytes = encoder.encode(extension).length;
  // By characters, so that none is cut in two.
  for (const character of plain) {
    bytes += encoder.encode(character).length;
    if (bytes > NAME_BYTES) break;
    stem += character;
  }
  stem = stem.replace(/^-+|-+$/g, '') || 'book';
  return `${deviceName.test(stem) ? `${stem}-book` : stem}${extension}`;
}
