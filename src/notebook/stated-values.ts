import type { Problem } from '../diagnostics/index.ts';
import type { Statement } from '../document/index.ts';
import type { Reading } from '../engine/index.ts';
import { areEqual, preferredUnit, type Unit, type UnitRegistry } from '../units/index.ts';
import { apartFromComputed } from './apart-from-computed.ts';
import { type FormulaColumnItem, type FormulaItem, type Item, referencesOfItem } from './model.ts';
import type { Notebook } from './notebook.ts';
import { readValue } from './read-result.ts';
import type { Quantity, Result, Value } from './result.ts';
import { SIDES, type Side, type Stated } from './stated.ts';

/** A value that stands in place of a computed one, beside what it stands for. */
export interface StatedHere {
  /** The line (`sheet.name`) or column (`sheet.table.column`). */
  readonly id: string;
  /** Of a check, the side that is stated. */
  readonly side?: Side;
  /** Of a column, the row of the cell, counted from 0. */
  readonly row?: number;
  readonly statement: Statement;
  /** The stated value as it is understood, in the unit of its line; absent where it cannot be read. */
  readonly value?: Value;
  /** What the formula comes to, or why it has no value. */
  readonly computed: Result;
  /** Stated less computed; absent where that is no number, or one of the two is not known. */
  readonly difference?: Quantity;
  /** What is to be remarked of the two: a side of a check, another sign, far apart. */
  readonly apart: readonly Problem[];
}

/** A value that stands in place of a computed one, with all that a checker asks of it. */
export interface StatedValue extends StatedHere {
  /** The ids of the lines and columns whose formulas name it, in the order of the book; of a side, its check. */
  readonly feeds: readonly string[];
}

/** All stated values of a book, in its order. */
export function statedValues(notebook: Notebook): readonly StatedValue[] {
  const feeds = dependentsOf(notebook);
  return [...notebook.model.items.values()].flatMap((item) =>
    statedIn(notebook, item).map((one) => ({ ...one, feeds: one.side ? [item.id] : feeds(item.id) })),
  );
}

/** What is stated in a line or column: the line itself, the sides of a check, cells by their rows. */
export function statedIn(notebook: Notebook, item: Item): readonly StatedHere[] {
  if (item.kind === 'formula column') return statedCells(notebook, item);
  return item.kind === 'formula' ? statedInLine(notebook, item) : [];
}

function statedInLine(notebook: Notebook, { id, stated, sides }: FormulaItem): readonly StatedHere[] {
  const of = (one: Stated, side?: Side): StatedHere => {
    const computed = notebook.computed(id, side) ?? { status: 'missing' };
    const value = valueStated(one, unitOfComputed(computed) ?? (side ? undefined : notebook.unitOf(id)));
    const about = { id, ...(side && { side }), statement: one.statement };
    return {
      ...compared(about, value, computed, notebook.model.registry),
      apart: apartFromComputed(one, computed),
    };
  };
  if (stated) return [of(stated)];
  return SIDES.flatMap((side) => {
    const one = sides?.[side];
    return one ? [of(one, side)] : [];
  });
}

function statedCells(notebook: Notebook, { id, cells }: FormulaColumnItem): readonly StatedHere[] {
  if (!cells) return [];
  const unit = notebook.unitOf(id);
  const computed = notebook.computedColumn(id);
  return [...cells].map(([row, one]) => {
    const below = computed?.status === 'ok' ? resultAt(computed.reading.at(row), unit) : computed;
    const about = { id, row, statement: one.statement };
    return {
      ...compared(about, valueStated(one, unit), below ?? { status: 'missing' }, notebook.model.registry),
      apart: apartFromComputed(one, below),
    };
  });
}

/** One row of a column as a result in a unit. */
export function resultAt(read: Reading, unit: Unit): Result {
  return read.status === 'ok' ? { status: 'ok', value: readValue(read.value, unit) } : read;
}

function compared(
  about: Pick<StatedHere, 'id' | 'statement'>,
  value: Value | undefined,
  computed: Result,
  registry: UnitRegistry,
): Omit<StatedHere, 'apart'> {
  const difference =
    value && computed.status === 'ok' ? differenceOf(value, computed.value, registry) : undefined;
  return { ...about, ...(value && { value }), computed, ...(difference && { difference }) };
}

/** The value of a stated entry, read in the unit of its line; undefined where it cannot be read. */
export function valueStated(
  { entry, problems }: Pick<Stated, 'entry' | 'problems'>,
  unit: Unit | undefined,
): Value | undefined {
  if (!entry || problems.some(({ severity }) => severity === 'error')) return undefined;
  if (entry.kind === 'text') return { kind: 'text', text: entry.text };
  if (entry.kind === 'truth') return { kind: 'truth', truth: entry.value };
  return { kind: 'number', si: entry.si, unit: unit ?? entry.unit };
}

function unitOfComputed(computed: Result): Unit | undefined {
  return computed.status === 'ok' && computed.value.kind === 'number' ? computed.value.unit : undefined;
}

/** Stated less computed, nothing where they are equal but for rounding; undefined where one of them is no number. */
export function differenceOf(stated: Value, computed: Value, registry: UnitRegistry): Quantity | undefined {
  if (stated.kind !== 'number' || computed.kind !== 'number') return undefined;
  const unit = unitOfDifference(stated.unit, registry);
  const si = areEqual(stated.si, computed.si) ? 0 : stated.si - computed.si;
  return unit && { kind: 'number', si, unit };
}

/** Two dates are days apart, two elevations lengths; two temperatures kelvins, whatever their scale. */
function unitOfDifference(unit: Unit, registry: UnitRegistry): Unit | undefined {
  if (unit.point === undefined) return unit;
  const of = unit.point === 'date' ? 'd' : unit.point === 'temperature' ? 'K' : unit.text.split(' ')[0];
  return registry.units.get(of ?? '') ?? preferredUnit(unit.dimension, false, 'SI', registry);
}

/** The ids of the lines and columns whose formulas name a line or column, itself excepted. */
function dependentsOf({ model }: Notebook): (id: string) => readonly string[] {
  const dependents = new Map<string, string[]>();
  for (const item of model.items.values()) {
    if (!('checked' in item)) continue;
    for (const id of referencesOfItem(item)) {
      if (id === item.id) continue;
      const known = dependents.get(id);
      if (known) known.push(item.id);
      else dependents.set(id, [item.id]);
    }
  }
  return (id) => dependents.get(id) ?? [];
}
