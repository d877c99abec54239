import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { Engine } from '../engine/index.ts';
import type { Type } from '../language/index.ts';
import { PLAIN_UNIT, preferredUnit, type Unit } from '../units/index.ts';
import type { Item, Model } from './model.ts';
import type { Result, Value, Verdict } from './result.ts';
import { capacityId, demandId } from './sync.ts';

type System = 'SI' | 'US';

/** The unit a line is read in: its unit column, the unit of its entry, else the book's preferred one. */
export function unitOf(item: Item, model: Model, system: System): Unit {
  if (item.unit) return item.unit;
  if (item.kind === 'input' && (item.entry?.kind === 'number' || item.entry?.kind === 'point'))
    return item.entry.unit;
  return unitOfType(item.type, model, system);
}

function unitOfType(type: Type, model: Model, system: System): Unit {
  if (type.kind === 'number') return preferredUnit(type.dimension, type.angle, system, model.registry);
  if (type.kind === 'point' && type.of === 'temperature') return model.registry.units.get('degC') ?? PLAIN_UNIT;
  return PLAIN_UNIT;
}

/** An engine's raw value as a value of the line's type. */
export function valueOf(type: Type, raw: number | string | boolean, unit: Unit): Value {
  if (typeof raw === 'string') return { kind: 'text', text: raw };
  if (type.kind === 'truth' || typeof raw === 'boolean') return { kind: 'truth', truth: Boolean(raw) };
  return { kind: 'number', si: raw, unit };
}

/** The first problem a line has of its own, before any computing. */
function ownProblem(item: Item): Problem | undefined {
  const found = item.problems.find((one) => one.severity === 'error');
  if (found) return found;
  if (item.kind === 'formula' || item.kind === 'formula column')
    return item.checked.problems.find((one) => one.severity === 'error');
  return undefined;
}

/** How a line stands. */
export function readResult(item: Item, model: Model, engine: Engine, system: System): Result {
  const own = ownProblem(item);
  if (own) return { status: 'problem', problem: inCell(own, item.id) };
  if ((item.kind === 'formula' || item.kind === 'formula column') && item.checked.typed.kind === 'broken')
    return { status: 'waiting', problem: inCell(waitsOn(item, model), item.id) };
  const read = engine.read(item.id);
  switch (read.status) {
    case 'ok':
      return { status: 'ok', value: valueOf(item.type, read.value, unitOf(item, model, system)) };
    case 'missing':
      return { status: 'missing' };
    case 'problem':
    case 'waiting':
      return { status: read.status, problem: inCell(read.problem, item.id) };
  }
}

/** A formula without a problem of its own and without a type waits on something that has one. */
export function waitsOn(item: Item, model: Model): Problem {
  const references = 'checked' in item ? [...item.checked.references] : [];
  const on = references.find((id) => model.items.get(id)?.type.kind === 'unknown') ?? references[0] ?? item.id;
  return problem('waits-on', { from: 0, to: 0 }, { on });
}

/** The verdict of a check that has a value. */
export function readVerdict(item: Item, holds: boolean, model: Model, engine: Engine, system: System): Verdict {
  if (item.kind !== 'formula' || item.checked.typed.kind !== 'compare') return { holds };
  const node = item.checked.typed;
  const sides = [node.left, node.right];
  if (node.op === '=' || node.op === '<>' || sides.some((side) => side.type.kind !== 'number')) return { holds };
  const read = (id: string, type: Type) => {
    const found = engine.read(id);
    if (found.status !== 'ok' || typeof found.value !== 'number') return undefined;
    const unit = item.unit ?? unitOfType(type, model, system);
    return { kind: 'number' as const, si: found.value, unit };
  };
  const { left, right } = node;
  const type = left.type.kind === 'number' && left.type.zero ? right.type : left.type;
  const demand = read(demandId(item.id), type);
  const capacity = read(capacityId(item.id), type);
  const utilisation = demand && capacity && capacity.si > 0 ? demand.si / capacity.si : undefined;
  return {
    holds,
    ...(demand && { demand }),
    ...(capacity && { capacity }),
    ...(utilisation !== undefined && { utilisation }),
  };
}
