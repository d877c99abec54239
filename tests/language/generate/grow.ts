import { type NumberType, numberType, type Type, textType, truthType } from '../../../src/language/index.ts';
import { isTameDimension, overDimension, powerDimension, timesDimension } from '../../../src/units/index.ts';
import { leaf, ownNames, wholeColumns } from './leaves.ts';
import type { Piece } from './piece.ts';
import {
  angle,
  anyMeasured,
  anyNumber,
  anyValue,
  date,
  dimensions,
  keyOf,
  plain,
  points,
} from './quantities.ts';
import type { Random } from './random.ts';
import { shaped } from './shapes.ts';
import { powerOf, type Signature, type Slot, signatures, slotsFor } from './signatures.ts';
import { worldTables } from './world.ts';

/** Where a piece stands. */
export interface Place {
  /** The table whose column the formula is. */
  readonly table?: string;
  /** The table whose whole columns may be named here, inside an aggregate. */
  readonly fresh?: string;
}

/** What growing needs: chance, the place, and how much deeper it may go. */
export interface Growth extends Place {
  readonly random: Random;
  readonly depth: number;
}

/** A random piece of a type. */
export function grow(type: Type, growth: Growth): Piece {
  const { random, depth } = growth;
  if (depth <= 0 || random.chance(0.18)) return leaf(type, growth);
  const inner = { ...growth, depth: depth - 1 };
  if (random.chance(0.5)) {
    const fitting = signaturesFor(type, growth);
    if (fitting.length > 0) {
      const call = growCall(random.pick(fitting), type, inner);
      if (call) return call;
    }
  }
  return growOperation(type, inner);
}

const fittingByKey = new Map<string, readonly Signature[]>();

function signaturesFor(type: Type, { table, fresh }: Place): readonly Signature[] {
  const key = `${keyOf(type)}, ${table}, ${fresh}`;
  const place = { ...(table !== undefined && { table }), ...(fresh !== undefined && { fresh }) };
  const found = fittingByKey.get(key) ?? signatures.filter((signature) => mayGive(signature, type, place));
  fittingByKey.set(key, found);
  return found;
}

/** Whether a call of the function can have a type, in this place. */
export function mayGive({ name, result }: Signature, type: Type, place: Place): boolean {
  if (name === 'KNOWN') return false;
  if (/^(ABOVE|ROW|RUNNING)/.test(name)) {
    if (place.table === undefined || place.fresh !== undefined) return false;
    if (name !== 'ROW' && ownNames(type, place).length === 0) return false;
  }
  if (result === 'plain') return keyOf(type) === keyOf(plain);
  if (result === 'angle') return keyOf(type) === keyOf(angle);
  if (result === 'date') return keyOf(type) === keyOf(date);
  if (result === 'truth' || result === 'text') return type.kind === result;
  if (/^[VW]/.test(result)) return true;
  if (/^[AB]/.test(result)) return type.kind === 'number' || type.kind === 'point';
  if (type.kind !== 'number') return false;
  return result.length === 1 || !type.angle;
}

/** A random call of a function that has the type; undefined where its arguments would have no dimension to speak of. */
export function growCall(signature: Signature, type: Type, growth: Growth): Piece | undefined {
  const { random } = growth;
  const letters = new Map<string, Type>();
  const [letter = '', power] = signature.result.split('^');
  if (power !== undefined && type.kind === 'number') {
    const { n, d } = powerOf(power);
    const dimension = powerDimension(type.dimension, { n: d, d: n });
    if (!isTameDimension(dimension)) return undefined;
    letters.set(letter, numberType(dimension));
  } else if (/^[a-cABVW]$/.test(letter)) letters.set(letter, type);
  const slots = slotsFor(signature, countOf(signature, random));
  if (!slots) throw new Error(`no count of arguments fits ${signature.name}`);
  const factors =
    signature.result === 'product' ? split(type as NumberType, slots.length, random) : undefined;
  const fresh = gatheredTable(slots, growth);
  const shape = shaped({ signature, letters, fresh, growth }, slots);
  const pools = signature.slots.some((slot) => Array.isArray(slot) && slot.some((part) => part.column));
  const args = slots.map((slot, at): Piece => {
    const found = shape(slot, at);
    if (found) return found;
    const wanted = factors?.[at] ?? typeFor(slot, letters, random);
    // The product of a whole column has a dimension only if the column is plain.
    const single = signature.name === 'PRODUCT' && keyOf(wanted) !== keyOf(plain);
    const inner = single ? withFresh(growth, undefined) : slot.column ? withFresh(growth, fresh) : growth;
    const columns = pools && inner.fresh !== undefined ? wholeColumns(wanted, inner) : [];
    if (columns.length > 0 && random.chance(0.08))
      return { kind: 'call', fn: 'KNOWN', args: [{ kind: 'name', name: random.pick(columns) }] };
    return grow(wanted, inner);
  });
  // A last condition TRUE is for all else.
  if (signature.name === 'IFS' && random.chance(0.7)) args[args.length - 2] = { kind: 'truth', value: true };
  return { kind: 'call', fn: signature.name, args };
}

/** The table whose rows a call gathers: another one where its other arguments run over a table already. */
function gatheredTable(slots: readonly Slot[], { fresh, random }: Growth): string | undefined {
  if (!slots.some((slot) => slot.column)) return undefined;
  const all = [...worldTables.keys()];
  if (fresh === undefined) return random.pick(all);
  const each = slots.some((slot) => !slot.column && slot.kind !== 'option');
  return each ? random.pick(all.filter((table) => table !== fresh)) : fresh;
}

function withFresh({ fresh: _, ...rest }: Growth, fresh: string | undefined): Growth {
  return fresh === undefined ? rest : { ...rest, fresh };
}

/** The type an argument is grown with; a letter not bound yet is bound. */
export function typeFor({ kind }: Slot, letters: Map<string, Type>, random: Random): Type {
  const bound = letters.get(kind);
  if (bound) return bound;
  const fixed: Readonly<Record<string, Type>> = {
    plain,
    unmarked: plain,
    angle,
    truth: truthType,
    text: textType,
    date,
  };
  const found =
    fixed[kind] ??
    (kind === 'n' || /^[abc]$/.test(kind)
      ? anyNumber(random)
      : /^[AB]$/.test(kind)
        ? anyMeasured(random)
        : anyValue(random));
  if (/^[a-cABVW]$/.test(kind)) letters.set(kind, found);
  return found;
}

function countOf(signature: Signature, random: Random): number {
  const least = signature.slots.reduce(
    (count, slot) => count + (Array.isArray(slot) ? slot.length : (slot as Slot).optional ? 0 : 1),
    0,
  );
  const group = signature.slots.find((slot): slot is readonly Slot[] => Array.isArray(slot));
  if (group) {
    const two = group.some((slot) => slot.shape === 'two') ? 1 : 0;
    return least + group.length * (two + random.below(2));
  }
  const optional = signature.slots.length - least;
  return least + random.below(optional + 1);
}

/** Types whose product is a type: all but one chosen at will. */
function split(type: NumberType, count: number, random: Random): readonly Type[] {
  const chosen = Array.from({ length: count - 1 }, () => random.pick(dimensions));
  const last = overDimension(type.dimension, chosen.reduce(timesDimension, plainDimension));
  return [...chosen.map((dimension) => numberType(dimension)), numberType(last)];
}
const plainDimension = (plain as NumberType).dimension;

function growOperation(type: Type, growth: Growth): Piece {
  const { random } = growth;
  const one = (wanted: Type) => grow(wanted, growth);
  switch (type.kind) {
    case 'text':
      return { kind: 'binary', op: '&', args: [one(type), one(type)] };
    case 'truth': {
      const sides = anyValue(random);
      const ordered = sides.kind !== 'truth';
      const op = random.pick(ordered ? (['=', '<>', '<', '<=', '>', '>='] as const) : (['=', '<>'] as const));
      const second: Piece = sides.kind === 'number' && random.chance(0.15) ? { kind: 'zero' } : one(sides);
      return { kind: 'compare', op, args: [one(sides), second] };
    }
    case 'point': {
      const gap = differenceOf(type);
      if (random.chance(0.25)) return { kind: 'binary', op: '+', args: [one(gap), one(type)] };
      return { kind: 'binary', op: random.pick(['+', '-'] as const), args: [one(type), one(gap)] };
    }
    case 'number':
      return growArithmetic(type, growth);
    case 'unknown':
      throw new Error('no piece has an unknown type');
  }
}

function differenceOf(point: Type & { readonly kind: 'point' }): NumberType {
  const unit = point.of === 'temperature' ? 'Θ' : point.of === 'date' ? 'T' : 'L';
  return numberType({ key: unit, powers: [[unit, { n: 1, d: 1 }]] });
}

function growArithmetic(type: NumberType, growth: Growth): Piece {
  const { random } = growth;
  const one = (wanted: Type): Piece => grow(wanted, growth);
  const sum = (): Piece => {
    const point = points.find((each) => each.kind === 'point' && keyOf(differenceOf(each)) === keyOf(type));
    if (point && random.chance(0.2)) return { kind: 'binary', op: '-', args: [one(point), one(point)] };
    const second: Piece = random.chance(0.1) ? { kind: 'zero' } : one(type);
    return { kind: 'binary', op: random.pick(['+', '-'] as const), args: [one(type), second] };
  };
  const scaled = (): Piece =>
    random.chance(0.5)
      ? { kind: 'binary', op: random.pick(['*', '/'] as const), args: [one(type), one(plain)] }
      : { kind: 'binary', op: '*', args: [one(plain), one(type)] };
  const product = (): Piece => {
    const other = numberType(random.pick(dimensions.slice(1)));
    return random.chance(0.5)
      ? {
          kind: 'binary',
          op: '*',
          args: [one(other), one(numberType(overDimension(type.dimension, other.dimension)))],
        }
      : {
          kind: 'binary',
          op: '/',
          args: [one(numberType(timesDimension(type.dimension, other.dimension))), one(other)],
        };
  };
  const power = (): Piece => {
    const [exponent, inverse] = random.pick([
      ['2', { n: 1, d: 2 }],
      ['3', { n: 1, d: 3 }],
      ['-1', { n: -1, d: 1 }],
      ['(1/2)', { n: 2, d: 1 }],
      ['0.5', { n: 2, d: 1 }],
      ['(2/3)', { n: 3, d: 2 }],
    ] as const);
    const dimension = powerDimension(type.dimension, inverse);
    if (!isTameDimension(dimension)) return sum();
    const call = random.chance(0.2) && exponent !== '0.5';
    const base = one(numberType(dimension));
    if (!call) return { kind: 'power', exponent: exponent === '0.5' ? '(1/2)' : exponent, args: [base] };
    const [n = 1, d] = exponent.replace(/[()]/g, '').split('/').map(Number);
    const top: Piece = { kind: 'number', value: n, unit: '' };
    const raised: Piece =
      d === undefined
        ? top
        : { kind: 'binary', op: '/', args: [top, { kind: 'number', value: d, unit: '' }] };
    return { kind: 'call', fn: 'POWER', args: [base, raised] };
  };
  const root = (): Piece => ({
    kind: 'root',
    args: [one(numberType(powerDimension(type.dimension, { n: 2, d: 1 })))],
  });
  const negate = (): Piece => ({ kind: 'negate', args: [one(type)] });
  if (type.angle) return random.pick([sum, scaled, negate])();
  const percent = (): Piece =>
    type.dimension.key === '' ? { kind: 'percent', args: [one(type)] } : scaled();
  return random.pick([sum, sum, scaled, product, product, power, root, negate, percent])();
}
