import { type Type, truthType } from '../../../src/language/index.ts';
import { type Growth, grow, typeFor } from './grow.ts';
import { literalOf, ownNames, smallNumber } from './leaves.ts';
import type { Piece } from './piece.ts';
import { angle, anyNumber, keyOf, plain, unitsOf } from './quantities.ts';
import type { Signature, Slot } from './signatures.ts';
import { worldNames, worldTables } from './world.ts';

/** A call being grown. */
interface Call {
  readonly signature: Signature;
  readonly letters: Map<string, Type>;
  /** The table whose rows the call gathers. */
  readonly fresh: string | undefined;
  readonly growth: Growth;
}

const number = (value: number, unit = ''): Piece => ({ kind: 'number', value, unit });
const call = (fn: string, ...args: readonly Piece[]): Piece => ({ kind: 'call', fn, args });
const plus = (...args: readonly Piece[]): Piece => ({ kind: 'binary', op: '+', args });
const times = (...args: readonly Piece[]): Piece => ({ kind: 'binary', op: '*', args });

/**
 * Gives arguments that keep a function where it has a value; undefined leaves an argument to chance. The kinds are
 * right with or without a shape.
 */
export function shaped(of: Call, slots: readonly Slot[]): (slot: Slot, at: number) => Piece | undefined {
  const { signature, letters, growth, fresh } = of;
  const { random } = growth;
  const gathering = { ...growth, ...(fresh !== undefined && { fresh }) };
  const table = gathering.fresh;
  const one = (type: Type, place: Growth = growth): Piece => grow(type, place);
  const typeOf = (slot: Slot): Type => typeFor(slot, letters, random);
  const lowest = Number((smallNumber(random) * 0.1).toPrecision(3));
  const columnOf = (type: Type, rising: boolean): string | undefined => {
    const found = worldNames.filter(
      (each) => each.table === table && keyOf(each.type) === keyOf(type) && (!rising || each.rising),
    );
    const [chosen] = found.length > 0 ? [random.pick(found)] : [];
    return chosen && `${table}.${chosen.name}`;
  };
  // A lookup's columns are chosen before its other arguments, which must suit them.
  const lookup = /^(INDEX|MATCH|LOOKUP|INTERPOLATE|INTERPOLATE2)$/.test(signature.name)
    ? planLookup()
    : undefined;

  function planLookup() {
    const keySlot = slots.find((slot) => slot.shape === 'keys' || slot.shape === 'rising');
    const option = slots.find((slot) => slot.kind === 'option');
    const choice = option?.choices ? random.pick(option.choices) : undefined;
    if (!keySlot) return { choice, key: undefined };
    const rising = keySlot.shape === 'rising' || choice?.startsWith('at ');
    const keys = worldNames.filter(
      (each) =>
        each.table === table &&
        (!rising || each.rising) &&
        (!letters.has(keySlot.kind) || keyOf(letters.get(keySlot.kind) as Type) === keyOf(each.type)) &&
        (keySlot.kind === 'V' || each.type.kind === 'number' || each.type.kind === 'point'),
    );
    const key = keys.length > 0 ? random.pick(keys) : undefined;
    if (key && !letters.has(keySlot.kind)) letters.set(keySlot.kind, key.type);
    return { choice, key: key && `${table}.${key.name}` };
  }

  return (slot, at) => {
    if (slot.kind === 'option') {
      if (signature.name === 'TEXT')
        return at === 1 ? { kind: 'text', text: textUnit() } : number(random.below(4));
      return { kind: 'text', text: lookup?.choice ?? random.pick(slot.choices ?? ['']) };
    }
    switch (slot.shape) {
      case 'digits':
        return number(random.below(4));
      case 'step':
        return literalOf(typeOf(slot), random);
      case 'positive':
        return plus(call('ABS', one(typeOf(slot))), literalOf(typeOf(slot), random) as Piece);
      case 'small':
        return random.chance(0.5) ? number(smallNumber(random) * 0.1) : call('SIN', one(angle));
      case 'above':
        return plus(number(1), call('ABS', one(plain)));
      case 'base':
        return number(random.pick([2, 10, 0.5]));
      case 'sine':
        return times(number(0.9), call('SIN', one(angle)));
      case 'chance':
        return plus(number(0.5), times(number(0.4), call('COS', one(angle))));
      case 'place':
        return number(signature.name === 'CHOOSE' ? 1 + random.below(slots.length - 1) : 1 + random.below(3));
      case 'cell': {
        const names = worldNames.filter((each) => each.table === undefined || each.table === growth.table);
        return { kind: 'name', name: random.pick(names).name };
      }
      case 'some':
        return random.chance(0.5)
          ? call('OR', { kind: 'truth', value: true }, one(truthType, gathering))
          : { kind: 'compare', op: '>=', args: [columnPlain(), { kind: 'zero' }] };
      case 'two':
        return at === 0 && table !== undefined ? wholeColumn(typeOf(slot), false) : undefined;
      case 'rank':
      case 'row':
        return number(1 + random.below(worldTables.get(table ?? '') ?? 1));
      case 'column':
        // A grid of one point, since columns taken at will make no grid.
        return signature.name === 'INTERPOLATE2' && random.chance(0.5)
          ? literalOf(typeOf(slot), random)
          : wholeColumn(typeOf(slot), false);
      case 'keys':
      case 'rising':
        return lookup?.key === undefined
          ? wholeColumn(typeOf(slot), true)
          : { kind: 'name', name: lookup.key };
      case 'key':
        if (lookup?.key === undefined) return undefined;
        if (lookup.choice?.startsWith('at ')) return within(lookup.key, typeOf(slot));
        return call('INDEX', { kind: 'name', name: lookup.key }, number(1 + random.below(3)));
      case 'inside':
        return lookup?.key === undefined ? undefined : within(lookup.key, typeOf(slot));
      case 'own':
        return { kind: 'name', name: random.pick(ownNames(typeOf(slot), growth)) };
      case 'low':
        return stepped(typeOf(slot), slots[at - 1]?.shape === 'low' ? 2 : 1);
      case 'high':
        return stepped(typeOf(slot), 4);
      case 'text':
        letters.set('n', anyNumber(random));
        return one(typeOf(slot));
      case 'year':
        return number(2020 + random.below(12));
      case 'month':
        return number(1 + random.below(12));
      case 'days':
        return number(random.below(40));
      default:
        return undefined;
    }
  };

  /** A literal so many steps up, the same unit for every step. */
  function stepped(type: Type, steps: number): Piece {
    const unit = type.kind === 'number' && !type.angle ? (unitsOf(type.dimension)[0] ?? '') : 'rad';
    return number(Number((lowest * steps).toPrecision(3)), unit);
  }

  function textUnit(): string {
    const type = letters.get('n') ?? plain;
    if (type.kind !== 'number') return '';
    return type.angle ? 'deg' : random.pick(unitsOf(type.dimension));
  }

  function wholeColumn(type: Type, rising: boolean): Piece | undefined {
    const name = columnOf(type, rising);
    return name === undefined ? undefined : { kind: 'name', name };
  }

  function columnPlain(): Piece {
    return { kind: 'name', name: table === 'rates' ? 'rates.size' : 'layers.n' };
  }

  /** Held between the first and the last of rising keys. */
  function within(keys: string, type: Type): Piece {
    const rows = worldTables.get(keys.split('.')[0] ?? '') ?? 1;
    const at = (row: number) => call('INDEX', { kind: 'name', name: keys }, number(row));
    return call('MAX', at(1), call('MIN', at(rows), one(type)));
  }
}
