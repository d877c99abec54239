import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkFormula, parseFormula } from '../../src/language/index.ts';
import { fixtureScope } from './fixture-scope.ts';
import { SEED } from './seed.ts';

/**
 * A model of what an aggregate runs over, apart from the checker's: a piece of a formula with the tables whose rows it
 * still has, and whether anywhere in it one call takes in the rows of two tables.
 */
interface Part {
  readonly text: string;
  readonly tables: ReadonlySet<string>;
  readonly mixed: boolean;
}

const together = (parts: readonly Part[]): ReadonlySet<string> =>
  new Set(parts.flatMap(({ tables }) => [...tables]));
const isMixed = (parts: readonly Part[]): boolean => parts.some(({ mixed }) => mixed);

const leaf = (text: string, table?: string): Part => ({
  text,
  tables: new Set(table === undefined ? [] : [table]),
  mixed: false,
});
/** Row by row. */
const each = (text: string, ...parts: readonly Part[]): Part => ({
  text,
  tables: together(parts),
  mixed: isMixed(parts),
});
/** One number of all rows. */
const reduced = (text: string, ...parts: readonly Part[]): Part => ({
  text,
  tables: new Set(),
  mixed: isMixed(parts) || together(parts).size > 1,
});

const leaves = [
  leaf('a.x', 'a'),
  leaf('a.y', 'a'),
  leaf('b.x', 'b'),
  leaf('c.x', 'c'),
  leaf('x'),
  leaf('n'),
  leaf('2'),
];
const { number } = fc.letrec<{ number: Part }>((tie) => {
  const inner = tie('number');
  const aggregate = fc.constantFrom(
    'SUM',
    'MAX',
    'MIN',
    'AVERAGE',
    'MEDIAN',
    'PRODUCT',
    'COUNT',
    'STDEV',
    'SUMSQ',
  );
  const chosen = fc.constantFrom('SUMIF', 'AVERAGEIF', 'MINIF', 'MAXIF');
  return {
    number: fc.oneof(
      { maxDepth: 5, depthSize: 'medium' },
      fc.constantFrom(...leaves),
      fc
        .tuple(inner, fc.constantFrom('+', '-', '*', '/'), inner)
        .map(([l, op, r]) => each(`(${l.text} ${op} ${r.text})`, l, r)),
      inner.map((x) => each(`ABS(${x.text})`, x)),
      fc.tuple(inner, inner).map(([a, b]) => each(`LESSER(${a.text}; ${b.text})`, a, b)),
      fc
        .tuple(inner, inner, inner, inner)
        .map(([a, b, c, d]) => each(`IF(${a.text} < ${b.text}; ${c.text}; ${d.text})`, a, b, c, d)),
      fc.tuple(aggregate, inner).map(([fn, x]) => reduced(`${fn}(${x.text})`, x)),
      fc.tuple(aggregate, inner, inner).map(([fn, x, y]) => reduced(`${fn}(${x.text}; ${y.text})`, x, y)),
      fc.tuple(inner, inner).map(([x, y]) => reduced(`SUMPRODUCT(${x.text}; ${y.text})`, x, y)),
      fc
        .tuple(chosen, inner, inner, inner)
        .map(([fn, a, b, x]) => reduced(`${fn}(${a.text} >= ${b.text}; ${x.text})`, a, b, x)),
      fc.tuple(inner, inner).map(([a, b]) => reduced(`COUNTIF(${a.text} = ${b.text})`, a, b)),
    ),
  };
});

test(`an aggregate runs over the rows of one table at most (seed ${SEED})`, () => {
  const scope = fixtureScope({ 'a.x': '', 'a.y': '', 'b.x': '', 'c.x': '', n: '' }, 'a');
  let refused = 0;
  let sound = 0;
  fc.assert(
    fc.property(number, (part) => {
      const { problems } = checkFormula(parseFormula(part.text), scope);
      const codes = problems.map(({ code }) => code);
      if (part.mixed) {
        expect(codes, part.text).toContain('two-tables-together');
        refused += 1;
      } else {
        expect(codes, part.text).not.toContain('two-tables-together');
        sound += 1;
      }
    }),
    { seed: SEED, numRuns: 4000 },
  );
  expect(refused).toBeGreaterThan(300);
  expect(sound).toBeGreaterThan(300);
});

test('both columns are named, and each table apart is offered where that can be meant', () => {
  const scope = fixtureScope({ 'a.n': '', 'd.z': 'm', 'd.k': 'text' });
  const problemsOf = (formula: string) => checkFormula(parseFormula(formula), scope).problems;
  expect(problemsOf('SUMIF(d.k = "p"; a.n * 2)')).toMatchObject([
    { code: 'two-tables-together', from: 0, to: 25, data: { left: 'd.k', right: 'a.n' }, fixes: [] },
  ]);
  expect(problemsOf('COUNT(a.n; d.z)')[0]?.fixes.map(({ insert }) => insert)).toEqual([
    'COUNT(a.n) + COUNT(d.z)',
  ]);
  expect(problemsOf('SUM(d.z * SUM(a.n))')).toEqual([]);
});
