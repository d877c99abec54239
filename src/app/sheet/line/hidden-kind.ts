import { saysOfItself } from '../../../record/index.ts';

/** So many letters of a reference are seen in the narrowest margin, whatever is cut off behind them. */
const SEEN = 28;
const WORDS = 'from memory';

/** What the margin says below a reference that is only remembered, where its own words for that may be cut off. */
export function hiddenKind(reference: string): string | undefined {
  if (saysOfItself(reference) !== WORDS) return undefined;
  const at = reference.toLowerCase().indexOf(WORDS);
  return at >= 0 && at + WORDS.length <= SEEN ? undefined : WORDS;
}
