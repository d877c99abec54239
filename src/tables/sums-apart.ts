import { type Problem, problem } from '../diagnostics/index.ts';
import { type UnitRegistry, unitInPrint } from '../units/index.ts';
import { isNumeric, type TableCell } from './column.ts';
import { behindNumber, unitFactors } from './common-unit.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import { isKept } from './other-rows.ts';
import type { Consents } from './reading.ts';
import type { TextRow } from './records.ts';
import type { RowKind } from './row-kinds.ts';
import { addTo, isWithin, noRun, numberIn, type Run, stepOf } from './row-sums.ts';

const NOWHERE = { from: 0, to: 0 };

/** The kinds of rows that say what others come to. */
const SUMS: ReadonlySet<RowKind | undefined> = new Set(['total', 'sum', 'all']);

/** What adds up wherever it stands: areas, volumes, masses. A thickness or a rate may have its mean beside a total. */
const ADDED: ReadonlySet<string> = new Set(['L^2', 'L^3', 'M']);

/** What the items come to in one column, and the least and greatest of them. */
interface Items extends Run {
  least: number;
  most: number;
}

const none = (): Items => ({ ...noRun(), least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY });

/** What a total says in one column beside what the rows above it come to: `mean` where it may be their mean. */
interface Compared {
  readonly row: TextRow;
  readonly is: 'same' | 'apart' | 'mean' | 'open';
  readonly problem: Problem | undefined;
}

/**
 * The numbers of totals left out that the rows above them do not come to: a row is missing then, or a number is another
 * one. A total may be of all rows above it, or of those since any total before. Numbers in several units are compared in
 * one of them, and where they cannot be, that is told. A number between the least and the greatest of the rows may be
 * their mean, where something beside it tells that sums stand in the row, or where it is the mean.
 *
 * @param cells the taken cells by column, as far as `rows`
 */
export function sumsApart(
  rows: readonly TextRow[],
  kinds: ReadonlyMap<TextRow, RowKind>,
  taken: readonly TakenColumn[],
  cells: readonly (readonly TableCell[])[],
  registry: UnitRegistry,
  consents: Consents,
): readonly Problem[] {
  // Most texts have none, however long they are.
  if (![...kinds.values()].some((kind) => SUMS.has(kind) && !isKept(kind, consents))) return [];
  const compared = taken.map((one, at) =>
    isNumeric(one.column) ? totalsOf(rows, kinds, one, cells[at] ?? [], registry, consents) : [],
  );
  const summed = new Set(
    compared.flatMap((column) => column.flatMap(({ row, is }) => (is === 'mean' ? [] : [row]))),
  );
  return compared.flatMap((column) =>
    column.flatMap(({ row, is, problem: found }) =>
      found && !(is === 'mean' && summed.has(row)) ? [found] : [],
    ),
  );
}

/** The totals of one column, each beside the rows above it. */
function totalsOf(
  rows: readonly TextRow[],
  kinds: ReadonlyMap<TextRow, RowKind>,
  one: TakenColumn,
  own: readonly TableCell[],
  registry: UnitRegistry,
  consents: Consents,
): readonly Compared[] {
  const isItem = (row: TextRow): boolean => isKept(kinds.get(row), consents);
  const items = new Set(own.flatMap((cell, at) => unitIn(cell, rows[at], isItem) ?? []));
  const [alone = ''] = items.size === 1 ? items : [];
  // A total whose row says no unit is in that of the rows, where they have but one.
  const unitAt = (at: number): string | undefined => {
    const unit = behindNumber(own[at] ?? null);
    const row = rows[at];
    if (unit !== '' || one.unitsAt === undefined || !row || isItem(row)) return unit;
    return items.size === 1 ? alone : undefined;
  };
  const units = new Set(own.flatMap((_, at) => unitAt(at) ?? []));
  const headed = one.unit !== '' && one.unit !== '-' ? one.unit : one.column.unit;
  const common = headed ?? [...units].find((unit) => unit !== '') ?? '';
  const factors = units.size > 1 ? unitFactors(units, common, registry) : undefined;
  const factorAt = (at: number): number | undefined => {
    const unit = unitAt(at);
    return unit === undefined ? undefined : factors ? factors.get(unit) : 1;
  };
  const isAdded = ADDED.has(unitOfColumn(one.column, registry)?.dimension.key ?? '');
  const written = ({ cells }: TextRow): string => cells[one.position]?.trim() ?? '';
  let runs = [none()];
  let unread = '';
  return rows.flatMap((row, at): Compared[] => {
    const cell = own[at] ?? null;
    const number = numberIn(cell);
    const factor = factorAt(at);
    if (isItem(row)) {
      if (number === undefined) return [];
      if (factor === undefined) unread = written(row);
      else for (const run of runs) count(run, number * factor, stepOf(cell) * factor);
      return [];
    }
    if (!SUMS.has(kinds.get(row))) return [];
    const { line } = row;
    const { header } = one;
    if (number !== undefined && (factor === undefined || unread !== '')) {
      const facts = { line, header, said: written(row), other: factor === undefined ? '' : unread };
      return [{ row, is: 'open', problem: problem('total-uncompared', NOWHERE, facts) }];
    }
    const x = number === undefined ? undefined : number * (factor ?? 1);
    const found = x === undefined ? undefined : nearestRun(x, runs);
    runs = [...runs.filter(({ summands }) => summands > 0), none()];
    if (x === undefined || found === undefined) return [];
    if (isSame(x, found.sum)) return [{ row, is: 'same', problem: undefined }];
    const isRounding = isWithin(x, stepOf(cell) * (factor ?? 1), found, false);
    const isMean = !isAdded && found.summands > 1 && x >= found.least && x <= found.most;
    if (isMean && isSame(x, found.sum / found.summands)) return [];
    const facts = {
      line,
      header,
      said: rounded(x, factors),
      sum: rounded(found.sum, factors),
      unit: factors ? unitInPrint(common) : '',
      written: factor === undefined || factor === 1 ? '' : written(row),
      isRounding,
    };
    return [{ row, is: isMean ? 'mean' : 'apart', problem: problem('total-apart', NOWHERE, facts) }];
  });
}

function unitIn(
  cell: TableCell,
  row: TextRow | undefined,
  isItem: (row: TextRow) => boolean,
): string | undefined {
  return row && isItem(row) && numberIn(cell) !== undefined ? behindNumber(cell) : undefined;
}

function count(run: Items, x: number, step: number): void {
  addTo(run, x, step);
  run.least = Math.min(run.least, x);
  run.most = Math.max(run.most, x);
}

/** The sum that a total is nearest to. */
function nearestRun(x: number, runs: readonly Items[]): Items {
  const far = ({ sum }: Items): number => Math.abs(x - sum);
  const [first = none(), ...more] = runs.filter(({ summands }) => summands > 0 || runs.length === 1);
  return more.reduce((best, run) => (far(run) < far(best) ? run : best), first);
}

const isSame = (x: number, sum: number): boolean => Math.abs(x - sum) <= 1e-9 * Math.max(Math.abs(sum), 1);

/** Without what the binary sum of decimals leaves over; converted ones to the digits that tell a difference. */
function rounded(x: number, factors: unknown): number {
  return Number(x.toPrecision(factors ? 6 : 12));
}
