import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findFunction } from '../../src/language/index.ts';
import { newSheet, type Sheet } from './sheet.ts';

const SEED = 20_261_128;
console.log(`engine: searches against plain loops start from seed ${SEED}`);

// The plain loops, written apart from the engine: every row looks at every row.

const equal = (a: number, b: number) => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));
const holds: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '=': equal,
  '<>': (a, b) => !equal(a, b),
  '<': (a, b) => a < b && !equal(a, b),
  '<=': (a, b) => a < b || equal(a, b),
  '>': (a, b) => a > b && !equal(a, b),
  '>=': (a, b) => a > b || equal(a, b),
};
const operators = Object.keys(holds);

function neumaier(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

const makes: Readonly<Record<string, (values: readonly number[]) => number>> = {
  SUMIF: neumaier,
  COUNTIF: (values) => values.length,
  AVERAGEIF: (values) => neumaier(values) / values.length,
  MINIF: (values) => (values.length > 0 ? values.reduce((a, b) => Math.min(a, b)) : Number.NaN),
  MAXIF: (values) => (values.length > 0 ? values.reduce((a, b) => Math.max(a, b)) : Number.NaN),
};

/** Few keys, some of them apart by less or little more than the tolerance, so that ties of every kind occur. */
const key = fc.oneof(
  fc.integer({ min: -3, max: 3 }),
  fc.integer({ min: 1, max: 4 }).map((n) => 2 * (1 + n * 0.4e-12)),
  fc.integer({ min: 1, max: 4 }).map((n) => -1e9 * (1 - n * 0.6e-12)),
);
const value = fc.oneof(fc.integer({ min: -9, max: 9 }), fc.double({ noNaN: true, min: -1e12, max: 1e12 }));
const blankable = (one: fc.Arbitrary<number>, blanks: boolean) =>
  blanks ? fc.option(one, { nil: null, freq: 40 }) : one.map((number) => number as number | null);
const rows = fc.integer({ min: 0, max: 9 }).chain((blanks) =>
  fc.array(
    fc.record({
      k: blankable(key, blanks === 0),
      z: blankable(key, blanks === 1),
      b: blankable(key, blanks === 2),
      v: blankable(value, blanks === 3),
      text: fc.constantFrom('clay', 'Clay ', 'sand', 'silt'),
    }),
    { maxLength: 40 },
  ),
);
type Row = { k: number | null; z: number | null; b: number | null; v: number | null; text: string };

function sheetOf(data: readonly Row[]): Sheet {
  const sheet = newSheet();
  sheet.table('t', data.length);
  for (const name of ['k', 'z', 'b', 'v'] as const)
    sheet.column(
      `t.${name}`,
      data.map((row) => row[name]),
      '',
    );
  sheet.column(
    't.text',
    data.map(({ text }) => text),
    'text',
  );
  return sheet;
}

/** Every value of a column, NaN for none. */
function valuesOf(sheet: Sheet, name: string): readonly number[] {
  return [...sheet.engine.readColumn(`s.${name}`).values];
}

const gap = (values: readonly (number | null)[]) => values.some((one) => one === null);

test('functions of the rows that compare with this row are what the plain loop makes of them', () => {
  let sameKeys = 0;
  fc.assert(
    fc.property(
      rows,
      fc.constantFrom(...Object.keys(makes)),
      fc.constantFrom(...operators),
      fc.constantFrom('', '=', '<', '>='),
      fc.boolean(),
      fc.boolean(),
      (data, name, op, other, turn, texts) => {
        const sheet = sheetOf(data);
        const first = turn ? `b ${turned(op)} t.k` : `t.k ${op} b`;
        const second = other === '' ? [] : [`t.z ${other} k`];
        const third = texts ? ['t.text = text'] : [];
        const parts = [first, ...second, ...third];
        const condition = parts.length === 1 ? first : `AND(${parts.join('; ')})`;
        sheet.calcColumn(
          't.got',
          name === 'COUNTIF' ? `COUNTIF(${condition})` : `${name}(${condition}; t.v)`,
        );
        sheet.run();
        const looked = [...data.map(({ k }) => k), ...(other === '' ? [] : data.map(({ z }) => z))];
        const nothing = gap(looked) || (name !== 'COUNTIF' && gap(data.map(({ v }) => v)));
        const wanted = data.map((own) => {
          if (nothing || own.b === null || (other !== '' && own.k === null)) return Number.NaN;
          const chosen = data.filter(
            (row) =>
              holds[op]?.(row.k as number, own.b as number) &&
              (other === '' || holds[other]?.(row.z as number, own.k as number)) &&
              (!texts || row.text.trim().toLowerCase() === own.text.trim().toLowerCase()),
          );
          if (chosen.length > 1) sameKeys += 1;
          return makes[name]?.(chosen.map((row) => row.v as number)) ?? Number.NaN;
        });
        const got = valuesOf(sheet, 't.got');
        // Sums up to a key are added in the order of the keys; all else is the same to the last bit.
        const inKeyOrder =
          (name === 'SUMIF' || name === 'AVERAGEIF') && parts.length === 1 && /^[<>]=?$/.test(op);
        if (!inKeyOrder) expect(got).toEqual(wanted);
        else {
          const magnitude = data.reduce((sum, { v }) => sum + Math.abs(v ?? 0), 0);
          for (const [at, one] of wanted.entries()) {
            if (Number.isNaN(one)) expect(got[at]).toBeNaN();
            else
              expect(Math.abs((got[at] as number) - one)).toBeLessThanOrEqual(
                2 * Number.EPSILON * Math.abs(one) + data.length * Number.EPSILON ** 2 * magnitude,
              );
          }
        }
      },
    ),
    { seed: SEED, numRuns: 3000 },
  );
  // The ties the generator is for have occurred.
  expect(sameKeys).toBeGreaterThan(1000);
});

const turned = (op: string): string => {
  const ends: Readonly<Record<string, string>> = { '<': '>', '<=': '>=', '>': '<', '>=': '<=' };
  return ends[op] ?? op;
};

test('a search among columns is the call itself to the last bit, for every function that has one', () => {
  const calls: readonly (readonly [name: string, options: readonly string[]])[] = [
    ['INDEX', []],
    ...['exact', 'first', 'at or below', 'at or above'].flatMap((kind) => [
      ['MATCH', [kind]] as const,
      ['LOOKUP', [kind]] as const,
    ]),
    ['INTERPOLATE', []],
    ['INTERPOLATE', ['hold']],
    ['PERCENTILE', []],
    ['LARGE', []],
    ['SMALL', []],
  ];
  let found = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...calls),
      fc.array(fc.tuple(key, value), { maxLength: 30 }),
      fc.boolean(),
      fc.array(fc.oneof(key, fc.double({ noNaN: true, min: 0, max: 1 })), { minLength: 1, maxLength: 20 }),
      ([name, options], pairs, rising, sought) => {
        const evaluate = findFunction(name)?.evaluate;
        if (evaluate?.kind !== 'gather' || !evaluate.search) throw new Error(`${name} has no search`);
        const kept = rising
          ? [...pairs]
              .sort(([a], [b]) => a - b)
              .filter(([a], at, all) => at === 0 || !equal(a, all[at - 1]?.[0] ?? a))
          : pairs;
        const columns = [Float64Array.from(kept, ([k]) => k), Float64Array.from(kept, ([, v]) => v)];
        const search = evaluate.search(columns, options);
        for (const one of sought) {
          const wanted = evaluate.of(columns, [one], options);
          if (!Number.isNaN(wanted)) found += 1;
          expect(search([one])).toBe(wanted);
        }
      },
    ),
    { seed: SEED, numRuns: 4000 },
  );
  expect(found).toBeGreaterThan(5000);
});

test('a lookup, a count and a value by row over the own 200,000 rows are within what is undertaken', () => {
  const length = 200_000;
  const sheet = newSheet();
  sheet.table('t', length);
  sheet.column(
    't.k',
    Array.from({ length }, (_, row) => (row * 7919) % length),
  );
  sheet.calcColumn('t.i', 'MATCH(ROW() - 1; t.k; "exact")');
  sheet.calcColumn('t.back', 'INDEX(t.k; i)');
  sheet.calcColumn('t.same', 'COUNTIF(t.k = k)');
  sheet.calcColumn('t.below', 'COUNTIF(t.k < k)');
  sheet.run();
  const rowNumbers = Float64Array.from({ length }, (_, row) => row);
  expect(sheet.engine.readColumn('s.t.back').values).toEqual(rowNumbers);
  expect(sheet.engine.readColumn('s.t.same').values).toEqual(new Float64Array(length).fill(1));
  expect(sheet.engine.readColumn('s.t.below').values).toEqual(sheet.engine.readColumn('s.t.k').values);
});
