import { saysOfItself } from '../../../record/index.ts';

const REMEMBERED = 'from memory';

/** The words for it at the end of a reference: "; from memory", "(from memory)". */
const AT_END = /[\s,;:.]*(?:\(from memory\)|\bfrom memory)\s*$/i;

/**
 * A reference as the margin sets it: that it is only remembered stands in a row of its own, never cut off with the rest;
 * `kind` is undefined where nothing is to be said.
 */
export function marginReference(reference: string): { readonly words: string; readonly kind?: string } {
  if (saysOfItself(reference) !== REMEMBERED) return { words: reference };
  return { words: reference.replace(AT_END, ''), kind: REMEMBERED };
}
