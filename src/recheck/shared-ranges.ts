import type { GridCell, GridSheet } from './grid.ts';

/** Of fewer rows a range costs no more than what is done for it here. */
const FEW_ROWS = 32;

const column = /([A-Za-z]+\d*!\$[A-Z]+\$)(\d+)(:\$[A-Z]+\$)(\d+)/g;

/**
 * A sheet to be read before the others, which names every long range that several formulas read, without its last row.
 * HyperFormula links each cell of a range to it once more for every formula that reads it, unless it knows the range
 * that is one row shorter: so many formulas over one range would take rows times rows links.
 */
export function sharedRanges(sheets: readonly GridSheet[]): GridSheet {
  const uses = new Map<string, number>();
  const shorter: string[] = [];
  for (const formula of formulasOf(sheets))
    for (const [range, start = '', from = '', end = '', to = ''] of formula.matchAll(column)) {
      if (Number(to) - Number(from) < FEW_ROWS) continue;
      const before = uses.get(range) ?? 0;
      uses.set(range, before + 1);
      if (before === 1) shorter.push(`${start}${from}${end}${Number(to) - 1}`);
    }
  return { name: 'Ranges', rows: shorter.map((range) => [`=SUM(${range})`]) };
}

function* formulasOf(sheets: readonly GridSheet[]): Iterable<string> {
  const hasRange = (cell: GridCell): cell is string => typeof cell === 'string' && cell.includes(':');
  for (const { rows } of sheets) for (const row of rows) yield* row.filter(hasRange);
}
