import { expect, test } from 'vitest';
import { checkFormula, functionTable } from '../../src/language/index.ts';
import {
  anyValue,
  constrained,
  type Growth,
  grow,
  growSubject,
  judge,
  keyOf,
  type Outcome,
  operators,
  type Piece,
  placeFor,
  printPiece,
  randomFrom,
  swapUnits,
  worldComputer,
  worldScope,
} from './generate/index.ts';
import { SEED } from './seed.ts';

const random = randomFrom(SEED + 1);
const places = ['line', 'layers', 'rates'] as const;
const scopes = { line: worldScope(), layers: worldScope('layers'), rates: worldScope('rates') };
const computers = { line: worldComputer(), layers: worldComputer('layers'), rates: worldComputer('rates') };
const timeout = 300_000;

interface Grown {
  readonly piece: Piece;
  readonly place: (typeof places)[number];
}

/** Formulas that have every function and operator outermost, and formulas at large. */
function* grown(eachFunction: number, atLarge: number): Generator<Grown> {
  for (const name of [...constrained, ...operators]) {
    if (name === 'SERIES') continue;
    for (let n = 0; n < eachFunction; n += 1) {
      const place = placeFor(name, random);
      const { piece } = growSubject(name, { ...place, random, depth: random.below(3) });
      yield { piece, place: (place.table ?? 'line') as Grown['place'] };
    }
  }
  for (let n = 0; n < atLarge; n += 1) {
    const place = random.pick(places);
    const growth: Growth = { random, depth: 1 + random.below(4), ...(place !== 'line' && { table: place }) };
    yield { piece: grow(anyValue(random), growth), place };
  }
}

test('every random formula is sound and has the predicted type', { timeout }, () => {
  const used = new Map<string, number>();
  const wrong: string[] = [];
  let count = 0;
  for (const { piece, place } of grown(30, 6000)) {
    const text = printPiece(piece);
    const judged = judge(piece, place === 'line' ? undefined : place);
    const { problems, typed } = checkFormula(text, scopes[place]);
    const axes = typed.type.axes.map((axis) => `${axis.table.slice('w.'.length)}${axis.fresh ? '*' : ''}`);
    const found = problems[0]?.message ?? describe(keyOf(typed.type), axes);
    const expected = judged.ok ? describe(keyOf(judged.type), [...judged.axes]) : judged.why;
    if (found !== expected) wrong.push(`${text}: ${found}, not ${expected}`);
    for (const [name = ''] of text.matchAll(/[A-Z][A-Z\d]*(?=\()/g))
      used.set(name, (used.get(name) ?? 0) + 1);
    count += 1;
  }
  console.log(`random formulas checked: ${count}; least used ${leastUsed(used)}`);
  expect(wrong).toEqual([]);
  const absent = functionTable.map(({ name }) => name).filter((name) => name !== 'SERIES' && !used.has(name));
  expect(absent).toEqual([]);
});

function describe(key: string, axes: readonly string[]): string {
  return [key, ...axes.toSorted()].join(' over ');
}

function leastUsed(used: ReadonlyMap<string, number>): string {
  const sorted = [...used].toSorted(([, a], [, b]) => a - b);
  return sorted
    .slice(0, 5)
    .map(([name, count]) => `${name} ${count}`)
    .join(', ');
}

test('a random formula has the same value in other units', { timeout }, () => {
  const tally = { compared: 0, withoutValue: 0, illConditioned: 0 };
  for (const { piece, place } of grown(35, 5000)) {
    const swapped = swapUnits(piece, random);
    const [text, other] = [printPiece(piece), printPiece(swapped)];
    if (text === other) continue;
    const [values, others] = [computers[place](text), computers[place](other)];
    const wrong = values.findIndex((value, row) => !same(value, others[row] as Outcome, 1e-9));
    if (wrong < 0) tally[values.every(isValue) ? 'compared' : 'withoutValue'] += 1;
    else if (isIllConditioned(piece, place, wrong, others[wrong] as Outcome)) tally.illConditioned += 1;
    else expect(others, `${text} against ${other}`).toEqual(values);
  }
  console.log(`formulas in two sets of units: ${JSON.stringify(tally)}`);
  expect(tally.compared).toBeGreaterThan(4000);
  expect(tally.withoutValue).toBeLessThan(0.2 * tally.compared);
  expect(tally.illConditioned).toBeLessThan(0.01 * tally.compared);
});

function isValue(outcome: Outcome): outcome is number | string | boolean {
  return typeof outcome !== 'object';
}

function same(a: Outcome, b: Outcome, tolerance: number): boolean {
  if (!isValue(a) || !isValue(b)) return !isValue(a) && !isValue(b) && a.problem === b.problem;
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= tolerance * Math.max(Math.abs(a), Math.abs(b));
}

/**
 * Whether a difference is rounding: nudging the literals by a relative 1e-13 moves the value as far. A slip of a unit
 * moves it by much more than any nudge.
 */
function isIllConditioned(piece: Piece, place: Grown['place'], row: number, found: Outcome): boolean {
  const nudged = Array.from({ length: 12 }, () => computers[place](printPiece(nudge(piece)))[row] as Outcome);
  const numbers = nudged.filter((value) => typeof value === 'number');
  if (typeof found !== 'number' || numbers.length < nudged.length)
    return nudged.some((value) => same(value, found, 0));
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)];
  return found >= low - (high - low) && found <= high + (high - low);
}

function nudge(piece: Piece): Piece {
  if (piece.kind === 'number' && piece.unit !== '')
    return { ...piece, value: piece.value * (1 + random.pick([-1, 1]) * 1e-13) };
  return 'args' in piece ? { ...piece, args: piece.args.map(nudge) } : piece;
}
