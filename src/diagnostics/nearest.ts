/**
 * Candidates that look like a slip for `name`, nearest first: equal but for case, then by Damerau-Levenshtein
 * distance (insert, delete, replace, swap two neighbours), ties in the order given. A candidate further away than
 * a third of the longer word (at least one step) is not offered.
 */
export function nearest(name: string, candidates: Iterable<string>, max = 3): string[] {
  const folded = name.toLowerCase();
  const scored: { candidate: string; score: number }[] = [];
  for (const candidate of candidates) {
    const other = candidate.toLowerCase();
    if (other === folded) {
      scored.push({ candidate, score: candidate === name ? -1 : 0 });
      continue;
    }
    const allowed = Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 3));
    if (Math.abs(name.length - candidate.length) > allowed) continue;
    // A distance equal to the whole length means nothing is shared.
    const score = distance(folded, other);
    if (score <= allowed && score < Math.max(folded.length, other.length)) scored.push({ candidate, score });
  }
  return scored
    .sort((a, b) => a.score - b.score)
    .slice(0, max)
    .map(({ candidate }) => candidate);
}

/** Damerau-Levenshtein distance in its optimal string alignment form, over UTF-16 units. */
function distance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min((row[j - 1] ?? 0) + 1, (last[j] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, (beforeLast[j - 2] ?? 0) + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
