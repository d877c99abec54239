import { describe, expect, test } from 'vitest';
import type { Case } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { AskedWitnesses } from '../../src/review/cases/asked-witnesses.ts';
import { prepareCase } from '../../src/review/cases/prepare-case.ts';
import { enteredCase, type Witness, witnessesOf } from '../../src/review/cases/witnesses.ts';
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
const seenBy = (cases: readonly Case[], id: string): readonly string[] => {
  const entered = cases.map((one) => {
    const notebook = prepareCase(book, one);
    if (!notebook.ok) throw new Error(`${one.id} cannot be entered`);
    return enteredCase(notebook.value, one);
  });
  return [...witnessesOf(entered, { id, name: id })].map(({ expected }) => expected[0]?.name ?? '');
};

test('a case can tell a formula that what it expects rests on, through any number of lines', () => {
  const cases = [example('one', 's.e', 30), example('two', 's.c', 5), example('three', 's.f', 6)];
  expect(seenBy(cases, 's.c')).toEqual(['s.e', 's.c']);
  expect(seenBy(cases, 's.f')).toEqual(['s.f']);
});

test('what rests on a stated line does not tell what that line would come to, the line itself does', () => {
  const stated = { d: '10 m' };
  expect(seenBy([example('one', 's.e', 30, stated)], 's.c')).toEqual([]);
  expect(seenBy([example('one', 's.e', 30, stated)], 's.d')).toEqual([]);
  expect(seenBy([example('two', 's.d', 10, stated)], 's.c')).toEqual(['s.d']);
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

describe('of the changes of one formula', () => {
  const witness = (name: string): Witness => ({
    entered: { notebook: openNotebook(book), expected: [], dependents: new Map() },
    expected: [{ name, value: 1, unit: 'm' }],
  });
  const [one, two, three, nobody] = ['one', 'two', 'three', 'nobody'].map(witness) as [
    Witness,
    Witness,
    Witness,
    Witness,
  ];
  const names = (all: Iterable<Witness>, most = 9) => {
    const asked: string[] = [];
    for (const { expected } of all) if (asked.push(expected[0]?.name ?? '') === most) break;
    return asked;
  };

  test('a witness is found when it is asked, who noticed one is asked first of the next', () => {
    let found = 0;
    const others = (function* () {
      for (const each of [one, two, three]) {
        found += 1;
        yield each;
      }
    })();
    const asked = new AskedWitnesses(others, nobody);
    expect([names(asked, 2), found]).toEqual([['one', 'two'], 2]);
    asked.askFirst(two);
    expect([names(asked, 2), found]).toEqual([['two', 'one'], 2]);
    expect([names(asked), found]).toEqual([['two', 'one', 'three'], 3]);
    asked.askFirst(three);
    expect(names(asked)).toEqual(['three', 'two', 'one']);
  });

  test('where there is none somebody is asked who expects nothing', () => {
    expect(names(new AskedWitnesses([][Symbol.iterator](), nobody))).toEqual(['nobody']);
    expect(names(new AskedWitnesses([one][Symbol.iterator](), nobody))).toEqual(['one']);
  });
});
