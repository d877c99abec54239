/** Something that is in both lists: where it stands in either, and what it is known by, the same from both sides. */
export interface Standing {
  readonly before: number;
  readonly after: number;
  readonly label: string;
}

/**
 * Which of some things, by their positions in `standings`, have moved among one another: the fewest that, taken out and put
 * in elsewhere, make one order of the other. Of several such choices it is the same one whichever list is the old one.
 */
export function movedAmong(standings: readonly Standing[]): ReadonlySet<number> {
  const order = standings.map((_, at) => at).sort((a, b) => at(a).before - at(b).before);
  function at(index: number): Standing {
    return standings[index] as Standing;
  }
  if (order.every((one, i) => i === 0 || at(order[i - 1] as number).after < at(one).after)) return new Set();
  const places = new Map(
    standings
      .map(({ after }) => after)
      .sort((a, b) => a - b)
      .map((after, place) => [after, place + 1]),
  );
  const ends: (Chain | undefined)[] = new Array(standings.length + 1).fill(undefined);
  for (const one of order) {
    const { after, label } = at(one);
    const place = places.get(after) ?? 0;
    const before = longestUpTo(ends, place - 1);
    const chain: Chain = {
      last: one,
      length: (before?.length ?? 0) + 1,
      weight: (before?.weight ?? 0) + weightOf(label),
      ...(before && { before }),
    };
    for (let i = place; i < ends.length; i += i & -i) if (isLonger(chain, ends[i])) ends[i] = chain;
  }
  const moved = new Set(order);
  for (let chain = longestUpTo(ends, standings.length); chain; chain = chain.before) moved.delete(chain.last);
  return moved;
}

/** Things that stand in the same order in both lists, by its last one. */
interface Chain {
  readonly last: number;
  readonly length: number;
  /** Settles which of two chains of one length is taken. */
  readonly weight: number;
  readonly before?: Chain;
}

/** The longest chain that ends at one of the first places; `ends` is a binary indexed tree of the best so far. */
function longestUpTo(ends: readonly (Chain | undefined)[], place: number): Chain | undefined {
  let longest: Chain | undefined;
  for (let i = place; i > 0; i -= i & -i) {
    const chain = ends[i];
    if (chain && isLonger(chain, longest)) longest = chain;
  }
  return longest;
}

function isLonger(a: Chain, b: Chain | undefined): boolean {
  return b === undefined || a.length > b.length || (a.length === b.length && a.weight > b.weight);
}

/** A whole number below 2^32 made of the letters (FNV-1a): of a million of them the sum is still exact. */
function weightOf(label: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < label.length; i += 1) hash = Math.imul(hash ^ label.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
