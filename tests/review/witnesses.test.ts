import { expect, test } from 'vitest';
import type { Case } from '../../src/document/index.ts';
import { prepareCase } from '../../src/review/cases/prepare-case.ts';
import { enteredCase, witnessesOf } from '../../src/review/cases/witnesses.ts';
import { mutateTemplate } from '../../src/review/index.ts';
import { blockOf, bookOf, calc, given } from '../make-book.ts';

const book = bookOf({
  s: [
    blockOf(
      'p',
      given('a', '3 m', 'm'),
      given('b', '2 m', 'm'),
      calc('c', { formula: 'a + b', unit: 'm' }),
      calc('d', { formula: '2 * c', unit: 'm' }),
      calc('e', { formula: '3 * d', unit: 'm' }),
      calc('f', { formula: 'a + a', unit: 'm' }),
    ),
  ],
});
const example = (id: string, name: string, value: number, set: Case['set'] = {}): Case => ({
  id,
  title: id,
  kind: 'independent',
  source: 'arithmetic',
  set,
  expect: [{ name, value, unit: 'm' }],
});
const seenBy = (cases: readonly Case[], id: string): readonly (readonly [string, boolean])[] => {
  const entered = cases.map((one) => {
    const notebook = prepareCase(book, one);
    if (!notebook.ok) throw new Error(`${one.id} cannot be entered`);
    return enteredCase(notebook.value, one);
  });
  return witnessesOf(entered, { id, name: id }).map(({ expected, isOwn }) => [
    expected[0]?.name ?? '',
    isOwn,
  ]);
};

test('a case can tell a formula that what it expects rests on, through any number of lines', () => {
  const cases = [example('one', 's.e', 30), example('two', 's.c', 5), example('three', 's.f', 6)];
  expect(seenBy(cases, 's.c')).toEqual([
    ['s.e', false],
    ['s.c', true],
  ]);
  expect(seenBy(cases, 's.f')).toEqual([['s.f', true]]);
});

test('what rests on a stated line does not tell what that line would come to, the line itself does', () => {
  const stated = { d: '10 m' };
  expect(seenBy([example('one', 's.e', 30, stated)], 's.c')).toEqual([]);
  expect(seenBy([example('one', 's.e', 30, stated)], 's.d')).toEqual([]);
  expect(seenBy([example('two', 's.d', 10, stated)], 's.c')).toEqual([['s.d', false]]);
});

test('each change is made in the right formula, not in that of the change before', () => {
  // The case of e notices every change of c and d, one after the other, and is right again for f, which it does not reach.
  const report = mutateTemplate(
    book,
    { template: 'invented', cases: [example('one', 's.e', 30), example('two', 's.f', 6)] },
    'all',
  );
  expect(report.survivors).toEqual([]);
  const alone = mutateTemplate(
    book,
    { template: 'invented', cases: [example('one', 's.e', 30), example('two', 's.e', 30)] },
    'all',
  );
  expect(alone.made).toBe(report.made);
  expect(new Set(alone.survivors.map(({ of }) => of))).toEqual(new Set(['s.f']));
});
