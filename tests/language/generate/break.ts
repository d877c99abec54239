import type { Type } from '../../../src/language/index.ts';
import type { Growth } from './grow.ts';
import { grow } from './grow.ts';
import { type Piece, partsOf, withParts } from './piece.ts';
import { angleUnits, anyValue, elevationUnits, keyOf, unitOf, unitsOf } from './quantities.ts';
import type { Random } from './random.ts';
import { judge } from './type-of.ts';

/** A piece with one part made wrong, and how. */
export interface Broken {
  readonly piece: Piece;
  readonly how: string;
}

/** Changes one direct part of a piece so that it is of another kind; undefined if nothing of the sort was found. */
export function breakPart(piece: Piece, growth: Growth): Broken | undefined {
  const parts = partsOf(piece);
  const { random, table } = growth;
  const at = random.below(parts.length);
  const part = parts[at];
  if (!part) return undefined;
  const broken = otherKind(part, growth, table);
  return broken && { piece: withParts(piece, parts.toSpliced(at, 1, broken.piece)), how: broken.how };
}

/** Changes some part at any depth. */
export function breakAnywhere(piece: Piece, growth: Growth): Broken | undefined {
  const parts = partsOf(piece);
  const { random } = growth;
  if (parts.length === 0) return undefined;
  const at = random.below(parts.length);
  const part = parts[at] as Piece;
  const deeper = random.chance(0.65) ? breakAnywhere(part, growth) : undefined;
  const broken = deeper ?? otherKind(part, growth, growth.table);
  return broken && { piece: withParts(piece, parts.toSpliced(at, 1, broken.piece)), how: broken.how };
}

/** A piece in place of another, of a different kind: a slip a person makes, or something else altogether. */
function otherKind(part: Piece, growth: Growth, table: string | undefined): Broken | undefined {
  const { random } = growth;
  const slip = part.kind === 'number' ? slipOf(part, random) : undefined;
  if (slip && random.chance(0.6)) return slip;
  // Inside KNOWN, and where a literal is asked for, there is nothing to judge on its own.
  const judged = judge(part, table);
  if (!judged.ok) return undefined;
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const type: Type = anyValue(random);
    if (keyOf(type) === keyOf(judged.type)) continue;
    return { piece: grow(type, growth), how: `${keyOf(judged.type)} replaced by ${keyOf(type)}` };
  }
  return undefined;
}

/** Slips with a literal's unit. */
function slipOf(number: Piece & { kind: 'number' }, random: Random): Broken | undefined {
  const unit = unitOf(number.unit);
  const inUnit = (text: string, how: string): Broken => ({ piece: { ...number, unit: text }, how });
  const slips: Broken[] = [];
  if (unit.angle) slips.push(inUnit('', 'an angle unmarked'));
  else if (number.unit !== '' && unit.dimension.key !== '') slips.push(inUnit('', 'a unit dropped'));
  if (unit.dimension.key === '' && !unit.angle)
    slips.push(inUnit(random.pick(angleUnits), 'a number marked'));
  if (unit.dimension.key === 'M') slips.push(inUnit('kip', 'mass for force'));
  if (unit.dimension.key === 'L M T^-2') slips.push(inUnit(random.pick(['t', 'lbm']), 'force for mass'));
  if (unit.dimension.key === 'L^-3 M') slips.push(inUnit('pcf', 'density for unit weight'));
  if (unit.dimension.key === 'L^-2 M T^-2') slips.push(inUnit('lbm/ft^3', 'unit weight for density'));
  if (unit.point === 'temperature') slips.push(inUnit('K', 'a temperature made a difference'));
  if (unit.point?.startsWith('elevation:')) {
    const other = unit.point.endsWith('MLLW') ? 'NAVD88' : 'MLLW';
    slips.push(
      inUnit(`${random.pick(elevationUnits)} ${other}`, 'datums mixed'),
      inUnit('ft', 'a datum dropped'),
    );
  }
  if (unit.dimension.key === 'L' && !unit.point)
    slips.push(inUnit(random.pick(unitsOf(unitOf('m^2').dimension)), 'a length made an area'));
  return slips.length === 0 ? undefined : random.pick(slips);
}
