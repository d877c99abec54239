import {
  type Axis,
  type CallNode,
  type Lower,
  type LoweredColumn,
  type Parameter,
  partsOf,
  referencesOf,
  type Typed,
  unionAxes,
} from '../../language/index.ts';
import { address } from '../grid.ts';
import type { RecheckCell } from '../program.ts';
import type { Lowerer } from './lowerer.ts';
import { type BookPlan, placeOf, REFUSED, tableOf } from './plan.ts';
import { pickFrom, searchOf } from './search.ts';
import { belowOneAnother, type FreshRow, onlyOne, ROOT, type Site } from './site.ts';

/**
 * An aggregate, a lookup or an interpolation. What depends on no row is lowered once for the formula, what depends on
 * the formula's row once a row, and the rest wherever it stands.
 */
export function lowerGather(node: CallNode, lower: Lower, site: Site, lowerer: Lowerer): string {
  const { axes } = node.type;
  const write = (at: Site) => writeGather(node, lower, at, lowerer);
  if (axes.length === 0) return site === ROOT ? write(ROOT) : lowerer.once(node, () => write(ROOT));
  if (site.fresh.size > 0 && !axes.some((axis) => axis.fresh)) return lowerer.onceARow(node, site, write);
  return write(site);
}

function writeGather(node: CallNode, lower: Lower, site: Site, lowerer: Lowerer): string {
  const { fn, args } = node;
  const parameters = args.map((_, at) => parameterOf(node, at));
  const gathered = args.filter((_, at) => parameters[at]?.role === 'column');
  const pooled = fn.evaluate.kind === 'gather' && fn.evaluate.pooled === true;
  const common = freshTables(unionAxes(gathered.map((arg) => arg.type.axes)));
  if (common.some((table) => tableOf(lowerer.plan, table).table.failed)) return REFUSED;
  if (gathered.some((arg) => runsOverFailed(arg, common, lowerer.plan))) return REFUSED;
  const columns = gathered.map((arg) =>
    gatherArgument(arg, pooled ? freshTables(arg.type.axes) : common, site, lowerer),
  );
  const single = args.filter((_, at) => parameters[at]?.role !== 'column');
  const each = single.map((arg) => lowerer.operand(arg, site));
  const formula = `(${lower(each, columns, node.options, lowerer.tools(site))})`;
  if (pooled) return formula;
  const searched = parameters.filter(({ role }) => role === 'column');
  return whereAllKnown(
    formula,
    columns.filter((_, at) => !searched[at]?.picked),
    lowerer,
  );
}

/**
 * A gathered element without a value leaves the whole call without one, whether the call needs it or not; a column
 * one element is picked from is an exception.
 */
function whereAllKnown(formula: string, columns: readonly LoweredColumn[], { plan }: Lowerer): string {
  if (columns.length === 0) return formula;
  const all = columns.map((column) => column.range).join(',');
  return `IF(ABS(SUM(${all}))>=${plan.constants.number(0)},${formula},${REFUSED})`;
}

/** The parameter of an argument; the options are not among the arguments. */
function parameterOf({ fn }: CallNode, at: number): Parameter {
  const parameters = fn.parameters.filter(({ role }) => role !== 'option');
  const first = parameters.findIndex(({ repeats }) => repeats);
  const wraps = first >= 0 && at >= first;
  const parameter = parameters[wraps ? first + ((at - first) % (parameters.length - first)) : at];
  if (!parameter) throw new Error(`${fn.name} has no parameter for argument ${at + 1}`);
  return parameter;
}

function freshTables(axes: readonly Axis[]): readonly string[] {
  return axes.filter((axis) => axis.fresh).map((axis) => axis.table);
}

/** Whether an argument names a whole column none of whose rows can have a value, wherever a branch would lead. */
function runsOverFailed(arg: Typed, tables: readonly string[], plan: BookPlan): boolean {
  if (arg.kind !== 'column') return partsOf(arg).some((part) => runsOverFailed(part, tables, plan));
  const { cell } = placeOf(plan, arg.id);
  if (cell.kind === 'input' || !tables.includes(cell.table ?? '')) return false;
  return cell.kind === 'formula'
    ? cell.tree.kind === 'broken'
    : cell.entries.length > 0 && cell.entries.every(({ kind }) => kind === 'failed');
}

/** INDEX reads the whole column for each row it stands in: of more rows one element is picked otherwise. */
const MOST_INDEXED = 32;

/** One gathered argument over the rows of its tables, every combination of several, the last running fastest. */
function gatherArgument(arg: Typed, tables: readonly string[], site: Site, lowerer: Lowerer): LoweredColumn {
  const { plan, helpers } = lowerer;
  if (tables.length === 0) return onlyOne(lowerer.cell(arg, site));
  if (arg.kind === 'known') return knownRows(arg.column.id, site, lowerer);
  const pinned = site.line !== undefined;
  if (arg.kind === 'column' && tables.length === 1) {
    const { sheet, row, column, count = 0 } = placeOf(plan, arg.id);
    const range = belowOneAnother(sheet.name, row, column, count, !pinned);
    const picked = pinned &&
      count > MOST_INDEXED && { pick: (place: string) => pickFrom(arg.id, range, plan, place) };
    return { ...range, ...picked, search: searchOf(arg.id, range, plan) };
  }
  const lengths = tables.map((table) => tableOf(plan, table).table.rows);
  const count = lengths.reduce((product, length) => product * length, 1);
  return helpers.block(
    count,
    (at, own) => {
      const fresh = new Map(site.fresh);
      let rest = at;
      for (let k = tables.length - 1; k >= 0; k -= 1) {
        const length = lengths[k] as number;
        fresh.set(tables[k] as string, { row: rest % length, moving: !pinned } satisfies FreshRow);
        rest = Math.floor(rest / length);
      }
      return lowerer.lower(arg, { ...own, fresh });
    },
    site,
  );
}

/**
 * The rows of a column that are not blank, copied below one another. For a calculated column the engine's word is
 * taken which rows have a value, and that word is checked where the column itself is.
 */
function knownRows(id: string, site: Site, { plan, helpers }: Lowerer): LoweredColumn {
  const { sheet, row, column, count = 0 } = placeOf(plan, id);
  const filled = Array.from({ length: count }, (_, at) => at).filter((at) => !isBlankRow(id, at, plan));
  if (filled.length === count)
    return belowOneAnother(sheet.name, row, column, count, site.line === undefined);
  return helpers.block(
    filled.length,
    (at) => address(sheet.name, row + (filled[at] as number), column),
    site,
  );
}

/** Whether a row has no value only for a blank entry in the same row of its table. */
function isBlankRow(id: string, at: number, plan: BookPlan, visited = new Set<string>()): boolean {
  const { cell } = placeOf(plan, id);
  if (cell.kind === 'column') return (cell.entries[at]?.kind ?? 'missing') === 'missing';
  if (cell.kind === 'input' || visited.has(id) || plan.values(id, at) !== undefined) return false;
  visited.add(id);
  return [...referencesOf(cell.tree)].some(
    (source) =>
      tableOfCell(placeOf(plan, source).cell) === cell.table && isBlankRow(source, at, plan, visited),
  );
}

function tableOfCell(cell: RecheckCell): string | undefined {
  return cell.kind === 'input' ? undefined : cell.table;
}
