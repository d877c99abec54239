import { describe, expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { contest } from './independent/contest.ts';
import type { IndependentProgram } from './independent/program.ts';
import { programs } from './independent/programs.ts';

const seed = 20_261_129;

describe.each(programs)('the independent program for $template', (program) => {
  test('agrees with the template on every result and verdict', { timeout: 240_000 }, () => {
    const tallies = contest(templateBook(program.template), program, { draws: 300, seed });
    const differing = [...tallies].flatMap(([name, { differed, first }]) =>
      differed > 0 ? [`${name} ${differed} times, first in draw ${first?.draw}: ${first?.words}`] : [],
    );
    expect(differing).toEqual([]);
    const neverValued = [...tallies].filter(([, { valued }]) => valued === 0).map(([name]) => name);
    expect(neverValued).toEqual([]);
  });

  test('leaves few differences larger than one part in a million', () => {
    for (const [name, { relative, reason }] of Object.entries(program.loose ?? {})) {
      expect(relative, name).toBeLessThanOrEqual(0.005);
      expect(reason.trim(), name).not.toBe('');
    }
  });
});

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
