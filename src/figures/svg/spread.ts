/**
 * Moves places on a line apart so that neighbours keep a distance, each as near to where it wants to be as the others
 * let it, all between `least` and `most` while there is room for them. The order of the places stays.
 */
export function spread(
  wanted: readonly number[],
  distance: number,
  least: number,
  most: number,
): readonly number[] {
  const order = wanted.map((_, at) => at).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const room = wanted.length > 1 ? (most - least) / (wanted.length - 1) : distance;
  const gap = Math.min(distance, Math.max(room, 0));
  // Blocks of places that touch; a block sits at the mean of what its members want.
  const blocks: { sum: number; count: number }[] = [];
  for (const at of order) {
    blocks.push({ sum: wanted[at] ?? 0, count: 1 });
    for (;;) {
      const last = blocks.at(-1);
      const before = blocks.at(-2);
      if (!last || !before || startOf(last, gap) - endOf(before, gap) >= gap) break;
      // Shifting each member to where the first of the joined block would stand.
      blocks.splice(-2, 2, {
        sum: before.sum + last.sum - before.count * last.count * gap + overlapShift(before, last, gap),
        count: before.count + last.count,
      });
    }
  }
  const places: number[] = [];
  let floor = least;
  blocks.forEach((block, at) => {
    const after = blocks.slice(at + 1).reduce((sum, one) => sum + one.count, 0);
    const ceiling = most - (block.count - 1 + after) * gap;
    const start = Math.max(floor, Math.min(startOf(block, gap), ceiling));
    for (let i = 0; i < block.count; i += 1) places.push(start + i * gap);
    floor = start + block.count * gap;
  });
  const result: number[] = [];
  order.forEach((at, place) => {
    result[at] = places[place] ?? 0;
  });
  return result;
}
