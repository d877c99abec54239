/**
 * Whether a text is another one with something corrected in one place, not another text: the rows below its first line
 * are the same, or what both begin and end with is at least half of the longer one and of its rows. A key typed is a
 * correction of any text. What was said of a text stays for a correction of it, and is asked anew for another one.
 */
export function isCorrection(before: string, after: string): boolean {
  if (before.trim() === '' || after.trim() === '') return false;
  if (Math.max(before.length, after.length) - keptOf(before, after) <= 1) return true;
  const [rowsBefore, rowsAfter] = [rowsOf(before), rowsOf(after)];
  if (rowsBefore === rowsAfter && rowsAfter.trim() !== '') return true;
  return isHalfKept(before, after) && isHalfKept(rowsBefore, rowsAfter);
}

/** What stands below the first line. */
function rowsOf(text: string): string {
  const end = text.search(/\r\n?|\n/);
  return end < 0 ? '' : text.slice(end);
}

function isHalfKept(before: string, after: string): boolean {
  return keptOf(before, after) >= Math.max(before.length, after.length) / 2;
}

/** How many characters both begin and end with. */
function keptOf(before: string, after: string): number {
  const [short, long] = before.length < after.length ? [before, after] : [after, before];
  let leading = 0;
  while (leading < short.length && short[leading] === long[leading]) leading += 1;
  let trailing = 0;
  while (trailing < short.length - leading && short.at(-1 - trailing) === long.at(-1 - trailing))
    trailing += 1;
  return leading + trailing;
}
