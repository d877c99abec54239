import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';

/**
 * The text of a file that may have so many bytes and no more: its size is looked at before it is read. It is of UTF-8,
 * unless `encodingOf` finds another encoding; bytes that are no text in it are refused.
 */
export async function readTextFile(
  file: Blob,
  limit: number,
  encodingOf: (bytes: Uint8Array) => string | undefined = () => 'utf-8',
): Promise<Outcome<string>> {
  const span = { from: 0, to: 0 };
  if (file.size > limit) return fail(problem('file-too-large', span, { size: file.size, limit }));
  const bytes = new Uint8Array(await file.arrayBuffer());
  try {
    const encoding = encodingOf(bytes);
    if (encoding === undefined) return fail(problem('file-not-utf-8', span, {}));
    return succeed(new TextDecoder(encoding, { fatal: true }).decode(bytes));
  } catch (error) {
    if (error instanceof TypeError) return fail(problem('file-not-utf-8', span, {}));
    throw error;
  }
}
