import { expect, test } from 'vitest';
import type { Given } from '../../../src/document/index.ts';
import { entryView } from '../../../src/record/values/entry-view.ts';
import type { UnitsView } from '../../../src/record/values/units-view.ts';
import { extendUnits, readEntry, readUnit, standardUnits } from '../../../src/units/index.ts';

function view(entry: string, unit: string, units: UnitsView = 'written', more: Partial<Given> = {}) {
  const extended = extendUnits(standardUnits, { datums: ['MLLW'] });
  if (!extended.ok) throw new Error('the units do not extend');
  const row = readUnit(unit, extended.value);
  if (!row.ok) throw new Error(`${unit} is no unit`);
  const read = readEntry(entry, extended.value, row.value);
  if (!read.ok || !('si' in read.value)) throw new Error(`${entry} is no quantity`);
  const value = { kind: 'number', si: read.value.si, unit: row.value } as const;
  return entryView({ id: 'r', kind: 'given', name: 'x', entry, unit, ...more }, value, units, extended.value);
}

test.each([
  ['36 in', 'in', { kind: 'plain', number: '36', unit: 'in' }],
  ['36', 'in', { kind: 'plain', number: '36', unit: 'in' }],
  ['100,000 t', 't', { kind: 'plain', number: '100\u202f000', unit: 't' }],
  ['0.75', '-', { kind: 'plain', number: '0.75', unit: '' }],
  ['2026-11-25 12:00', 'date', { kind: 'plain', number: '2026-11-25 12:00', unit: 'date' }],
  ['0.75 -', '-', { kind: 'plain', number: '0.75', unit: '' }],
  ['0.05 -', '%', { kind: 'converted', entry: '0.05 -', number: '5', unit: '%' }],
  ['12 %', '%', { kind: 'plain', number: '12', unit: '%' }],
  ['3 ft', 'in', { kind: 'converted', entry: '3 ft', number: '36', unit: 'in' }],
  [`2'-6"`, 'in', { kind: 'converted', entry: `2'-6"`, number: '30', unit: 'in' }],
  // The last of two units is not the unit of the whole.
  ['3 ft 6 in', 'in', { kind: 'converted', entry: '3 ft 6 in', number: '42', unit: 'in' }],
  ['1 ft 2 1/2 in', 'in', { kind: 'converted', entry: '1 ft 2 1/2 in', number: '14.5', unit: 'in' }],
  ['2 1/2 in', 'in', { kind: 'plain', number: '2 1/2', unit: 'in' }],
  ['1.5e3 mm', 'mm', { kind: 'plain', number: '1.5\u202f×\u202f10³', unit: 'mm' }],
  ['El. +12 ft MLLW', 'ft MLLW', { kind: 'plain', number: 'El. +12', unit: 'ft MLLW' }],
])('%s in a line of %s', (entry, unit, shown) => {
  expect(view(entry, unit)).toEqual(shown);
});

test('in other units the entry stays as typed, and what it comes to follows', () => {
  expect(view('10', 'in', 'SI')).toEqual({
    kind: 'converted',
    entry: '10\u00a0in',
    number: '254',
    unit: 'mm',
  });
});

test('a value that came with copied lines in place of a computed one shows digits enough to work with; what is typed stays as typed', () => {
  const toLink = { toLink: 'reaction of the fender' };
  const carried = { kind: 'plain', number: '123.4568', unit: 'kN' };
  expect(view('123.456789012345', 'kN', 'written', toLink)).toEqual(carried);
  expect(view('0.2345149828519573', '-', 'written', toLink)).toMatchObject({ number: '0.234515' });
  expect(view('123.456789012345', 'kN')).toEqual({ ...carried, number: '123.456789012345' });
  expect(view('123.45', 'kN', 'written', toLink)).toEqual({ ...carried, number: '123.45' });
  expect(view('0.000012345', 'm', 'written', toLink)).toMatchObject({ number: '0.000012345' });
});
