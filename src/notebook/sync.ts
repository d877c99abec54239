import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import { cellsOfColumn } from '../document/index.ts';
import type { Engine } from '../engine/index.ts';
import { loadCells } from './load-column.ts';
import type { FormulaColumnItem, FormulaItem, InputColumnItem, InputItem, Item, Model } from './model.ts';

/** The engine's cells for the two sides of a check; no name of a book can be these. */
export const demandId = (id: string): string => `${id}#demand`;
export const capacityId = (id: string): string => `${id}#capacity`;

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
    if (changed(item) || resized) syncItem(engine, item, model);
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
  if (item.kind === 'formula' && item.row.kind === 'check') {
    engine.remove(demandId(item.id));
    engine.remove(capacityId(item.id));
  }
}

function syncInput(engine: Engine, item: InputItem): void {
  const own = firstError(item.problems);
  const { entry } = item;
  if (own) engine.setInput(item.id, { failed: inCell(own, item.id) });
  else if (!entry || entry.kind === 'missing') engine.setInput(item.id, { missing: true });
  else if (entry.kind === 'text') engine.setInputText(item.id, entry.text);
  else engine.setInput(item.id, entry.kind === 'truth' ? entry.value : entry.si);
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
  const { typed, text } = item.checked;
  const place = item.kind === 'formula column' ? { table: item.table } : {};
  const own = ownProblem(item);
  if (own || typed.kind === 'broken') {
    engine.setFailed(item.id, inCell(own ?? waitsOn(item, model), item.id), place);
    return;
  }
  engine.setFormula(item.id, typed, { ...place, text });
  if (item.kind !== 'formula' || item.row.kind !== 'check' || typed.kind !== 'compare') return;
  const [demand, capacity] =
    typed.op === '>' || typed.op === '>=' ? [typed.right, typed.left] : [typed.left, typed.right];
  engine.setFormula(demandId(item.id), demand, { text });
  engine.setFormula(capacityId(item.id), capacity, { text });
}

/** The first problem a line or column has of its own, before any computing. */
export function ownProblem(item: Item): Problem | undefined {
  const found = firstError(item.problems);
  return found ?? ('checked' in item ? firstError(item.checked.problems) : undefined);
}

/** A formula with no problem of its own and no type waits on something that has one. */
export function waitsOn(item: FormulaItem | FormulaColumnItem, model: Model): Problem {
  const references = [...item.checked.references];
  const on =
    references.find((id) => model.items.get(id)?.type.kind === 'unknown') ?? references[0] ?? item.id;
  return problem('waits-on', { from: 0, to: 0 }, { on });
}

function firstError(problems: readonly Problem[]): Problem | undefined {
  return problems.find((found) => found.severity === 'error');
}
