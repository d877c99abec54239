import { expect, test } from 'vitest';
import { blankBook, type Row } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { writeQuantity } from '../../src/units/index.ts';

const rows: readonly Row[] = [
  { id: 'a', kind: 'given', name: 'start', entry: '2026-11-01', unit: 'date' },
  { id: 'b', kind: 'given', name: 'finish', entry: '2026-11-25', unit: 'date' },
  { id: 'c', kind: 'given', name: 'shift', entry: '10 h', unit: 'h' },
  { id: 'd', kind: 'calc', name: 'lasts', formula: 'finish - start' },
  { id: 'e', kind: 'calc', name: 'half', formula: 'lasts / 2' },
  { id: 'f', kind: 'calc', name: 'float', formula: 'MAX(half; 3 d) - half' },
  { id: 'g', kind: 'calc', name: 'work', formula: 'lasts - shift' },
  { id: 'h', kind: 'calc', name: 'stop', formula: 'start + shift' },
  { id: 'i', kind: 'calc', name: 'period', formula: '12 (1/h) / 1 (1/h^2)' },
  { id: 'j', kind: 'check', name: 'in_time', formula: 'finish - start <= stop - start' },
];
const notebook = openNotebook({
  ...blankBook(),
  sheets: [{ key: 's', title: '', parts: [{ id: 'p', kind: 'rows', rows }] }],
});

test.each([
  ['lasts', '24 d'],
  ['half', '12 d'],
  ['float', '0 d'],
  // A line that names a time with a unit is read in it, and a time that comes of no dates in seconds.
  ['work', '566 h'],
  ['period', '43\u202f200 s'],
  ['stop', '2026-11-01 10:00'],
])('%s is read as %s', (name, text) => {
  const read = notebook.result(`s.${name}`);
  if (read.status !== 'ok' || read.value.kind !== 'number') throw new Error(`${name} has no value`);
  expect(writeQuantity(read.value.si, read.value.unit)).toBe(text);
});

test('a check between dates tells both sides in days', () => {
  expect(notebook.verdict('s.in_time')).toMatchObject({
    holds: false,
    demand: { unit: { text: 'd' } },
    capacity: { unit: { text: 'd' } },
  });
});
