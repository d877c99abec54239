import { type Book, type Edit, joinEdits } from '../../../src/document/index.ts';
import { enterRows, enterValues } from '../../../src/notebook/index.ts';
import { type Cell, type Drawn, fellows, type IndependentProgram, type Random } from './program.ts';

/** The edit that enters what was drawn, each number in the unit of its name or in that of the other system. */
export function enterDrawn(book: Book, { units }: IndependentProgram, drawn: Drawn, random: Random): Edit {
  const written = (name: string, cell: Cell): string => {
    if (typeof cell !== 'number') return cell ?? '';
    const unit = Object.hasOwn(units, name) ? units[name] : undefined;
    if (unit === undefined || unit === '-') return writeNumber(cell);
    const fellow = fellows[unit];
    if (!fellow || random.chance(0.5)) return `${writeNumber(cell)} ${unit}`;
    return `${writeNumber(cell * fellow[1])} ${fellow[0]}`;
  };
  const lines = Object.entries(drawn.lines).map(([name, cell]) => [name, written(name, cell)] as const);
  const edits = [
    ...Object.entries(drawn.tables).map(([table, rows]) =>
      enterRows(
        book,
        table,
        rows.map((row) => mapRow(row, (column, cell) => written(`${table}.${column}`, cell))),
        'drawn',
      ),
    ),
    enterValues(book, Object.fromEntries(lines), 'drawn'),
  ].map((outcome) => {
    if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
    return outcome.value;
  });
  return joinEdits('enter what was drawn', edits);
}

/** All digits of a number, written without an exponent where that is short. */
function writeNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} cannot be entered`);
  return String(Number(value.toPrecision(15)));
}

function mapRow(
  row: Readonly<Record<string, Cell>>,
  write: (column: string, cell: Cell) => string,
): Readonly<Record<string, string | null>> {
  return Object.fromEntries(
    Object.entries(row).map(([column, cell]) => [column, cell === null ? null : write(column, cell)]),
  );
}
