import { expect, test } from 'vitest';
import type { Part } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { bookFile } from './small-book.ts';

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      {
        id: 'r',
        kind: 'choice',
        name: 'rule',
        entry: 'API',
        options: [{ value: 'API' }, { value: 'USACE' }],
      },
      { id: 'w', kind: 'given', name: 'w', entry: '2 m', unit: 'm' },
      {
        id: 'a',
        kind: 'calc',
        name: 'a',
        unit: 'm',
        by: 'rule',
        methods: [
          { id: 'api', for: ['API'], formula: '2*w', reference: 'API RP 2GEO' },
          { id: 'else', formula: '3*w' },
        ],
      },
    ],
  },
  {
    id: 't',
    kind: 'table',
    name: 't',
    length: 3,
    columns: [
      { id: 'k', kind: 'given', name: 'k', type: 'text', chunks: [['clay', 'sand', 'clay']] },
      {
        id: 'y',
        kind: 'calc',
        name: 'y',
        unit: 'm',
        by: 'k',
        methods: [
          { id: 'c', for: ['clay'], formula: 'w', reference: 'A' },
          { id: 's', for: ['sand'], formula: '10*w', reference: 'B' },
        ],
      },
    ],
  },
];
const book = bookFile('methods.quaybook.json', parts);

test('--json names the method in force, and of a column each with its rows', () => {
  const { json } = quaybookJson('calc', book);
  expect(json.results['s.a']).toMatchObject({
    value: 4,
    method: { id: 'api', for: ['API'], formula: '2*w', reference: 'API RP 2GEO' },
  });
  expect(json.results['s.t.y'].methods).toEqual([
    { id: 'c', for: ['clay'], formula: 'w', reference: 'A', rows: [1, 3] },
    { id: 's', for: ['sand'], formula: '10*w', reference: 'B', rows: [2] },
  ]);
  const other = quaybookJson('calc', book, '--set', 'rule=USACE').json;
  expect(other.results['s.a']).toMatchObject({ value: 6, method: { id: 'else', formula: '3*w' } });
});

test('the printed result has the formula in force and its reference below it', () => {
  const { out } = quaybook('calc', book, '--get', 'a', '--get', 't.y');
  expect(out).toContain('  for “API”: 2*w  [API RP 2GEO]');
  expect(out).toContain('  for “clay”, rows 1, 3: w  [A]');
  expect(out).toContain('  for “sand”, row 2: 10*w  [B]');
});
