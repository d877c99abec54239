import type { Subject } from '../../document/index.ts';
import { partsOf, type Typed } from '../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  formulaInForce,
  type Item,
  type Notebook,
  referencesOfItem,
} from '../../notebook/index.ts';
import { findSubject, identityOfRow, idInBook } from './subjects.ts';

/** What a value rests on: a line; the whole of a column or the rows of a table; or one cell, by the identity of its row. */
export interface Ground {
  /** The id of the line, column or table. */
  readonly item: string;
  readonly rows: 'none' | 'all' | number;
}

interface Step {
  readonly item: Item;
  /** Of a column, the row from 0; undefined for all of it. */
  readonly row?: number;
}

/**
 * All that a line or cell rests on, itself first and then the nearest: of methods the one in force, of a stated value nothing
 * but itself, of a cell the cells of its row where a formula reads these.
 */
export function groundsOf(notebook: Notebook, subject: Subject): readonly Ground[] {
  const { model } = notebook;
  const start = findSubject(model, subject);
  if (!start) return [];
  const reached = new Map<string, Step>();
  const grounds: Ground[] = [];
  const reach = (step: Step): void => {
    const key = step.row === undefined ? step.item.id : `${step.item.id}#${step.row}`;
    if (!reached.has(key)) reached.set(key, step);
  };
  reach(start);
  for (const step of reached.values()) {
    grounds.push(groundOf(notebook, step));
    if ('table' in step.item && step.row === undefined) {
      const part = model.tables.get(step.item.table)?.part;
      if (part?.length !== undefined) grounds.push({ item: part.id, rows: 'none' });
      for (const maker of part?.columns ?? []) {
        const made = maker.kind === 'series' && model.items.get(`${step.item.table}.${maker.name}`);
        if (made) reach({ item: made });
      }
    }
    const { steps, rows } = nextOf(notebook, step);
    if (rows !== undefined) grounds.push({ item: rows, rows: 'none' });
    for (const next of steps) reach(next);
  }
  return grounds;
}

function groundOf({ model }: Notebook, { item, row }: Step): Ground {
  const id = idInBook(item);
  if (!('table' in item)) return { item: id, rows: 'none' };
  return { item: id, rows: row === undefined ? 'all' : identityOfRow(model, item, row) };
}

/** What one step rests on directly; `rows`: the table the order of whose rows it minds. */
interface Next {
  readonly steps: readonly Step[];
  readonly rows?: string | undefined;
}

function nextOf(notebook: Notebook, { item, row }: Step): Next {
  if (item.kind === 'input' || item.kind === 'input column') return { steps: [] };
  const { items } = notebook.model;
  const stepsTo = (ids: Iterable<string>, at?: number): readonly Step[] =>
    [...ids].flatMap((id): readonly Step[] => {
      const next = items.get(id);
      return next ? [at === undefined ? { item: next } : { item: next, row: at }] : [];
    });
  if (item.kind === 'formula') return { steps: item.stated ? [] : stepsTo(namedInForce(notebook, item)) };
  if (row === undefined) return { steps: stepsTo([...referencesOfItem(item), ...chooserOf(item)]) };
  if (item.cells?.has(row)) return { steps: [] };
  const used = formulaInForce(notebook, item, row)?.checked;
  const chooser = chooserOf(item);
  if (!used) return { steps: stepsTo(chooser) };
  const { here, above, whole, byOrder } = readsOf(used.typed);
  const isHere = (id: string): boolean => id.startsWith(`${item.table}.`);
  const lines = [...used.references].filter((id) => !here.has(id) && !above.has(id) && !whole.has(id));
  const table = notebook.model.tables.get(item.table)?.part;
  return {
    steps: [
      ...stepsTo(here, row),
      ...(row > 0 ? stepsTo(above, row - 1) : []),
      ...stepsTo(whole),
      ...stepsTo(lines),
      ...stepsTo(chooser.filter(isHere), row),
      ...stepsTo(chooser.filter((id) => !isHere(id))),
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
