/**
 * How the columns of a table, of some widths in px, stand on paper within some room: all side by side, or in bands one
 * below the other, each beginning with the first column, by which its rows are known. `number` is the width of the rows'
 * numbers.
 */
export function printBands(
  widths: readonly number[],
  number: number,
  room: number,
): readonly (readonly number[])[] {
  const first = widths[0] ?? 0;
  const bands: { columns: number[]; width: number }[] = [];
  for (const [column, width] of widths.entries()) {
    const band = bands.at(-1);
    if (band && band.width + width <= room) {
      band.columns.push(column);
      band.width += width;
    } else if (column === 0) bands.push({ columns: [0], width: number + width });
    else bands.push({ columns: [0, column], width: number + first + width });
  }
  return bands.map(({ columns }) => columns);
}
