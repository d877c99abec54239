import { referencesOf } from '../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type Item,
  type Model,
  referencesOfItem,
} from './model.ts';
import { sidesOf } from './stated.ts';

/** For every line and column that rests on some others at any distance, the ids of these. */
export type Marks = ReadonlyMap<string, ReadonlySet<string>>;

/**
 * All that rests on some lines and columns, themselves among them. A formula counts with all its branches; what a stated value
 * stands in place of does not.
 */
export function marksFrom(sources: readonly string[], model: Model): Marks {
  const marks = new Map<string, Set<string>>();
  if (sources.length === 0) return marks;
  const takers = takersOf(model);
  for (const source of sources) {
    const reached = new Set([source]);
    for (const id of reached) {
      const own = marks.get(id);
      if (own) own.add(source);
      else marks.set(id, new Set([source]));
      for (const next of takers.get(id) ?? []) reached.add(next);
    }
  }
  return marks;
}

/** For every line and column what is computed directly from it, as the book stands. */
export function takersOf(model: Model): ReadonlyMap<string, readonly string[]> {
  const takers = new Map<string, string[]>();
  for (const item of model.items.values()) {
    for (const id of restsDirectlyOn(item, model)) {
      const known = takers.get(id);
      if (known) known.push(item.id);
      else takers.set(id, [item.id]);
    }
  }
  return takers;
}

/** The ids of what a line or column is computed from as it stands; of an entered column the series that makes its rows. */
export function restsDirectlyOn(item: Item, model: Model): Iterable<string> {
  return 'checked' in item ? restsOn(item, model) : makersOfRows(item, model);
}

/** The series that makes the rows of a column's table, if another one does. */
function makersOfRows(item: Item, model: Model): readonly string[] {
  if (item.kind !== 'formula column' && item.kind !== 'input column') return [];
  const columns = model.tables.get(item.table)?.part.columns ?? [];
  return columns.flatMap(({ kind, name }) => {
    const id = `${item.table}.${name}`;
    return kind === 'series' && id !== item.id ? [id] : [];
  });
}

/** What a line or column is computed from as it stands: nothing where it is stated, of a check not what a stated side stands in place of. */
function restsOn(item: FormulaItem | FormulaColumnItem, model: Model): Iterable<string> {
  if (item.kind === 'formula column') return [...referencesOfItem(item), ...makersOfRows(item, model)];
  if (item.stated) return [];
  if (!item.sides) return referencesOfItem(item);
  const [demand, capacity] = sidesOf(item.checked.typed);
  const sides = [
    ...(item.sides.demand || !demand ? [] : [demand]),
    ...(item.sides.capacity || !capacity ? [] : [capacity]),
  ];
  return [...sides.flatMap((side) => [...referencesOf(side)]), ...(item.applies?.references ?? [])];
}
