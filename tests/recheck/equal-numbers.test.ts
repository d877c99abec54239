import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { bookOf } from './books.ts';

const SEED = 20_261_129;
console.log(`recheck: decimals start from seed ${SEED}`);

/** A decimal as people write it, exactly: digits over a power of ten. */
interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}
const written = ({ digits, places }: Decimal): string => {
  const all = digits.toString().padStart(places + 1, '0');
  return places === 0 ? all : `${all.slice(0, -places)}.${all.slice(-places)}`;
};
const decimal = fc
  .record({ digits: fc.integer({ min: 1, max: 9_999_999 }), places: fc.integer({ min: 0, max: 5 }) })
  .map(({ digits, places }): Decimal => ({ digits: BigInt(digits), places }));
const sum = (a: Decimal, b: Decimal): Decimal => {
  const places = Math.max(a.places, b.places);
  const of = (one: Decimal) => one.digits * 10n ** BigInt(places - one.places);
  return { digits: of(a) + of(b), places };
};
const times = (a: Decimal, n: number): Decimal => ({ ...a, digits: a.digits * BigInt(n) });

/** What formulas of one book come to, by name, after the second engine has agreed on each of them. */
async function valuesOf(
  formulas: Readonly<Record<string, string>>,
): Promise<Readonly<Record<string, unknown>>> {
  const lines = Object.fromEntries(Object.entries(formulas).map(([name, text]) => [name, `=${text}`]));
  const notebook = openNotebook(bookOf(lines));
  const { program, values } = recheckProgram(notebook);
  const report = await recheck(program, values);
  expect(report.findings).toEqual([]);
  expect(report.notRechecked).toEqual([]);
  return Object.fromEntries(
    Object.keys(formulas).map((name) => {
      const result = notebook.result(`s.${name}`);
      return [
        name,
        result.status === 'ok' && result.value.kind === 'number' ? result.value.si : result.status,
      ];
    }),
  );
}

/** The formulas that do not come to what they are to, of all draws in one book. */
async function failing<Draw>(
  draws: readonly Draw[],
  casesOf: (draw: Draw) => readonly (readonly [formula: string, wanted: number])[],
): Promise<readonly string[]> {
  const cases = draws.flatMap(casesOf).map(([formula, wanted], at) => ({ name: `x${at}`, formula, wanted }));
  const values = await valuesOf(Object.fromEntries(cases.map(({ name, formula }) => [name, formula])));
  return cases.flatMap(({ name, formula, wanted }) =>
    values[name] === wanted ? [] : [`${formula} is ${values[name]}, not ${wanted}`],
  );
}

const holds = (demand: string, capacity: string) => `IF(${demand} <= ${capacity}; 1; 0)`;
const draw = <Draw>(one: fc.Arbitrary<Draw>) => fc.sample(one, { seed: SEED, numRuns: 60 });

test('a check that is met exactly holds in both engines, whatever the computation leaves, and no step is taken beyond', async () => {
  const draws = draw(fc.tuple(decimal, decimal, fc.integer({ min: 2, max: 97 })));
  const wrong = await failing(draws, ([a, b, n]) => {
    const [x, y, both, many] = [written(a), written(b), written(sum(a, b)), written(times(a, n))];
    return [
      [holds(`${x} + ${y}`, both), 1],
      [holds(both, `${x} + ${y}`), 1],
      [holds(`${n} * ${x} m`, `${many} m`), 1],
      [holds(`${many} m`, `${n} * ${x} m`), 1],
      [`IF(ABS(${x} + ${y} - ${both}) > 0; 1; 0)`, 0],
      [`IF(ABS(${both} - ${x} - ${y}) <= 0; 1; 0)`, 1],
      [`IF(0 < ABS(${x} - ${both}); 1; 0)`, 1],
      [`IF(GREATER(0; ${x} + ${y} - ${both}) > 0; 1; 0)`, 0],
      [`IF(MAX(${both} - ${x} - ${y}; 0) = 0; 1; 0)`, 1],
      [`IF(LESSER(0 m; ${n} * ${x} m - ${many} m) >= 0 m; 1; 0)`, 1],
      [`IF(0 > MIN(${x} - ${both}; 0); 1; 0)`, 1],
      // A foot is 0.3048 m exactly.
      [holds(`${x} ft / 0.3048`, `${x} m`), 1],
      [holds(`${x} m`, `${x} ft / 0.3048`), 1],
      [`ROUND(CEILING(${n} * ${x} m; ${x} m) / (${x} m); 9)`, n],
      [`ROUND(FLOOR(${n} * ${x} m; ${x} m) / (${x} m); 9)`, n],
      [`ROUNDUP(${x} + ${y}; ${sum(a, b).places})`, Number(both)],
      [`ROUNDDOWN(${x} + ${y}; ${sum(a, b).places})`, Number(both)],
    ];
  });
  expect(wrong).toEqual([]);
});

test('an excess of more than a part in 1e12 of the larger side fails, and a lesser one holds, in both engines', async () => {
  const draws = draw(
    fc.tuple(
      fc.double({ min: 1e-3, max: 1e9, noNaN: true }),
      fc.double({ min: 0.01, max: 0.95, noNaN: true }),
      fc.double({ min: 1.05, max: 1e3, noNaN: true }),
    ),
  );
  const wrong = await failing(draws, ([capacity, inside, outside]) => {
    const demand = (parts: number) => `${capacity * (1 + parts * 1e-12)}`;
    return [
      [holds(demand(inside), `${capacity}`), 1],
      [holds(demand(outside), `${capacity}`), 0],
      // No way to write the comparison lets it pass.
      [`IF(${capacity} >= ${demand(outside)}; 1; 0)`, 0],
      [`IF(${demand(outside)} > ${capacity}; 0; 1)`, 0],
      [`IF(${demand(outside)} - ${capacity} <= 0; 1; 0)`, 0],
      [`IF(ABS(${capacity} - ${demand(outside)}) <= 0; 1; 0)`, 0],
      [`IF(MAX(0; ${demand(outside)} - ${capacity}) > 0; 1; 0)`, 1],
    ];
  });
  expect(wrong).toEqual([]);
});

test('a sine or cosine that exceeds one by the rounding of a computation alone is one, in both engines', async () => {
  const values = await valuesOf({
    quarter: 'ASIN(1.1*3/3.3)',
    less: 'ASIN(-(1.1*3/3.3))',
    none: 'ACOS(1.1*3/3.3)',
    half: 'ACOS(-(1.1*3/3.3))',
    beyond: 'ACOS(1.00000000001)',
    within: 'ACOS(0.9999999999)',
  });
  const { within, ...ends } = values;
  expect((1.1 * 3) / 3.3).toBeGreaterThan(1);
  expect(ends).toEqual({
    quarter: Math.PI / 2,
    less: -Math.PI / 2,
    none: 0,
    half: Math.PI,
    beyond: 'problem',
  });
  // cos φ = 1 - φ²/2 near zero.
  expect(within).toBeCloseTo(Math.sqrt(2e-10), 10);
});
