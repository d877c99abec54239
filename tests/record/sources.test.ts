import { expect, test } from 'vitest';
import type { Row } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { sourcesOf } from '../../src/record/index.ts';
import { blockOf, bookOf } from '../make-book.ts';

const rows: readonly Row[] = [
  { id: 'a', kind: 'given', name: 'a', entry: '3 m', unit: 'm', reference: 'drawing 12' },
  {
    id: 'm',
    kind: 'given',
    name: 'm',
    entry: '2',
    unit: '-',
    reference: 'Handbook (2001), table 3, from memory',
  },
  { id: 'r', kind: 'choice', name: 'rule', entry: 'new', options: [{ value: 'new' }, { value: 'old' }] },
  {
    id: 'b',
    kind: 'calc',
    name: 'b',
    by: 'rule',
    unit: 'm',
    reference: 'arithmetic',
    methods: [
      { id: 'm1', for: ['new'], formula: 'a * m', reference: 'EN 1991-1-1:2002, 6.3' },
      { id: 'm2', for: ['old'], formula: 'a', reference: 'common practice, no source' },
    ],
  },
  { id: 'c', kind: 'calc', name: 'c', formula: 'b * 2', unit: 'm', reference: 'arithmetic' },
  { id: 'd', kind: 'calc', name: 'd', formula: 'a + 1 m', unit: 'm', reference: 'maker’s certificate' },
  { id: 'k', kind: 'check', name: 'k', formula: 'c <= 20 m', unit: 'm' },
];
const book = bookOf({ s: [blockOf('p', ...rows)] });

test('every reference has its kind, its lines, and what rests on it through other lines', () => {
  const found = sourcesOf(openNotebook(book));
  const told = found.map(({ reference, kind, lines, results }) => [
    reference,
    kind,
    lines.join(' '),
    results,
  ]);
  expect(new Set(told)).toEqual(
    new Set([
      ['drawing 12', 'of this project', 's.a', 4],
      ['Handbook (2001), table 3, from memory', 'from memory', 's.m', 3],
      ['EN 1991-1-1:2002, 6.3', 'cited', 's.b', 3],
      ['arithmetic', 'own working', 's.c', 2],
      ['maker’s certificate', 'maker’s data wanted', 's.d', 1],
      ['', 'no reference', 's.rule s.k', 3],
    ]),
  );
  expect(found[0]?.results).toBe(4);
});

test('the method that is not in force brings no reference', () => {
  const notebook = openNotebook(book);
  expect(sourcesOf(notebook).some(({ reference }) => reference.startsWith('common practice'))).toBe(false);
});
