/**
 * Moves places on a line apart so that neighbours keep a distance, each as near to where it wants to be as the others
 * let it, all between `least` and `most`; where there is too little room they stand closer. The order stays.
 */
export function spread(
  wanted: readonly number[],
  distance: number,
  least: number,
  most: number,
): readonly number[] {
  const order = wanted.map((_, at) => at).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const last = wanted.length - 1;
  const gap = last > 0 ? Math.min(distance, Math.max(most - least, 0) / last) : 0;
  // Less its share of the distances, each place must be no less than the one before: blocks of equal means do that.
  const blocks: { sum: number; count: number }[] = [];
  order.forEach((at, rank) => {
    let block = { sum: (wanted[at] ?? 0) - rank * gap, count: 1 };
    for (let before = blocks.at(-1); before && meanOf(before) > meanOf(block); before = blocks.at(-1)) {
      blocks.pop();
      block = { sum: before.sum + block.sum, count: before.count + block.count };
    }
    blocks.push(block);
  });
  const ceiling = most - Math.max(last, 0) * gap;
  const means = blocks.flatMap((block) => Array.from({ length: block.count }, () => meanOf(block)));
  const places: number[] = [];
  order.forEach((at, rank) => {
    places[at] = Math.max(least, Math.min(means[rank] ?? 0, ceiling)) + rank * gap;
  });
  return places;
}

function meanOf(block: { readonly sum: number; readonly count: number }): number {
  return block.sum / block.count;
}
