import type { Outcome } from '../../diagnostics/index.ts';
import { BOOK_BYTE_LIMIT } from '../../document/index.ts';
import { type DecodedText, decodeText, notText } from '../../tables/index.ts';
import { readDecoded } from './read-text-file.ts';

/** The text of a file of rows, in whatever encoding another program wrote it, with what there is to say of that. */
export function readTableFile(file: Blob): Promise<Outcome<DecodedText>> {
  return readDecoded(
    file,
    BOOK_BYTE_LIMIT,
    (bytes) => decodeText(bytes, (encoding, all) => new TextDecoder(encoding, { fatal: true }).decode(all)),
    notText,
  );
}
