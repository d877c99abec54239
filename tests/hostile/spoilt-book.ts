import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Random } from '../recheck/random.ts';

/** The books that are shipped, and spoilt. */
const shipped = ['fender-energy', 'pile-bearing', 'bollard-pull', 'debris-haul', 'demo'].map((id) =>
  fileURLToPath(new URL(`../../templates/${id}/book.quaybook.json`, import.meta.url)),
);

/** A shipped book as a file, in which a text stands in place of a few of its texts, whichever come up. */
export function spoiltBook(random: Random, text: string): string {
  const file = readFileSync(random.pick(shipped), 'utf8');
  const texts = (JSON.stringify(JSON.parse(file)).match(/:"/g) ?? []).length;
  const spoilt = new Set(Array.from({ length: 1 + random.below(4) }, () => random.below(texts)));
  let at = 0;
  return JSON.stringify(
    JSON.parse(file, (key, value: unknown) => {
      if (typeof value !== 'string') return value;
      at += 1;
      // A book of another kind of line or another format is refused at once, which is seldom of interest.
      const isLaw = ['format', 'kind', 'id'].includes(key) && !random.oneIn(20);
      return spoilt.has(at) && !isLaw ? text : value;
    }),
  );
}
