/** The room for a table across a printed page in px, and how small a table may be set to fit into it. */
const ROOM = 670;
const LEAST_FIT = 0.72;

/** The columns of a table on paper by index, those side by side together, and the factor that fits them all to it. */
export interface Bands {
  readonly bands: readonly (readonly number[])[];
  readonly fit: number;
}

/**
 * How the columns of a table, of some widths in px, stand on paper: all side by side, or in bands one below the other,
 * each beginning with the first column, by which its rows are known. `number` is the width of the rows' numbers.
 */
export function printBands(widths: readonly number[], number: number): Bands {
  const most = ROOM / LEAST_FIT;
  const first = widths[0] ?? 0;
  const bands: { columns: number[]; width: number }[] = [];
  for (const [column, width] of widths.entries()) {
    const band = bands.at(-1);
    if (band && band.width + width <= most) {
      band.columns.push(column);
      band.width += width;
    } else if (column === 0) bands.push({ columns: [0], width: number + width });
    else bands.push({ columns: [0, column], width: number + first + width });
  }
  const widest = Math.max(...bands.map(({ width }) => width));
  return { bands: bands.map(({ columns }) => columns), fit: Math.min(1, ROOM / widest) };
}
