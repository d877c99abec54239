/**
 * The rows of a curve worth drawing: all of them while they are few, else the first, last, least and greatest of each
 * of equal stretches, in order. A gap (NaN) inside a stretch is kept. At most about `most` rows.
 */
export function decimate(values: ArrayLike<number>, most: number): readonly number[] {
  const { length } = values;
  if (length <= most) return Array.from({ length }, (_, row) => row);
  const stretches = Math.max(1, Math.floor(most / 5));
  const rows: number[] = [];
  for (let at = 0; at < stretches; at += 1) {
    const from = Math.floor((at * length) / stretches);
    const to = Math.floor(((at + 1) * length) / stretches);
    let least = -1;
    let greatest = -1;
    let gap = -1;
    for (let row = from; row < to; row += 1) {
      const value = values[row] as number;
      if (Number.isNaN(value)) gap = row;
      else {
        if (least < 0 || value < (values[least] as number)) least = row;
        if (greatest < 0 || value > (values[greatest] as number)) greatest = row;
      }
    }
    const kept = new Set([from, least, greatest, gap, to - 1].filter((row) => row >= 0));
    rows.push(...[...kept].sort((a, b) => a - b));
  }
  return rows;
}
