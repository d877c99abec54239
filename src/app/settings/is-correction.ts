/**
 * Whether a text is another one with something corrected in one place, not another text: what both begin and end with is
 * at least half of the longer one. Columns without headers are known by their place alone, so what was said of them stays
 * for the first and is asked anew for the second.
 */
export function isCorrection(before: string, after: string): boolean {
  const [short, long] = before.length < after.length ? [before, after] : [after, before];
  let leading = 0;
  while (leading < short.length && short[leading] === long[leading]) leading += 1;
  let trailing = 0;
  while (trailing < short.length - leading && short.at(-1 - trailing) === long.at(-1 - trailing))
    trailing += 1;
  return leading + trailing >= long.length / 2;
}
