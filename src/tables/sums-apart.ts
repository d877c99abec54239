import { type Problem, problem } from '../diagnostics/index.ts';
import { isNumeric, type TableCell } from './column.ts';
import type { TakenColumn } from './mapping.ts';
import { isKept } from './other-rows.ts';
import type { Consents } from './reading.ts';
import type { TextRow } from './records.ts';
import type { RowKind } from './row-kinds.ts';
import { addTo, isWithin, noRun, numberIn, type Run, stepOf } from './row-sums.ts';

/** The kinds of rows that say what others come to. */
const SUMS: ReadonlySet<RowKind | undefined> = new Set(['total', 'sum', 'all']);

/** What the items come to in one column, and the least and greatest of them. */
interface Items extends Run {
  least: number;
  most: number;
}

const none = (): Items => ({ ...noRun(), least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY });

/**
 * The numbers of totals left out that the rows above them do not come to: a row is missing then, or a number is another
 * one. A total may be of all rows above it, or of those since any total before. A number between the least and the
 * greatest of the rows is their mean, and no sum.
 *
 * @param cells the taken cells by column, as far as `rows`
 */
export function sumsApart(
  rows: readonly TextRow[],
  kinds: ReadonlyMap<TextRow, RowKind>,
  taken: readonly TakenColumn[],
  cells: readonly (readonly TableCell[])[],
  consents: Consents,
): readonly Problem[] {
  // Most texts have none, however long they are.
  if (![...kinds.values()].some((kind) => SUMS.has(kind) && !isKept(kind, consents))) return [];
  return taken.flatMap(({ column, header, unitsAt }, at) => {
    const own = cells[at] ?? [];
    // Numbers in several units add up to nothing.
    if (!isNumeric(column) || unitsAt !== undefined || new Set(own.flatMap(behindNumber)).size > 1) return [];
    let runs = [none()];
    return rows.flatMap((row, index) => {
      const kind = kinds.get(row);
      const x = numberIn(own[index] ?? null);
      const step = stepOf(own[index] ?? null);
      if (isKept(kind, consents)) {
        if (x !== undefined) for (const run of runs) count(run, x, step);
        return [];
      }
      if (!SUMS.has(kind)) return [];
      const found = x === undefined ? undefined : nearestRun(x, runs);
      runs = [...runs.filter(({ summands }) => summands > 0), none()];
      if (x === undefined || found === undefined || isSame(x, found.sum)) return [];
      const isRounding = isWithin(x, step, found, false);
      const facts = { line: row.line, header, said: x, sum: rounded(found.sum), isRounding };
      return [problem('total-apart', { from: 0, to: 0 }, facts)];
    });
  });
}

/** What stands behind the number of a cell: its unit, where the text has another one than the column. */
function behindNumber(cell: TableCell): readonly string[] {
  if (cell === null) return [];
  if (typeof cell === 'number') return [''];
  return [cell.replace(/^[-\d., '’\u00a0\u2009\u202f]*(?:e[+-]?\d+)?/i, '').trim()];
}

function count(run: Items, x: number, step: number): void {
  addTo(run, x, step);
  run.least = Math.min(run.least, x);
  run.most = Math.max(run.most, x);
}

/** The sum that a total is nearest to; none where it is the mean of the rows, or no sum of any. */
function nearestRun(x: number, runs: readonly Items[]): Items | undefined {
  const far = ({ sum }: Items): number => Math.abs(x - sum);
  const [first = none(), ...more] = runs.filter(({ summands }) => summands > 0 || runs.length === 1);
  const nearest = more.reduce((best, run) => (far(run) < far(best) ? run : best), first);
  const { summands, least, most } = nearest;
  const isMean = summands > 1 && x >= least && x <= most;
  return isMean && !isSame(x, nearest.sum) ? undefined : nearest;
}

const isSame = (x: number, sum: number): boolean => Math.abs(x - sum) <= 1e-9 * Math.max(Math.abs(sum), 1);

/** Without what the binary sum of decimals leaves over. */
const rounded = (sum: number): number => Number(sum.toPrecision(12));
