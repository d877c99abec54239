import { inCell } from '../diagnostics/index.ts';
import type { Engine, Reading } from '../engine/index.ts';
import { holdsDateDifference, type Type, type Typed } from '../language/index.ts';
import { PLAIN_UNIT, preferredUnit, type Unit } from '../units/index.ts';
import { readApplies } from './applies.ts';
import { countsDays } from './counts-days.ts';
import { firstError } from './first-error.ts';
import { placedInMethod } from './methods.ts';
import type { FormulaItem, InputItem, Item, Model } from './model.ts';
import type { Quantity, Result, Value, Verdict } from './result.ts';
import { computedId, type Side, sideId, sidesOf } from './stated.ts';
import { ownProblem, waitsOn } from './waits-on.ts';
import { comparesYesOrNo } from './whole-count.ts';

type System = 'SI' | 'US';

/**
 * The unit a line or column is read in: its unit column, the unit of its entry, that of the first name of its kind in
 * its formula, days for a time between dates, else the book's preferred one.
 */
export function unitOf(item: Item, model: Model, system: System): Unit {
  if (item.unit) return item.unit;
  if (item.kind === 'input' && (item.entry?.kind === 'number' || item.entry?.kind === 'point'))
    return item.entry.unit;
  return unitOfSources(item, model) ?? unitOfDays(item, model) ?? unitOfType(item.type, model, system);
}

/** Half an energy in kN·m is read in kN·m, whatever the book prefers. */
function unitOfSources(item: Item, model: Model): Unit | undefined {
  if (!('checked' in item) || item.type.kind !== 'number') return undefined;
  const { dimension, angle } = item.type;
  // A plain number made of percents is seldom one.
  if (dimension.powers.length === 0) return undefined;
  for (const id of item.checked.references) {
    const unit = model.items.get(id)?.unit;
    if (unit && unit.point === undefined && unit.dimension.key === dimension.key && unit.angle === angle)
      return unit;
  }
  return undefined;
}

/** A time between dates is read in days. */
function unitOfDays(item: Item, model: Model): Unit | undefined {
  return countsDays(item, model) ? model.registry.units.get('d') : undefined;
}

/** The unit the book prefers for a type. */
export function unitOfType(type: Type, model: Model, system: System): Unit {
  if (type.kind === 'number') return preferredUnit(type.dimension, type.angle, system, model.registry);
  if (type.kind === 'point') return pointUnit(type.of, model, system);
  return PLAIN_UNIT;
}

function pointUnit(of: NonNullable<Unit['point']>, model: Model, system: System): Unit {
  const symbol = of === 'temperature' ? (system === 'US' ? 'degF' : 'degC') : system === 'US' ? 'ft' : 'm';
  if (of === 'date') return model.registry.units.get('date') ?? { ...PLAIN_UNIT, text: 'date', point: of };
  const unit = model.registry.units.get(symbol) ?? PLAIN_UNIT;
  const datum = of.slice('elevation:'.length);
  return of === 'temperature' ? unit : { ...unit, text: `${symbol} ${datum}`.trim(), point: of };
}

/** An engine's value as a value of its type, read in a unit. */
export function readValue(raw: number | string | boolean, unit: Unit): Value {
  if (typeof raw === 'string') return { kind: 'text', text: raw };
  if (typeof raw === 'boolean') return { kind: 'truth', truth: raw };
  return { kind: 'number', si: raw, unit };
}

/** What stands in the way of a line or column before any computing. */
export function standing(
  item: Item,
  model: Model,
): Extract<Result, { status: 'problem' | 'waiting' }> | undefined {
  const own = ownProblem(item);
  if (own) {
    // A line whose formula is still to be written is no mistake to mend.
    const status = own.code === 'formula-empty' ? 'waiting' : 'problem';
    return { status, problem: inCell(own, item.id) };
  }
  const stated =
    (item.kind === 'formula' && item.stated !== undefined) ||
    (item.kind === 'formula column' && item.cells !== undefined);
  if ('checked' in item && item.checked.typed.kind === 'broken' && !stated)
    return { status: 'waiting', problem: inCell(waitsOn(item, model), item.id) };
  return undefined;
}

/** How a line stands. */
export function readResult(
  item: InputItem | FormulaItem,
  model: Model,
  engine: Engine,
  system: System,
): Result {
  const stopped = standing(item, model);
  if (stopped) return stopped;
  const idle = item.kind === 'formula' ? readApplies(item, engine) : undefined;
  if (idle) return idle;
  return resultOf(engine.read(item.id), unitOf(item, model, system), item);
}

function resultOf(read: Reading, unit: Unit, item: InputItem | FormulaItem): Result {
  switch (read.status) {
    case 'ok':
      return { status: 'ok', value: readValue(read.value, unit) };
    case 'missing':
      return read;
    case 'problem':
    case 'waiting':
      return { status: read.status, problem: inCell(placedInMethod(read.problem, item), item.id) };
  }
}

/** What the formula of a stated line, or a stated side of a check, comes to; undefined where nothing is stated. */
export function readComputed(
  item: FormulaItem,
  side: Side | undefined,
  model: Model,
  engine: Engine,
  system: System,
): Result | undefined {
  const stated = side ? item.sides?.[side] : item.stated;
  if (!stated) return undefined;
  const wrong = firstError(item.checked.problems);
  const { typed } = item.checked;
  if (wrong || typed.kind === 'broken')
    return { status: wrong ? 'problem' : 'waiting', problem: inCell(wrong ?? waitsOn(item, model), item.id) };
  const id = side ? sideId(item.id, side) : item.id;
  const unit = side ? unitOfSides(item, typed, model, system) : unitOf(item, model, system);
  return resultOf(engine.read(computedId(id)), unit, item);
}

/** The verdict of a check that has a value; `holds` is that value. */
export function readVerdict(
  item: FormulaItem,
  holds: boolean,
  model: Model,
  engine: Engine,
  system: System,
): Verdict {
  const { typed } = item.checked;
  if (typed.kind !== 'compare') return { holds };
  const [demand] = sidesOf(typed);
  const read = (side: Typed) => engine.read(sideId(item.id, side === demand ? 'demand' : 'capacity'));
  return verdictOf(item, typed, holds, read, model, system);
}

/** The unit of a side that is a line or a quantity as it stands; undefined for one that is computed. */
function unitOfSide(side: Typed, model: Model, system: System): Unit | undefined {
  if (side.kind === 'number') return side.unit;
  const line = side.kind === 'cell' ? model.items.get(side.id) : undefined;
  return line && unitOf(line, model, system);
}

/** One unit for both sides of a check, or no reader could compare them: where it states none, one that a side has already. */
function unitOfSides(item: FormulaItem, typed: Typed, model: Model, system: System): Unit {
  if (item.unit || typed.kind !== 'compare') return item.unit ?? PLAIN_UNIT;
  const { type } = typed.left.type.kind === 'number' && typed.left.type.zero ? typed.right : typed.left;
  const [own] = sidesOf(typed).flatMap((side) => (side && unitOfSide(side, model, system)) ?? []);
  const isTime = type.kind === 'number' && type.dimension.key === 'T' && holdsDateDifference(typed);
  const days = isTime ? model.registry.units.get('d') : undefined;
  return own ?? days ?? unitOfType(type, model, system);
}

/** The verdict of a check whose formula is `typed`; `read` gives the value of either side. */
export function verdictOf(
  item: FormulaItem,
  typed: Typed,
  holds: boolean,
  read: (side: Typed) => Reading,
  model: Model,
  system: System,
): Verdict {
  if (typed.kind !== 'compare' || typed.op === '=' || typed.op === '<>') return { holds };
  const { type } = typed.left.type.kind === 'number' && typed.left.type.zero ? typed.right : typed.left;
  if (type.kind !== 'number') return { holds };
  const sides = sidesOf(typed);
  const unit = unitOfSides(item, typed, model, system);
  const quantity = (side: Typed): Quantity | undefined => {
    const found = read(side);
    if (found.status !== 'ok' || typeof found.value !== 'number') return undefined;
    return { kind: 'number', si: found.value, unit };
  };
  const [demand, capacity] = sides.map((side) => side && quantity(side));
  const utilisation = demand && capacity && capacity.si > 0 ? demand.si / capacity.si : undefined;
  return {
    holds,
    ...(demand && { demand }),
    ...(capacity && { capacity }),
    ...(utilisation !== undefined && { utilisation }),
    ...(comparesYesOrNo(typed.left, typed.right, model) && { isYesOrNo: true }),
  };
}
