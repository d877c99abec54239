import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { contest } from './independent/contest.ts';
import type { IndependentProgram } from './independent/program.ts';
import { programs } from './independent/programs.ts';

const seed = 20_261_129;

describe('the comparison itself', () => {
  const area = (factor: number): IndependentProgram => ({
    template: 'debris-haul',
    units: { 'quantity.L_w': 'm', 'quantity.B_w': 'm', 'quantity.A': 'm²' },
    draw: (random) => ({
      lines: {
        'quantity.L_w': random.over(1, 1000),
        'quantity.B_w': random.chance(0.1) ? null : random.between(0, 50),
      },
      tables: {},
    }),
    work: ({ lines }) => {
      const { 'quantity.L_w': length, 'quantity.B_w': width } = lines;
      return { 'quantity.A': width === null ? null : factor * Number(length) * Number(width) };
    },
  });
  const book = templateBook('debris-haul');

  test('finds what agrees, and what must be refused', () => {
    const tally = contest(book, area(1), { draws: 100, seed }).get('quantity.A');
    expect(tally).toMatchObject({ compared: 100, differed: 0 });
    expect(tally?.valued).toBeLessThan(100);
    expect(tally?.valued).toBeGreaterThan(50);
  });

  test('finds a formula that is off by one part in ten thousand, and a value where none may be', () => {
    const tally = contest(book, area(1.0001), { draws: 100, seed }).get('quantity.A');
    expect(tally?.differed).toBe(tally?.valued);
    const always = { ...area(1), work: () => ({ 'quantity.A': null }) };
    expect(contest(book, always, { draws: 10, seed }).get('quantity.A')?.differed).toBeGreaterThan(5);
  });
});

test('each template that is shipped has its tests and its independent program', () => {
  const folder = new URL('../../templates/', import.meta.url);
  const shipped = readdirSync(folder).filter((name) => existsSync(new URL(`${name}/cases.json`, folder)));
  expect(programs.map(({ template }) => template).sort()).toEqual(shipped.sort());
  for (const id of shipped)
    for (const file of ['template.test.ts', 'independent.test.ts'])
      expect(existsSync(new URL(`${id}/${file}`, import.meta.url)), `${id}/${file}`).toBe(true);
});
