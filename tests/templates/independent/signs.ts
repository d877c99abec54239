import type { Cell, Drawn } from './program.ts';

/**
 * What was drawn, with every number below zero made none (NaN) but for quantities that have a sign: no length, force,
 * factor, count or rate is below zero, and what follows from one that was entered so is not known.
 *
 * @param signed levels, positions, angles, speeds with a direction and credits, as `sheet.line` and `sheet.table.column`
 */
export function withoutNegatives(drawn: Drawn, signed: ReadonlySet<string>): Drawn {
  const kept = (name: string, cell: Cell): Cell =>
    typeof cell === 'number' && cell < 0 && !signed.has(name) ? Number.NaN : cell;
  const all = (cells: Readonly<Record<string, Cell>>, prefix: string) =>
    Object.fromEntries(Object.entries(cells).map(([name, cell]) => [name, kept(`${prefix}${name}`, cell)]));
  return {
    lines: all(drawn.lines, ''),
    tables: Object.fromEntries(
      Object.entries(drawn.tables).map(([table, rows]) => [table, rows.map((row) => all(row, `${table}.`))]),
    ),
  };
}
