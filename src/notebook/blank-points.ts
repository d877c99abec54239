import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import { cellsBetween } from '../document/index.ts';
import { indexFor } from './methods.ts';
import type { InputColumnItem, Model } from './model.ts';

/** So many rows of one table are told one by one. */
const told = 5;

/** A blank cell of a given column that something waits for; `row` from 1. */
interface Blank {
  readonly cell: string;
  readonly row: number;
}

/**
 * The open points of a book's tables: for each row in which something needed is blank one problem, of the first such
 * cell, whatever number of lines and columns wait for it. `waiting` are the problems of what waits.
 */
export function blankPoints(waiting: readonly Problem[], model: Model): readonly Problem[] {
  const rows = new Map<string, { readonly row: number; readonly items: Set<InputColumnItem> }>();
  const perTable = new Map<string, number>();
  for (const { cell, row } of waiting.flatMap(blanksOf)) {
    const item = model.items.get(cell);
    if (item?.kind !== 'input column') continue;
    const key = `${item.table} ${row}`;
    const known = rows.get(key);
    const count = perTable.get(item.table) ?? 0;
    if (!known && count >= told) continue;
    if (!known) perTable.set(item.table, count + 1);
    rows.set(key, { row, items: (known?.items ?? new Set()).add(item) });
  }
  return [...rows.values()].flatMap(({ row, items }) => blankPoint(row, [...items], model));
}

function blankPoint(row: number, items: readonly InputColumnItem[], model: Model): readonly Problem[] {
  const given = items[0] ? givenColumns(items[0].table, model) : [];
  const isBlank = ({ column }: InputColumnItem): boolean => {
    const [cell = null] = cellsBetween(column.chunks, row - 1, row);
    return cell === null || cell === '';
  };
  const isNeeded = ({ column }: InputColumnItem): boolean =>
    column.optional !== true && column.default === undefined;
  // A formula is told its first blank alone; the person wants to know all that is still to be entered.
  const blank = given.filter((item) => items.includes(item) || (isNeeded(item) && isBlank(item)));
  // Values stated in place of computed cells are entered, too.
  const stated = model.tables.get(items[0]?.table ?? '')?.part.columns.some((one) => 'stated' in one);
  const isEmpty = stated !== true && given.every(isBlank);
  const names = blank.map(({ column }) => column.name);
  const meant = assumed(blank, given.filter(isBlank), model);
  const found = problem('row-incomplete', { from: 0, to: 0 }, { row, names, empty: isEmpty, meant });
  return blank[0] ? [inCell(found, blank[0].id)] : [];
}

/** A blank cell that chooses a method by what a blank there means. */
interface Meant {
  readonly by: string;
  readonly is: string;
}

/** The blank cells of a row because of which, by what a blank means there, others are needed. */
function assumed(
  needed: readonly InputColumnItem[],
  blank: readonly InputColumnItem[],
  model: Model,
): readonly Meant[] {
  return blank.flatMap(({ id, table, column }) => {
    const is = column.default;
    if (typeof is !== 'string') return [];
    const isReason = [...model.items.values()].some((item) => {
      if (item.kind !== 'formula column' || item.table !== table || item.methods?.byId !== id) return false;
      const { list } = item.methods;
      const chosen =
        list[
          indexFor(
            list.map(({ method }) => method),
            is,
          )
        ];
      return needed.some((one) => chosen?.checked.references.has(one.id));
    });
    return isReason ? [{ by: column.name, is }] : [];
  });
}

/** The given columns of a table in their order, with the cells they have now. */
function givenColumns(table: string, model: Model): readonly InputColumnItem[] {
  const columns = model.tables.get(table)?.part.columns ?? [];
  return columns.flatMap(({ name }) => {
    const item = model.items.get(`${table}.${name}`);
    return item?.kind === 'input column' ? [item] : [];
  });
}

/** Whether a problem of a row is told by the open point of that row, or of the row it waits for. */
export function isToldByPoint(found: Problem, model: Model): boolean {
  if (found.code !== 'blank-cell') return false;
  return blanksOf(found).some(({ cell }) => model.items.get(cell)?.kind === 'input column');
}

function blanksOf({ code, data }: Problem): readonly Blank[] {
  if (code === 'rows-blank') return data.blanks as unknown as readonly Blank[];
  const { cell, row } = data;
  const isOfTable = code === 'blank-cell' && typeof cell === 'string' && typeof row === 'number';
  return isOfTable ? [{ cell, row }] : [];
}
