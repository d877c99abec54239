import { type CallNode, type LoweringTools, partsOf, type Typed } from '../../language/index.ts';
import { address, type GridCell, type GridPlace, isAddress, type OpenSheet } from '../grid.ts';
import type { RecheckFormula } from '../program.ts';
import { lowerComparison } from './comparison.ts';
import type { Lowerer } from './lowerer.ts';
import { lowerNode } from './nodes.ts';
import { Obstacle } from './obstacle.ts';
import { type BookPlan, FIRST_ROW, placeOf, REFUSED, tableOf } from './plan.ts';
import { lowerSeriesCount } from './series.ts';
import { createHelpers, type Line, moves, ROOT, type Site } from './site.ts';
import type { WatchedCell } from './watched.ts';

/** Longer text is put into a cell of its own: where it may be written several times, and anywhere. */
const LONGEST_OPERAND = 48;
const LONGEST_TEXT = 300;

/** What lowering a formula leaves beside its values. */
export interface LoweredFormula {
  readonly watched: readonly WatchedCell[];
  readonly rowCount?: RowCount;
}

/** Where the number of rows stands that the series of a table makes. */
export interface RowCount {
  readonly table: string;
  readonly place: GridPlace;
}

/** Writes a formula into the cells of its value; a text is the reason it cannot, and nothing is left on the grid. */
export function lowerFormula(plan: BookPlan, cell: RecheckFormula): LoweredFormula | string {
  const lines = cell.table === undefined ? [] : linesOf(plan, cell.table);
  const width = lines[0] ? cellsOf(lines[0]).length : 0;
  const mark = plan.work.rows.length;
  try {
    plan.budget.begin(Math.max(1, lines.length));
    const lowered = cell.table === undefined ? lowerLine(plan, cell) : lowerColumn(plan, cell, lines);
    if (plan.work.rows.length > mark)
      plan.labels.push({ sheet: plan.work.name, row: mark, column: 0, text: cell.id });
    alignEnds(lines);
    return lowered;
  } catch (error) {
    if (!(error instanceof Obstacle)) throw error;
    plan.budget.undo();
    plan.work.rows.length = mark;
    for (const line of lines) cellsOf(line).length = width;
    return error.message;
  }
}

function lowerLine(plan: BookPlan, cell: RecheckFormula): LoweredFormula {
  const { lowerer, watched } = createLowerer(plan, cell, new Map());
  const { sheet, row, column } = placeOf(plan, cell.id);
  (sheet.rows[row] as GridCell[])[column] = `=${lowerer.lower(cell.tree, ROOT)}`;
  return { watched };
}

function lowerColumn(plan: BookPlan, cell: RecheckFormula, lines: readonly Line[]): LoweredFormula {
  const running = reserveRunning(cell.tree, lines);
  const { lowerer, watched, beginRow } = createLowerer(plan, cell, running);
  const { sheet, row: first, column } = placeOf(plan, cell.id);
  // The number of rows a series makes is of interest even where it makes none.
  const count = cell.tree.kind === 'series' ? lowerSeriesCount(cell.tree, lowerer) : undefined;
  for (const line of lines) {
    const row = line.row - FIRST_ROW;
    const site = siteOfRow(line.sheet, row);
    beginRow();
    for (const [call, at] of running) cellsOf(line)[at] = `=${runningStep(call, row, site, lowerer)}`;
    (sheet.rows[first + row] as GridCell[])[column] = `=${lowerer.lower(cell.tree, site)}`;
  }
  if (count === undefined) return { watched };
  return { watched, rowCount: { table: cell.table ?? '', place: lowerer.helper(count, ROOT).place } };
}

/** A column of the table's sheet for each running function of a formula, inner ones first. */
function reserveRunning(tree: Typed, lines: readonly Line[]): ReadonlyMap<CallNode, number> {
  const calls = new Set<CallNode>();
  const visit = (node: Typed): void => {
    for (const part of partsOf(node)) visit(part);
    if (node.kind === 'call' && node.fn.evaluate.kind === 'scan') calls.add(node);
  };
  visit(tree);
  const first = lines[0] ? cellsOf(lines[0]).length : 0;
  for (const line of lines) for (const _ of calls) cellsOf(line).push(null);
  return new Map(Array.from(calls, (call, at) => [call, first + at]));
}

/** The running value on one row: the row above's and this row's. */
function runningStep(call: CallNode, row: number, site: Site, lowerer: Lowerer): string {
  const [arg] = call.args;
  if (!arg || !call.fn.lower) throw new Error(`${call.fn.name} has no step to lower`);
  const value = lowerer.operand(arg, site);
  return row === 0
    ? value
    : call.fn.lower([lowerer.running(call, row - 1), value], [], call.options, lowerer.tools(site));
}

function createLowerer(plan: BookPlan, cell: RecheckFormula, running: ReadonlyMap<Typed, number>) {
  const { constants } = plan;
  const helpers = createHelpers(plan.work, plan.written, () => constants.number(1), plan.budget.spend);
  const watched: WatchedCell[] = [];
  const forAll = new Map<Typed, string>();
  const forRow = new Map<Typed, string>();
  const sheet = cell.table === undefined ? '' : tableOf(plan, cell.table).sheet.name;

  const inCell = (formula: string, site: Site): string =>
    isAddress(formula) ? formula : helpers.cell(formula, site).at;
  const remembered = (memo: Map<Typed, string>, node: Typed, write: () => string): string => {
    const known = memo.get(node) ?? write();
    memo.set(node, known);
    return known;
  };
  const shortened = (formula: string, site: Site): string =>
    formula.length > LONGEST_TEXT ? inCell(formula, site) : formula;

  const lowerer: Lowerer = {
    plan,
    helpers,
    table: cell.table,
    helper: helpers.cell,
    shortened,
    lower: (node, site) => shortened(lowerNode(node, site, lowerer), site),
    operand: (node, site) => {
      const formula = lowerNode(node, site, lowerer);
      return formula.length > LONGEST_OPERAND ? inCell(formula, site) : formula;
    },
    writtenOnce: (node, site) => {
      const formula = lowerNode(node, site, lowerer);
      const most = moves(formula) ? LONGEST_TEXT : LONGEST_OPERAND;
      return formula.length > most ? inCell(formula, site) : formula;
    },
    cell: (node, site) => inCell(lowerNode(node, site, lowerer), site),
    once: (node, write) => remembered(forAll, node, () => inCell(write(), ROOT)),
    onceARow: (node, { row = 0 }, write) =>
      remembered(forRow, node, () => {
        const site = siteOfRow(tableOf(plan, cell.table ?? '').sheet, row);
        return inCell(write(site), site);
      }),
    running: (node, row) => {
      const column = running.get(node);
      if (column === undefined) throw new Error(`${cell.id} has a running function nobody counted`);
      return address(sheet, FIRST_ROW + row, column, true);
    },
    tools: (site): LoweringTools => ({
      constant: constants.number,
      helper: (formula) => inCell(formula, site),
      column: (count, formula) => helpers.block(count, (at) => formula(at), site),
      compare: (op, left, right) => lowerComparison(op, left, right, constants),
      refused: REFUSED,
    }),
    watch: (hazard, place, row) =>
      watched.push({ id: cell.id, hazard, place, ...(row !== undefined && { row }) }),
  };
  return { lowerer, watched, beginRow: () => forRow.clear() };
}

function siteOfRow(sheet: OpenSheet, row: number): Site {
  return { line: { sheet, row: FIRST_ROW + row }, row, fresh: new Map() };
}

function linesOf(plan: BookPlan, id: string): readonly Line[] {
  const { table, sheet } = tableOf(plan, id);
  return Array.from({ length: table.rows }, (_, row) => ({ sheet, row: FIRST_ROW + row }));
}

function cellsOf({ sheet, row }: Line): GridCell[] {
  return sheet.rows[row] as GridCell[];
}

/** Makes all rows equally long again, so that the helper cells of the next formula stand below one another. */
function alignEnds(lines: readonly Line[]): void {
  const width = lines.reduce((most, line) => Math.max(most, cellsOf(line).length), 0);
  for (const line of lines) {
    const cells = cellsOf(line);
    while (cells.length < width) cells.push(null);
  }
}
