import { expect, test } from 'vitest';
import { checkFormula, functionTable, type Type } from '../../src/language/index.ts';
import type { Unit } from '../../src/units/index.ts';
import {
  breakAnywhere,
  breakPart,
  constrained,
  type Growth,
  growSubject,
  judge,
  operators,
  type Piece,
  placeFor,
  printPiece,
  randomFrom,
  signatures,
  surround,
  unitsOf,
  worldScope,
} from './generate/index.ts';
import { unitOf } from './generate/quantities.ts';
import { SEED } from './seed.ts';

const random = randomFrom(SEED);
const scopes = { line: worldScope(), layers: worldScope('layers'), rates: worldScope('rates') };
const each = 205;

/** The unit column of a formula of this type; text and truth leave it blank. */
function columnFor(type: Type): Unit | undefined {
  if (type.kind === 'number') return unitOf(type.angle ? 'deg' : random.pick(unitsOf(type.dimension)));
  if (type.kind !== 'point') return undefined;
  if (type.of === 'date') return unitOf('date');
  return unitOf(type.of === 'temperature' ? 'degF' : `ft ${type.of.slice('elevation:'.length)}`);
}

/** Whether a result may stand in a line with this unit: an angle also as the plain number of radians. */
function fitsColumn(type: Type, zero: boolean, unit: Unit | undefined): boolean {
  if (!unit) return true;
  if (unit.point) return type.kind === 'point' && type.of === unit.point;
  if (type.kind !== 'number') return false;
  return zero || (type.dimension.key === unit.dimension.key && (type.angle || !unit.angle));
}

interface Tally {
  refused: number;
  absorbed: number;
}

/** Breaks pieces of a function or operator until enough of the breaks must be refused, and sees that all are. */
function breakMany(
  name: string,
  count: number,
  breaking: (piece: Piece, growth: Growth) => ReturnType<typeof breakPart>,
): Tally {
  const tally: Tally = { refused: 0, absorbed: 0 };
  for (let attempt = 0; tally.refused < count && attempt < count * 50; attempt += 1) {
    const place = placeFor(name, random);
    const growth: Growth = { ...place, random, depth: random.below(3) };
    const { piece, type } = growSubject(name, growth);
    const wrong = breaking(piece, growth);
    if (!wrong) continue;
    const series = name === 'SERIES';
    const context = series
      ? { whole: piece, type }
      : surround(piece, type, { ...growth, depth: Math.min(1, growth.depth) });
    const unit = columnFor(context.type);
    const whole = replaced(context.whole, piece, wrong.piece);
    const judged = series
      ? judge(
          { kind: 'call', fn: 'SUM', args: (whole as Piece & { args: readonly Piece[] }).args },
          place.table,
        )
      : judge(whole, place.table);
    if (judged.ok && fitsColumn(judged.type, judged.zero, unit)) {
      tally.absorbed += 1;
      continue;
    }
    const text = printPiece(whole);
    const { problems, typed } = checkFormula(text, scopes[(place.table ?? 'line') as keyof typeof scopes], {
      ...(unit && { unit }),
      series,
    });
    const told = problems.some(({ severity }) => severity === 'error');
    if (!told || typed.type.kind !== 'unknown')
      throw new Error(`taken for sound: ${text}, ${wrong.how}, in ${unit?.text ?? 'no unit'}`);
    tally.refused += 1;
  }
  return tally;
}

function replaced(piece: Piece, from: Piece, to: Piece): Piece {
  if (piece === from) return to;
  return 'args' in piece ? { ...piece, args: piece.args.map((part) => replaced(part, from, to)) } : piece;
}

test('every dimension-breaking edit under a declared unit column is refused', { timeout: 300_000 }, () => {
  const tallies = new Map<string, Tally>();
  for (const name of [...constrained, ...operators]) tallies.set(name, breakMany(name, each, breakPart));
  for (const name of constrained) tallies.set(`in ${name}`, breakMany(name, 30, breakAnywhere));
  const total = [...tallies.values()].reduce((sum, { refused }) => sum + refused, 0);
  const lines = [...tallies].map(
    ([name, { refused, absorbed }]) => `${name} ${refused}${absorbed ? ` (+${absorbed})` : ''}`,
  );
  console.log(
    `breaking edits refused: ${total}; the edits that leave a sound formula in brackets\n${lines.join(', ')}`,
  );
  const few = [...constrained, ...operators].filter((name) => (tallies.get(name)?.refused ?? 0) < 200);
  expect(few).toEqual([]);
  expect(total).toBeGreaterThanOrEqual(10_000);
});

test('the table of kinds here names every function of the language', () => {
  const known = [...signatures.map(({ name }) => name), 'POWER', 'SERIES'];
  expect(functionTable.map(({ name }) => name).toSorted()).toEqual(known.toSorted());
});

/** PI and ROW take no argument; COUNT, ISBLANK and KNOWN take a value of any kind, so no edit of one breaks them. */
test('only functions without arguments, or for values of any kind, have no constraint', () => {
  const free = functionTable.map(({ name }) => name).filter((name) => !constrained.includes(name));
  expect(free.toSorted()).toEqual(['COUNT', 'ISBLANK', 'KNOWN', 'PI', 'ROW']);
});
