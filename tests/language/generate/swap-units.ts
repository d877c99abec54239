import type { Unit } from '../../../src/units/index.ts';
import { type Piece, withParts } from './piece.ts';
import { angleUnits, elevationUnits, temperatureUnits, unitOf, unitsOf } from './quantities.ts';
import type { Random } from './random.ts';

/** The same formula with every unit replaced by another of its dimension and the number converted. */
export function swapUnits(piece: Piece, random: Random): Piece {
  if (piece.kind === 'number') return piece.unit === '' ? piece : inAnotherUnit(piece, random);
  if (piece.kind !== 'call') return withParts(piece, 'args' in piece ? piece.args.map(swap) : []);
  // A constant exponent and the decimals of TEXT are written plainly.
  const literal = piece.fn === 'POWER' || piece.fn === 'TEXT';
  return withParts(
    piece,
    piece.args.map((arg, at) => (literal && at > 0 ? arg : swap(arg))),
  );

  function swap(part: Piece): Piece {
    return swapUnits(part, random);
  }
}

function inAnotherUnit(number: Piece & { kind: 'number' }, random: Random): Piece {
  const from = unitOf(number.unit);
  const others = unitTextsLike(from).filter((text) => text !== number.unit);
  const unit = random.pick(others);
  const to = unitOf(unit);
  const value = (number.value * from.factor + from.offset - to.offset) / to.factor;
  return { kind: 'number', value, unit };
}

function unitTextsLike(unit: Unit): readonly string[] {
  if (unit.point === 'temperature') return temperatureUnits;
  if (unit.point?.startsWith('elevation:'))
    return elevationUnits.map((length) => `${length} ${unit.point?.slice('elevation:'.length)}`);
  return unit.angle ? angleUnits : unitsOf(unit.dimension);
}
