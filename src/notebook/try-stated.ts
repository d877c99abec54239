import type { Problem } from '../diagnostics/index.ts';
import { NO_AXES, onAxes, type Type, typeOfUnit } from '../language/index.ts';
import type { Unit } from '../units/index.ts';
import { textsEntered } from './build-model.ts';
import { outOfRange } from './inputs.ts';
import { judgeStated } from './judge-stated.ts';
import { namesOf } from './names.ts';
import type { Notebook } from './notebook.ts';
import type { Quantity, Result, Value } from './result.ts';
import { readStated, readStatedSides, type Side, type Stated } from './stated.ts';
import { differenceOf, resultAt, valueStated } from './stated-values.ts';
import type { EntryTrial } from './try-entry.ts';

/** What a value can be stated for: a line, with `side` a side of a check, with `row` (counted from 0) a cell of a column. */
export interface StatedPlace {
  readonly id: string;
  readonly side?: Side;
  readonly row?: number;
}

/** An entry as it would be stated, beside what it would stand in place of. */
export interface StatedTrial extends EntryTrial {
  readonly computed: Result;
  /** Stated less computed; absent where that is no number. */
  readonly difference?: Quantity;
}

/**
 * Reads an entry as it would be stated in place of what a formula comes to, without stating it. That a reason is still
 * open is no problem of the entry.
 */
export function tryStated(notebook: Notebook, at: StatedPlace, entry: string): StatedTrial {
  const stated = readAsStated(notebook, at, entry);
  const value = valueStated(stated, unitAt(notebook, at));
  const computed = computedAt(notebook, at);
  const { registry } = notebook.model;
  const difference =
    value && computed.status === 'ok' ? differenceOf(value, computed.value, registry) : undefined;
  return {
    problems: [...stated.problems, ...beyondRange(notebook, at, value)],
    computed,
    ...(value && { value }),
    ...(difference && { difference }),
  };
}

/** A warning where a value would be stated beyond the permitted range of its line or column. */
function beyondRange(
  { model }: Notebook,
  { id, side }: StatedPlace,
  value: Value | undefined,
): readonly Problem[] {
  const item = model.items.get(id);
  if (side || value?.kind !== 'number' || (item?.kind !== 'formula' && item?.kind !== 'formula column'))
    return [];
  const own = item.kind === 'formula' ? item.row : item.column;
  if (own.kind !== 'calc' || !own.range) return [];
  const { si, unit } = value;
  return outOfRange({ kind: 'number', si, unit }, own.range, item.unit, model.registry);
}

/** Reads an entry as it would be stated at a place, with what would be wrong with it in the book. */
export function readAsStated(
  { model, book }: Notebook,
  { id, side }: StatedPlace,
  entry: string,
): Pick<Stated, 'entry' | 'problems'> {
  const item = model.items.get(id);
  const { registry } = model;
  const statement = { entry, reason: 'tried' };
  if (item?.kind !== 'formula' && item?.kind !== 'formula column')
    throw new Error(`nothing can be stated for ${id}`);
  if (side) {
    const read = readStatedSides({ [side]: statement }, item.checked, item.unit, registry)[side];
    return read ?? { problems: [] };
  }
  const computed = item.checked.typed.type;
  const own: Type = item.unit ? typeOfUnit(item.unit) : onAxes(computed, NO_AXES);
  const names = namesOf(book);
  const stated = readStated(statement, own, item.unit, registry);
  return judgeStated(stated, item, model.items, (of) => textsEntered(of, names), registry);
}

function unitAt(notebook: Notebook, { id, side }: StatedPlace): Unit | undefined {
  if (!side) return notebook.unitOf(id);
  return notebook.verdict(id)?.[side]?.unit ?? notebook.model.items.get(id)?.unit;
}

/** What a formula comes to by itself, whether or not a value is stated in its place. */
function computedAt(notebook: Notebook, { id, side, row }: StatedPlace): Result {
  if (row !== undefined) {
    const column = notebook.computedColumn(id) ?? notebook.column(id);
    return column.status === 'ok' ? resultAt(column.reading.at(row), column.unit) : column;
  }
  const beside = notebook.computed(id, side);
  if (beside) return beside;
  if (!side) return notebook.result(id);
  const value = notebook.verdict(id)?.[side];
  return value ? { status: 'ok', value } : { status: 'missing' };
}
