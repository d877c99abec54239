import { type BranchNode, partsOf, type Typed } from '../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type Model,
  type Notebook,
  type PartPlace,
  referencesOfItem,
} from '../../notebook/index.ts';
import { localName } from '../values/names.ts';

import { extremeRows, tableOf } from './worked-aggregates.ts';
import { rowTaken } from './worked-lookups.ts';

/** The row of a column whose numbers are put in on paper. */
export interface GoverningRow {
  /** From 0; the first of several that give the same. */
  readonly row: number;
  /** The others that give the same. */
  readonly same?: readonly number[];
  /** The line that takes this row, as the column's sheet writes it, and what it does with it; the first row has none. */
  readonly reader?: { readonly name: string; readonly does: 'gives' | 'counts' };
}

/** A line that takes one row of a column: its greatest, its least, one that it looks up, or one that it wants none of. */
export interface Reader {
  readonly item: FormulaItem;
  /** What runs over the rows; of a lookup the whole call. */
  readonly values: Typed;
  readonly condition?: Typed;
  readonly takes: 'greatest' | 'least' | 'looked up' | 'counted';
  /** The choices between formulas that it stands in, each with the place of its arm; -1 for what holds otherwise. */
  readonly within: readonly Within[];
}

interface Within {
  readonly branch: BranchNode;
  readonly arm: number;
}

/**
 * The row of a column that a line reads it for: its greatest or least value, one that is looked up, or a row that a check
 * wants none of; of a
 * column that only others of its table read, theirs; else that of a column that it reads itself; else the first. Of several lines a check that fails comes first.
 * Undefined for a table without rows.
 */
export function governingRow(notebook: Notebook, item: FormulaColumnItem): GoverningRow | undefined {
  if (!notebook.rowsOf(item.table)) return undefined;
  return rowRead(notebook, item, new Set()) ?? rowOfSources(notebook, item) ?? { row: 0 };
}

/** The row of the first column of the same table that a column reads and a line takes a row of. */
function rowOfSources(notebook: Notebook, item: FormulaColumnItem): GoverningRow | undefined {
  for (const id of referencesOfItem(item)) {
    const source = notebook.model.items.get(id);
    const found =
      source?.kind === 'formula column' && source.table === item.table && source.id !== item.id
        ? rowRead(notebook, source, new Set([item.id]))
        : undefined;
    if (found) return found;
  }
  return undefined;
}

function rowRead(notebook: Notebook, item: FormulaColumnItem, seen: Set<string>): GoverningRow | undefined {
  if (seen.has(item.id)) return undefined;
  seen.add(item.id);
  const { readers, columns } = readersIn(notebook.model);
  const ranked = (readers.get(item.id) ?? []).map((reader) => ({
    reader,
    rank: rankOf(notebook, reader.item),
  }));
  for (const { reader } of ranked.sort((a, b) => a.rank - b.rank)) {
    const [row, ...same] = rowsOf(notebook, reader);
    if (row === undefined) continue;
    const name = reader.item.sheet === item.sheet ? localName(reader.item) : reader.item.id;
    return {
      row,
      ...(same.length > 0 && { same }),
      reader: { name, does: reader.takes === 'counted' ? 'counts' : 'gives' },
    };
  }
  for (const next of columns.get(item.id) ?? []) {
    const found = rowRead(notebook, next, seen);
    if (found) return found;
  }
  return undefined;
}

/** The rows that a line takes; of those it counts the first. */
export function rowsOf(
  notebook: Notebook,
  { item, values, condition, takes, within }: Reader,
): readonly number[] {
  const place = { item, checked: item.checked };
  // What stands in an arm that is not taken reads no row.
  if (within.some(({ branch, arm }) => armTaken(notebook, branch, place) !== arm)) return [];
  if (takes === 'looked up') {
    const row = values.kind === 'call' ? rowTaken(values, place, notebook) : undefined;
    return row === undefined ? [] : [row];
  }
  const found = notebook.parts.elementsOf(values, place);
  if (!found) return [];
  const holds = condition && notebook.parts.elementsOf(condition, place);
  if (takes === 'counted') {
    const row = found.values.indexOf(1);
    return row < 0 ? [] : [row];
  }
  const rows = [...found.values.keys()].filter((row) => !holds || holds.values[row] === 1);
  return extremeRows(rows, found.values, takes);
}

/** The arm of a choice that is taken, -1 for what holds otherwise; undefined where a condition has no value. */
function armTaken(notebook: Notebook, { arms }: BranchNode, place: PartPlace): number | undefined {
  for (const [at, { when }] of arms.entries()) {
    const value = notebook.parts.valueOf(when, place);
    if (value?.kind !== 'truth') return undefined;
    if (value.truth) return at;
  }
  return -1;
}

/** Checks that fail come first, then lines that lead to one, then other checks and what leads to them. */
function rankOf(notebook: Notebook, item: FormulaItem): number {
  const { dependents } = readersIn(notebook.model);
  const checks = [item, ...(dependents.get(item.id) ?? [])].filter(({ row }) => row.kind === 'check');
  const failing = checks.find(({ id }) => notebook.verdict(id)?.holds === false);
  if (failing) return failing === item ? 0 : 1;
  return checks.length > 0 ? 2 : 3;
}

interface Readers {
  /** By the id of the column read. */
  readonly readers: ReadonlyMap<string, readonly Reader[]>;
  /** The columns of the same table that read a column. */
  readonly columns: ReadonlyMap<string, readonly FormulaColumnItem[]>;
  /** The lines that read a line. */
  readonly dependents: ReadonlyMap<string, readonly FormulaItem[]>;
}

const known = new WeakMap<Model['items'], Readers>();

function readersIn({ items }: Model): Readers {
  const found = known.get(items) ?? findReaders(items);
  known.set(items, found);
  return found;
}

function findReaders(items: Model['items']): Readers {
  const readers = new Map<string, Reader[]>();
  const columns = new Map<string, FormulaColumnItem[]>();
  const dependents = new Map<string, FormulaItem[]>();
  const add = <T>(to: Map<string, T[]>, id: string, one: T): void => {
    const list = to.get(id);
    if (list) list.push(one);
    else to.set(id, [one]);
  };
  for (const item of items.values()) {
    if (item.kind === 'formula column') {
      for (const id of referencesOfItem(item)) if (id.startsWith(`${item.table}.`)) add(columns, id, item);
    } else if (item.kind === 'formula') {
      for (const id of referencesOfItem(item)) add(dependents, id, item);
      for (const reader of readersOf(item))
        for (const id of columnsIn(reader.values)) add(readers, id, reader);
    }
  }
  return { readers, columns, dependents };
}

/** Whether a check compares with zero: it wants none of what is counted. */
export function wantsNone({ checked: { typed } }: FormulaItem): boolean {
  return typed.kind === 'compare' && [typed.left, typed.right].some(isZero);
}

/** The lines of a table that a line takes; `counts` is whether what it counts is wanted nowhere. */
export function readersOf(item: FormulaItem, counts = wantsNone(item)): readonly Reader[] {
  const { typed } = item.checked;
  const visit = (node: Typed, within: readonly Within[]): readonly Reader[] => {
    if (node.kind === 'branch')
      return [
        ...node.arms.flatMap(({ when, value }, arm) => [
          ...visit(when, within),
          ...visit(value, [...within, { branch: node, arm }]),
        ]),
        ...(node.otherwise ? visit(node.otherwise, [...within, { branch: node, arm: -1 }]) : []),
      ];
    const inner = partsOf(node).flatMap((part) => visit(part, within));
    if (node.kind !== 'call' || node.fn.evaluate.kind !== 'gather') return inner;
    const conditional = node.fn.evaluate.chosen !== undefined;
    const { worked } = node.fn;
    const [first] = node.args;
    if (conditional && worked?.as === 'value' && counts && first && tableOf(first) !== undefined)
      return [...inner, { item, values: first, takes: 'counted', within }];
    if (worked?.as === 'row' || worked?.as === 'match' || worked?.as === 'line')
      return [...inner, { item, values: node, takes: 'looked up', within }];
    const { extreme } = worked ?? {};
    if (!extreme) return inner;
    const own = (conditional ? node.args.slice(1) : node.args).filter((arg) => tableOf(arg) !== undefined);
    const condition = conditional && first ? { condition: first } : {};
    return [
      ...inner,
      ...own.map((values): Reader => ({ item, values, takes: extreme, within, ...condition })),
    ];
  };
  return visit(typed, []);
}

const isZero = (node: Typed): boolean => node.kind === 'number' && node.si === 0;

function columnsIn(node: Typed): readonly string[] {
  return node.kind === 'column' ? [node.id] : partsOf(node).flatMap(columnsIn);
}
