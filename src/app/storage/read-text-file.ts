import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';

/** The text of a file that may have so many bytes and no more: its size is looked at before it is read. */
export async function readTextFile(file: Blob, limit: number): Promise<Outcome<string>> {
  const span = { from: 0, to: 0 };
  if (file.size > limit) return fail(problem('file-too-large', span, { size: file.size, limit }));
  try {
    return succeed(new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer()));
  } catch (error) {
    if (error instanceof TypeError) return fail(problem('file-not-utf-8', span, {}));
    throw error;
  }
}
