import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { expect, test } from 'vitest';
import { computeGrid } from '../../src/recheck/second-engine.ts';

// The audit of the second engine's quantiles against @stdlib: what a lowering may write, and how far it holds.

/** The values of a formula in column B and the numbers of a row beside it. */
async function evaluate(formula: string, rows: readonly (readonly number[])[]): Promise<readonly number[]> {
  const computed = await computeGrid({
    sheets: [
      {
        name: 'Audit',
        rows: rows.map((row, at) => [null, `=${formula.replaceAll('#', `${at + 1}`)}`, ...row]),
      },
    ],
    labels: [],
  });
  const values = rows.map((_, row) => computed.read({ sheet: 'Audit', row, column: 1 }));
  computed.close();
  return values.map((value) => (typeof value === 'number' ? value : Number.NaN));
}

const decades = Array.from({ length: 270 }, (_, at) => 10 ** (-9 + at / 30)).filter((chance) => chance < 0.5);
const chances = [...decades, ...decades.map((chance) => 1 - chance)];

test('NORM.S.INV is the normal quantile to 1e-9 for chances from 1e-9 to 1 - 1e-9', async () => {
  const values = await evaluate(
    'NORM.S.INV(C#)',
    chances.map((chance) => [chance]),
  );
  const worst = values.map((value, at) => {
    const right = normalQuantile(chances[at] ?? Number.NaN, 0, 1);
    return Math.abs(value - right) / Math.abs(right);
  });
  expect(Math.max(...worst)).toBeLessThan(1e-9);
});

test('further out it is not, so that such chances are listed and not compared', async () => {
  const [value = Number.NaN] = await evaluate('NORM.S.INV(C#)', [[1e-12]]);
  expect(Math.abs(value / normalQuantile(1e-12, 0, 1) - 1)).toBeGreaterThan(1e-9);
});

test('BETA.INV is not right to 1e-9 at ordinary chances, so that BETAINV is not rechecked', async () => {
  const shapes = [
    [0.5, 1.5],
    [1.5, 4.5],
    [2, 7],
  ] as const;
  const rows = [0.05, 0.31, 0.5, 0.9].flatMap((chance) => shapes.map((shape) => [chance, ...shape] as const));
  const values = await evaluate('BETA.INV(C#,D#,E#)', rows);
  const off = rows.map(([chance, alpha, beta], at) =>
    Math.abs((values[at] ?? 0) / betaQuantile(chance, alpha, beta) - 1),
  );
  expect(Math.max(...off)).toBeGreaterThan(1e-9);
  expect(Math.max(...off)).toBeLessThan(1e-5);
});
