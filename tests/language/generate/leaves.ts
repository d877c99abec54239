import type { Type } from '../../../src/language/index.ts';
import type { Growth } from './grow.ts';
import type { Piece } from './piece.ts';
import { angleUnits, elevationUnits, keyOf, temperatureUnits, unitOf, unitsOf } from './quantities.ts';
import type { Random } from './random.ts';
import { type WorldName, worldNames } from './world.ts';

/** A name or a literal of a type. */
export function leaf(type: Type, growth: Growth): Piece {
  const { random } = growth;
  const names = namesOf(type, growth);
  const literal = literalOf(type, random);
  if (names.length > 0 && (!literal || random.chance(growth.fresh ? 0.7 : 0.5)))
    return { kind: 'name', name: random.pick(names) };
  if (literal) return literal;
  throw new Error(`no leaf for ${keyOf(type)}`);
}

/** The names of the world by the key of their type. */
const byKey = new Map<string, WorldName[]>();
for (const each of worldNames) {
  const key = keyOf(each.type);
  byKey.set(key, [...(byKey.get(key) ?? []), each]);
}

/** The names of a type that may be written here. */
function namesOf(type: Type, { table, fresh }: Pick<Growth, 'table' | 'fresh'>): readonly string[] {
  return (byKey.get(keyOf(type)) ?? []).flatMap((each) => {
    if (each.table === undefined) return [each.name];
    const here = each.table === table ? [each.name] : [];
    // A whole column twice as often, since that is what stands inside aggregates.
    const whole = `${each.table}.${each.name}`;
    return each.table === fresh ? [...here, whole, whole] : here;
  });
}

/** This row's values of a type. */
export function ownNames(type: Type, { table }: Pick<Growth, 'table'>): readonly string[] {
  return namesInTable(type, table);
}

/** The whole columns of a type that may be named here, as `table.column`. */
export function wholeColumns(type: Type, { fresh }: Pick<Growth, 'fresh'>): readonly string[] {
  return namesInTable(type, fresh).map((name) => `${fresh}.${name}`);
}

function namesInTable(type: Type, table: string | undefined): readonly string[] {
  if (table === undefined) return [];
  return (byKey.get(keyOf(type)) ?? []).filter((each) => each.table === table).map((each) => each.name);
}

/** A number of ordinary size, in few digits, above zero. */
export function smallNumber(random: Random): number {
  return random.pick([0.25, 0.5, 1.5, 2, 2.5, 3, 4, 7.5, 10, 12.25]) * random.pick([1, 1, 1, 0.1, 3]);
}

/** A literal of a type; dates have none. */
export function literalOf(type: Type, random: Random): Piece | undefined {
  switch (type.kind) {
    case 'text':
      return { kind: 'text', text: random.pick(['clay', 'Sand', 'a "b" c', '', ' night ', 'Kai é']) };
    case 'truth':
      return { kind: 'truth', value: random.chance(0.5) };
    case 'point': {
      if (type.of === 'date') return undefined;
      const value = random.pick([1, -1]) * smallNumber(random);
      if (type.of === 'temperature') return { kind: 'number', value, unit: random.pick(temperatureUnits) };
      return {
        kind: 'number',
        value,
        unit: `${random.pick(elevationUnits)} ${type.of.slice('elevation:'.length)}`,
      };
    }
    case 'number': {
      if (type.angle)
        return { kind: 'number', value: smallNumber(random) * 0.1, unit: random.pick(angleUnits) };
      const unit = random.pick(unitsOf(type.dimension));
      // Of the size of a few SI units whatever the unit, so that sums are of comparable parts.
      const size =
        type.dimension.key === '' ? 1 : unitOf(unit).factor / unitOf(unitsOf(type.dimension)[0] ?? '').factor;
      const value = Number((smallNumber(random) / size).toPrecision(4));
      return { kind: 'number', value, unit };
    }
    case 'unknown':
      return undefined;
  }
}
