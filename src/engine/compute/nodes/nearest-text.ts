/** The text that differs least from one that was typed; undefined where the least differs in more than half its letters. */
export function nearestText(typed: string, texts: readonly string[]): string | undefined {
  const plain = (text: string): string => text.trim().toLowerCase();
  let best: string | undefined;
  let least = Math.floor(plain(typed).length / 2) + 1;
  for (const text of texts) {
    const apart = lettersApart(plain(typed), plain(text), least);
    if (apart >= least) continue;
    best = text;
    least = apart;
  }
  return best;
}

/** How many letters are to be put in, left out or changed to make one text of the other; not beyond a limit. */
function lettersApart(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let above = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let row = 1; row <= a.length; row += 1) {
    const here = [row];
    for (let at = 1; at <= b.length; at += 1) {
      const changed = (above[at - 1] ?? 0) + (a[row - 1] === b[at - 1] ? 0 : 1);
      here.push(Math.min(changed, (above[at] ?? 0) + 1, (here[at - 1] ?? 0) + 1));
    }
    above = here;
  }
  return Math.min(limit, above[b.length] ?? limit);
}
