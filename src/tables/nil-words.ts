/** Dashes and words that stand where there is no number: nothing, or none of it. */
const NIL = /^(?:[-–—−]+|n\s?[./]?\s?a\.?|nil|none|null|k\.\s?A\.)$/iu;

/** Whether a text says that there is no number, or none of it. */
export function saysNone(text: string): boolean {
  return NIL.test(text);
}
