import { partsOf, type Typed } from '../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  formulaInForce,
  type Item,
  type Notebook,
  referencesOfItem,
} from '../../notebook/index.ts';

/** A line, a cell of a column, or a whole column. */
export interface Step {
  readonly item: Item;
  /** Of a column, the row from 0; undefined for all of it. */
  readonly row?: number;
}

/** One of the steps to a value, so many away from it. */
export interface StepTo extends Step {
  readonly away: number;
}

/**
 * A line or cell and what it rests on up to so many steps away: of methods the one in force, of a stated value nothing, of a
 * cell the cells of its row. Each stands before all that it rests on, so that what comes first can be followed downwards.
 */
export function stepsTo(notebook: Notebook, start: Step, most: number): readonly StepTo[] {
  const away = new Map<string, StepTo>([[keyOfStep(start), { ...start, away: 0 }]]);
  for (const step of away.values()) {
    if (step.away === most) continue;
    for (const next of nextOf(notebook, step).steps)
      if (!away.has(keyOfStep(next))) away.set(keyOfStep(next), { ...next, away: step.away + 1 });
  }
  return inOrder(notebook, [...away.values()], away);
}

/** The same steps, each before all that it rests on; without recursion, for a running sum has as many as it has rows. */
function inOrder(
  notebook: Notebook,
  all: readonly StepTo[],
  away: ReadonlyMap<string, StepTo>,
): readonly StepTo[] {
  const below = (step: Step): readonly StepTo[] =>
    nextOf(notebook, step).steps.flatMap((next) => away.get(keyOfStep(next)) ?? []);
  const waits = new Map<StepTo, number>(all.map((step) => [step, 0]));
  for (const step of all) for (const next of below(step)) waits.set(next, (waits.get(next) ?? 0) + 1);
  const free = all.filter((step) => waits.get(step) === 0);
  for (const step of free)
    for (const next of below(step)) {
      const left = (waits.get(next) ?? 0) - 1;
      waits.set(next, left);
      if (left === 0) free.push(next);
    }
  // Lines that wait for one another in a circle have no order, and no value either.
  const ordered = new Set(free);
  return [...free, ...all.filter((step) => !ordered.has(step))];
}

/** A step in a word that no other has. */
export function keyOfStep({ item, row }: Step): string {
  return row === undefined ? item.id : `${item.id}#${row}`;
}

/** What one step rests on directly; `rows`: the table the order of whose rows it minds. */
export interface Next {
  readonly steps: readonly Step[];
  readonly rows?: string | undefined;
}

export function nextOf(notebook: Notebook, { item, row }: Step): Next {
  if (item.kind === 'input' || item.kind === 'input column') return { steps: [] };
  const { items } = notebook.model;
  const stepsOf = (ids: Iterable<string>, at?: number): readonly Step[] =>
    [...ids].flatMap((id): readonly Step[] => {
      const next = items.get(id);
      return next ? [at === undefined ? { item: next } : { item: next, row: at }] : [];
    });
  if (item.kind === 'formula') return { steps: item.stated ? [] : stepsOf(namedInForce(notebook, item)) };
  if (row === undefined) return { steps: stepsOf([...referencesOfItem(item), ...chooserOf(item)]) };
  if (item.cells?.has(row)) return { steps: [] };
  const used = formulaInForce(notebook, item, row)?.checked;
  const chooser = chooserOf(item);
  if (!used) return { steps: stepsOf(chooser) };
  const { here, above, whole, byOrder } = readsOf(used.typed);
  const isHere = (id: string): boolean => id.startsWith(`${item.table}.`);
  const lines = [...used.references].filter((id) => !here.has(id) && !above.has(id) && !whole.has(id));
  const table = notebook.model.tables.get(item.table)?.part;
  return {
    steps: [
      ...stepsOf(here, row),
      ...(row > 0 ? stepsOf(above, row - 1) : []),
      ...stepsOf(whole),
      ...stepsOf(lines),
      ...stepsOf(chooser.filter(isHere), row),
      ...stepsOf(chooser.filter((id) => !isHere(id))),
    ],
    rows: byOrder && table?.length !== undefined ? table.id : undefined,
  };
}

/** What the formula in force of a line names, and what chooses it. */
function namedInForce(notebook: Notebook, item: FormulaItem): readonly string[] {
  const used = formulaInForce(notebook, item);
  const formula = used && item.methods ? used.checked.references : referencesOfItem(item);
  return [...formula, ...chooserOf(item)];
}

function chooserOf({ methods }: FormulaItem | FormulaColumnItem): readonly string[] {
  return methods?.byId === undefined ? [] : [methods.byId];
}

/** What a formula of a column reads of its own table: by the ids of columns, and whether it minds the order of the rows. */
interface Reads {
  /** In its own row. */
  readonly here: ReadonlySet<string>;
  /** In the row above. */
  readonly above: ReadonlySet<string>;
  /** In all rows. */
  readonly whole: ReadonlySet<string>;
  readonly byOrder: boolean;
}

function readsOf(typed: Typed): Reads {
  const [here, above, whole] = [new Set<string>(), new Set<string>(), new Set<string>()];
  let byOrder = false;
  const visit = (node: Typed): void => {
    if (node.kind === 'cell' && node.type.axes.length > 0) here.add(node.id);
    if (node.kind === 'column') whole.add(node.id);
    if (node.kind === 'above' || node.kind === 'row') byOrder = true;
    if (node.kind === 'above') {
      above.add(node.column.id);
      visit(node.first);
    } else for (const part of partsOf(node)) visit(part);
  };
  visit(typed);
  return { here, above, whole, byOrder };
}
