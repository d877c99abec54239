import { describe, expect, test } from 'vitest';
import type { Cases } from '../../src/document/index.ts';
import { mutantsOf } from '../../src/review/cases/mutants.ts';
import { mutateTemplate, verifyTemplate } from '../../src/review/index.ts';
import { blockOf, bookOf, calc, given } from '../make-book.ts';

const none = (): undefined => undefined;
const all = (formula: string) => mutantsOf(formula, none).map((one) => one.formula);

describe('what a slip makes of a formula', () => {
  test('operators, terms, factors and constants', () => {
    expect(all('a * b + 2 m')).toEqual([
      'a * b - 2 m',
      'a * b',
      '2 m',
      'a / b + 2 m',
      'a + 2 m',
      'b + 2 m',
      'a * b + 2.1 m',
    ]);
    expect(all('a / b')).toEqual(['a * b', 'a']);
  });

  test('signs, comparisons, branches and functions', () => {
    expect(all('-a')).toEqual(['a']);
    expect(all('IF(a < b; a; b)')).toEqual(['(a)', '(b)', 'IF(a > b; a; b)']);
    expect(all('MAX(LESSER(a; b); 0)')).toEqual(['MIN(LESSER(a; b); 0)', 'MAX(GREATER(a; b); 0)']);
  });

  test('a column for its neighbour', () => {
    const beside = (name: string) => (name === 'piles.N' ? 'piles.T' : undefined);
    expect(mutantsOf('COUNT(piles.N)', beside)).toEqual([{ change: 'column', formula: 'COUNT(piles.T)' }]);
  });
});

const book = bookOf({
  s: [
    blockOf(
      'p',
      given('a', '3 m', 'm'),
      given('b', '2 m', 'm'),
      calc('c', { formula: 'MAX(a; b)', unit: 'm' }),
      calc('d', { formula: 'SQRT(a * a)', unit: 'm' }),
      { id: 'k', kind: 'check', name: 'k', formula: 'c <= 4 m', unit: 'm' },
    ),
  ],
});
const cases = (...expected: readonly Cases['cases'][number]['expect'][number][]): Cases => ({
  template: 'invented',
  cases: [{ id: 'one', title: 'One', kind: 'independent', source: 'arithmetic', expect: [...expected] }],
});

test('what no case notices is a survivor, with the formula as it was changed', () => {
  const report = mutateTemplate(book, cases({ name: 's.c', value: 3, unit: 'm' }), 'all');
  // c: a value larger, MIN; d: larger, and its dimension holds in none of its other mutants; k: turned, 4.2 m.
  expect(report.noticed).toBe(2);
  expect(report.survivors.map(({ of, is }) => [of, is])).toEqual([
    ['s.d', '(SQRT(a * a)) * 1.01'],
    ['s.k', 'c >= 4 m'],
    ['s.k', 'c <= 4.2 m'],
  ]);
  expect(report.made).toBe(5);
});

test('what is listed as no different is counted apart, and what is listed in vain is told', () => {
  const expected = [
    { name: 's.c', value: 3, unit: 'm' },
    { name: 's.d', value: 3, unit: 'm' },
    { name: 's.k', verdict: 'passes' as const },
  ];
  const listed = [
    { of: 's.k', is: 'c <= 4.2 m', reason: 'a test' },
    { of: 's.c', is: 'MIN(a; b)', reason: 'a test: a case notices it' },
  ];
  const report = mutateTemplate(book, cases(...expected), 'all', listed);
  expect(report).toMatchObject({ made: 5, noticed: 4, equivalent: 1, survivors: [] });
  expect(report.stale.map(({ of }) => of)).toEqual(['s.c']);
});

test('a check is seen failing only by a case that expects it', () => {
  const one = verifyTemplate(book, cases({ name: 's.k', verdict: 'passes' }));
  expect(one).toMatchObject({ checks: ['s.k'], neverFailing: ['s.k'], neverHolding: [] });
  const [shipped] = cases({ name: 's.k', verdict: 'fails' }).cases;
  const failing = { ...shipped, set: { a: '5 m' } } as Cases['cases'][number];
  const both = verifyTemplate(book, { template: 'invented', cases: [failing] });
  expect(both).toMatchObject({ neverFailing: [], neverHolding: ['s.k'] });
  const wrong = verifyTemplate(book, cases({ name: 's.k', verdict: 'fails' }));
  expect(wrong).toMatchObject({ neverFailing: ['s.k'], neverHolding: ['s.k'] });
});
