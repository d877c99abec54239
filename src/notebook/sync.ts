import { inCell, type Problem } from '../diagnostics/index.ts';
import { cellsOfColumn } from '../document/index.ts';
import type { Engine } from '../engine/index.ts';
import type { Entry } from '../units/index.ts';
import { appliesId, syncApplies, whereItApplies } from './applies.ts';
import { firstError } from './first-error.ts';
import { loadCells } from './load-column.ts';
import type { FormulaColumnItem, FormulaItem, InputColumnItem, InputItem, Item, Model } from './model.ts';
import { comparedSides, computedId, SIDES, type Stated, sideId, sidesOf } from './stated.ts';
import { removeStatedCells, type StatedCells, statedOrComputed, syncStatedCells } from './stated-column.ts';
import { ownProblem, waitsOn } from './waits-on.ts';

/** Brings the engine to a model; what the model before it held unchanged stays as it is. */
export function syncEngine(engine: Engine, model: Model, before?: Model): void {
  const changed = (item: Item): boolean => before?.items.get(item.id) !== item;
  if (before)
    for (const old of before.items.values()) {
      const now = model.items.get(old.id);
      if (!now || now.kind !== old.kind) removeItem(engine, old);
    }
  const lengths = new Map<string, number>();
  for (const table of model.tables.values()) {
    const length = table.part.length;
    if (length === undefined) continue;
    if (before?.tables.get(table.id)?.part.length !== length) {
      engine.setTableLength(table.id, length);
      lengths.set(table.id, length);
    }
  }
  for (const item of model.items.values()) {
    const resized = item.kind === 'input column' && lengths.has(item.table);
    const moved =
      item.kind === 'formula column' &&
      item.cells !== undefined &&
      before?.tables.get(item.table)?.part !== model.tables.get(item.table)?.part;
    if (changed(item) || resized || moved || isWaiting(item)) syncItem(engine, item, model);
  }
}

/** Gives the engine one line or column. */
export function syncItem(engine: Engine, item: Item, model: Model): void {
  switch (item.kind) {
    case 'input':
      syncInput(engine, item);
      break;
    case 'input column':
      syncColumn(engine, item, model);
      break;
    case 'formula':
    case 'formula column':
      syncFormula(engine, item, model);
      break;
  }
}

function removeItem(engine: Engine, item: Item): void {
  engine.remove(item.id);
  if (item.kind === 'formula') removeBeside(engine, item.id);
  if (item.kind === 'formula column') removeStatedCells(engine, item.id);
}

/** Takes away what the engine has beside a line: the sides of a check, and what is computed where values are stated. */
function removeBeside(engine: Engine, id: string): void {
  engine.remove(computedId(id));
  engine.remove(appliesId(id));
  for (const side of SIDES) {
    engine.remove(sideId(id, side));
    engine.remove(computedId(sideId(id, side)));
  }
}

function syncInput(engine: Engine, item: InputItem): void {
  const own = firstError(item.problems);
  if (own) engine.setInput(item.id, { failed: inCell(own, item.id) });
  else enter(engine, item.id, item.entry);
}

function enter(engine: Engine, id: string, entry: Entry | undefined): void {
  if (!entry || entry.kind === 'missing') engine.setInput(id, { missing: true });
  else if (entry.kind === 'text') engine.setInputText(id, entry.text);
  else engine.setInput(id, entry.kind === 'truth' ? entry.value : entry.si);
}

function syncColumn(engine: Engine, item: InputColumnItem, model: Model): void {
  const own = firstError(item.problems);
  if (own) {
    engine.setFailed(item.id, inCell(own, item.id), { table: item.table });
    return;
  }
  const { values, failed } = loadCells(cellsOfColumn(item.column), item, model.registry, engine.texts);
  const type = item.column.type ?? 'number';
  const holds = type === 'text' ? 'text' : type === 'truth' ? 'truth' : 'number';
  engine.setColumn(item.id, item.table, values, { holds, failed });
}

function syncFormula(engine: Engine, item: FormulaItem | FormulaColumnItem, model: Model): void {
  if (item.kind === 'formula column') {
    removeStatedCells(engine, item.id);
    if (item.cells) {
      syncColumnWithStated(engine, item, item.cells, model);
      return;
    }
  }
  if (item.kind === 'formula') {
    removeBeside(engine, item.id);
    if (item.stated) {
      compute(engine, item, computedId(item.id), item.checked.problems, model);
      const own = firstError(item.problems);
      enterStated(engine, item.id, own ? { ...item.stated, problems: [own] } : item.stated);
      return;
    }
  }
  if (item.kind === 'formula') syncApplies(engine, item, model);
  compute(engine, item, item.id, [...item.problems, ...item.checked.problems], model);
  if (item.kind === 'formula' && item.row.kind === 'check') syncSides(engine, item, model);
}

/** A calculated column of which some cells are stated. */
function syncColumnWithStated(
  engine: Engine,
  item: FormulaColumnItem,
  cells: StatedCells,
  model: Model,
): void {
  const { id, table, checked, type } = item;
  const own = firstError(item.problems);
  if (own) {
    engine.setFailed(id, inCell(own, id), { table });
    return;
  }
  compute(engine, item, computedId(id), checked.problems, model);
  syncStatedCells(engine, id, table, model.tables.get(table)?.part.length ?? 0, cells, type);
  engine.setFormula(id, statedOrComputed(id, table, { ...checked.typed, type }), {
    table,
    text: checked.text,
  });
}

/** Gives the engine the formula of a line or column under an id, or that it cannot be computed. */
function compute(
  engine: Engine,
  item: FormulaItem | FormulaColumnItem,
  id: string,
  problems: readonly Problem[],
  model: Model,
): void {
  const { typed, text } = item.checked;
  const place = item.kind === 'formula column' ? { table: item.table } : {};
  const own = firstError(problems);
  if (own || typed.kind === 'broken')
    engine.setFailed(id, inCell(own ?? waitsOn(item, model), item.id), place);
  else
    engine.setFormula(id, item.kind === 'formula' ? whereItApplies(item, typed) : typed, { ...place, text });
}

function enterStated(engine: Engine, id: string, { entry, problems }: Stated): void {
  const own = firstError(problems);
  if (own) engine.setInput(id, { failed: own });
  else enter(engine, id, entry);
}

/** The two sides of a check as values of their own; where one is stated, the check compares that. */
function syncSides(engine: Engine, item: FormulaItem, model: Model): void {
  const { typed, text } = item.checked;
  if (ownProblem(item) || typed.kind !== 'compare') return;
  const [demand, capacity] = sidesOf(typed);
  if (!demand || !capacity) return;
  for (const [side, tree] of [
    ['demand', demand],
    ['capacity', capacity],
  ] as const) {
    const id = sideId(item.id, side);
    const stated = item.sides?.[side];
    const computed = stated ? computedId(id) : id;
    if (tree.kind === 'broken')
      engine.setFailed(computed, inCell(item.fails ?? waitsOn(item, model), item.id), {});
    else engine.setFormula(computed, tree, { text });
    if (stated) enterStated(engine, id, stated);
  }
  if (!item.sides) return;
  engine.setFormula(item.id, whereItApplies(item, comparedSides(item.id, typed)), { text });
}

/** Whether what a line or column says is the first cause behind what it waits on, which may be another one now. */
function isWaiting(item: Item): boolean {
  if (!('checked' in item)) return false;
  const applies = item.kind === 'formula' ? item.applies : undefined;
  return item.checked.typed.kind === 'broken' || applies?.typed.kind === 'broken';
}
