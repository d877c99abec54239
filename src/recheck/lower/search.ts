import type { BesideElement, LoweredColumn, LoweredOrder, LoweredSearch } from '../../language/index.ts';
import { areEqual } from '../../units/index.ts';
import { address, columnRange, type GridCell, type OpenSheet } from '../grid.ts';
import { lowerComparison } from './comparison.ts';
import { type BookPlan, REFUSED, type Searches } from './plan.ts';

/** Beyond every element of a column that can be searched. */
const BEYOND = 1e300;

/** What stands on a line of an order, from the second column on; the step that proves it comes after. */
const BESIDE: readonly BesideElement[] = ['here', 'only', 'first', 'next', 'next only', 'next first'];
const FIRST = 1;
const STEP = FIRST + BESIDE.length;

/** A book's searches, of which nothing is written yet. */
export function createSearches(): Searches {
  return { sheet: { name: 'Search', rows: [] }, orders: new Map(), rises: new Map(), picks: new Map() };
}

/**
 * How a column of the book is searched by the second engine's own search of an ascending column. In which order it
 * ascends is taken from the engine's values and proved on the grid; what is found is proved where it is used.
 */
export function searchOf(id: string, column: LoweredColumn, plan: BookPlan): LoweredSearch {
  const { orders, rises } = plan.searches;
  return {
    rises: () => remembered(rises, id, () => writeRises(id, column, plan)),
    countUpTo: (value) =>
      `IF(${value}<${column.cell(0)},${plan.constants.number(0)},MATCH(${value},${column.range}))`,
    order: () => {
      const known = remembered(orders, id, () => writeOrder(id, column, plan) ?? 'none');
      return known === 'none' ? undefined : known;
    },
  };
}

/** The element at a whole place from 1; INDEX would read the whole column each time. */
export function pickFrom(id: string, column: LoweredColumn, plan: BookPlan, place: string): string {
  const { sheet, picks } = plan.searches;
  const range = remembered(picks, id, () => {
    plan.budget.share(column.count);
    const first = begin(plan, id, column.count);
    for (let at = 0; at < column.count; at += 1)
      (sheet.rows[first + at] as GridCell[]).push(at + 1, `=${column.cell(at)}`);
    return blockRange(sheet, first, column.count, FIRST + 1);
  });
  return `VLOOKUP(${place},${range},${plan.constants.number(2)})`;
}

function writeRises(id: string, { count, cell }: LoweredColumn, plan: BookPlan): string {
  const steps = count - 1;
  plan.budget.share(count);
  const first = begin(plan, id, count);
  for (let at = 0; at < steps; at += 1) put(plan, first + at, holds('<', cell(at), cell(at + 1), plan));
  return allHold(plan, first, FIRST, steps, first + steps);
}

function writeOrder(id: string, { count, cell }: LoweredColumn, plan: BookPlan): LoweredOrder | undefined {
  const { number } = plan.constants;
  const elements = Array.from({ length: count }, (_, row) => numberOf(id, row, plan));
  const gap = elements.indexOf(undefined);
  if (gap >= 0) return { gap: cell(gap), holds: number(0), beside: () => REFUSED };
  const groups = groupsOf(elements as readonly number[]);
  if (!groups) return undefined;

  plan.budget.share(2 * groups.length + count + 2);
  const { sheet } = plan.searches;
  const first = begin(plan, id, count + 2);
  const cellAt = (line: number, column: number): string => address(sheet.name, first + line, column, true);
  const facts = (rows: readonly number[] | undefined): readonly GridCell[] => {
    const row = rows?.[0];
    return row === undefined ? [null, null] : [rows?.length === 1 ? row + 1 : `=${REFUSED}`, row + 1];
  };
  const after = (line: number): readonly GridCell[] =>
    line === groups.length ? [BEYOND, null, null] : [`=${cellAt(line + 1, FIRST)}`, ...facts(groups[line])];
  const line = (at: number): GridCell[] => sheet.rows[first + at] as GridCell[];
  line(0).push(-BEYOND, null, null, ...after(0), null);
  for (const [at, rows] of groups.entries()) {
    const here = cellAt(at + 1, FIRST);
    // A truth value counts as a number, which it is not to a search.
    const element = `=${cell(rows[0] as number)}+${number(0)}`;
    line(at + 1).push(
      element,
      ...facts(rows),
      ...after(at + 1),
      `=${holds('<', cellAt(at, FIRST), here, plan)}`,
    );
  }
  // The others that are said to be equal.
  let end = groups.length + 1;
  for (const [at, rows] of groups.entries())
    for (const row of rows.slice(1)) {
      line(end).push(...BESIDE.map(() => null), `=${holds('=', cell(row), cellAt(at + 1, FIRST), plan)}`);
      end += 1;
    }
  const range = blockRange(sheet, first, groups.length + 1, BESIDE.length);
  return {
    holds: allHold(plan, first + 1, STEP, count, first + end),
    beside: (value, what) => `VLOOKUP(${value}+${number(0)},${range},${number(BESIDE.indexOf(what) + 1)})`,
  };
}

/** The rows of each different element, in ascending order; undefined where two are equal to the tolerance only. */
function groupsOf(elements: readonly number[]): readonly (readonly number[])[] | undefined {
  const of = (row: number): number => elements[row] as number;
  const groups: number[][] = [];
  for (const row of [...elements.keys()].sort((a, b) => of(a) - of(b) || a - b)) {
    const group = groups.at(-1);
    const before = group && of(group[0] as number);
    if (before === of(row)) group?.push(row);
    else if (before !== undefined && areEqual(before, of(row))) return undefined;
    else groups.push([row]);
  }
  return groups;
}

function numberOf(id: string, row: number, { texts, values }: BookPlan): number | undefined {
  const value = values(id, row);
  return typeof value === 'string' ? texts.codeOf(value) : value === undefined ? undefined : Number(value);
}

function remembered<T>(memo: Map<string, T>, id: string, write: () => T): T {
  const known = memo.get(id) ?? write();
  memo.set(id, known);
  return known;
}

/** Begins so many lines of the sheet, and one for what is said of them; gives the first. */
function begin({ searches: { sheet }, labels }: BookPlan, id: string, lines: number): number {
  const first = sheet.rows.length;
  for (let at = 0; at <= lines; at += 1) sheet.rows.push([null]);
  labels.push({ sheet: sheet.name, row: first, column: 0, text: id });
  return first;
}

function put({ searches: { sheet } }: BookPlan, row: number, formula: string): void {
  (sheet.rows[row] as GridCell[]).push(`=${formula}`);
}

/** 1 where a comparison holds, else 0. */
function holds(op: '<' | '=', left: string, right: string, { constants }: BookPlan): string {
  return `IF(${lowerComparison(op, left, right, constants)},${constants.number(1)},${constants.number(0)})`;
}

/** A cell on a line of its own that holds 1 where all of so many below one another do. */
function allHold(plan: BookPlan, first: number, column: number, count: number, row: number): string {
  const { sheet } = plan.searches;
  const { number } = plan.constants;
  const sum = `SUM(${columnRange(sheet.name, first, column, Math.max(1, count))})`;
  put(plan, row, `IF(${sum}=${number(count)},${number(1)},${number(0)})`);
  return address(sheet.name, row, FIRST);
}

function blockRange({ name }: OpenSheet, row: number, count: number, width: number): string {
  const [from, to] = [address(name, row, FIRST), address(name, row + count - 1, FIRST + width - 1)];
  return `${from}:${to.slice(name.length + 1)}`;
}
