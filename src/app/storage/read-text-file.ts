import { fail, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';

const NOWHERE = { from: 0, to: 0 };

/** The text of a UTF-8 file that may have so many bytes and no more. */
export function readTextFile(file: Blob, limit: number): Promise<Outcome<string>> {
  return readDecoded(file, limit, utf8);
}

/**
 * What `decode` makes of a file that may have so many bytes and no more: its size is looked at before it is read.
 * Refused where that is undefined: the bytes are no text, and `notText` says so.
 */
export async function readDecoded<T>(
  file: Blob,
  limit: number,
  decode: (bytes: Uint8Array) => T | undefined,
  notText: (bytes: Uint8Array) => Problem = () => problem('file-not-utf-8', NOWHERE, {}),
): Promise<Outcome<T>> {
  if (file.size > limit) return fail(problem('file-too-large', NOWHERE, { size: file.size, limit }));
  const bytes = new Uint8Array(await file.arrayBuffer());
  const decoded = decode(bytes);
  return decoded === undefined ? fail(notText(bytes)) : succeed(decoded);
}

function utf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}
