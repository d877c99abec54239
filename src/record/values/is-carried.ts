/** More digits than these are carried from a computed value. */
const MOST_DIGITS = 8;

/**
 * Whether an entry that holds a computed value, which nobody has typed, has more digits than a person reads: from the first
 * that counts, before its power of ten.
 */
export function isCarried(entry: string): boolean {
  const [number = ''] = entry.split(/e/i);
  return number.replace(/\D/g, '').replace(/^0+/, '').length > MOST_DIGITS;
}
