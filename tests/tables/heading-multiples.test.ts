import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readMapped, type TableColumn, tableText, unitOfHeader } from '../../src/tables/index.ts';
import { standardUnits } from '../../src/units/index.ts';

const item: TableColumn = { name: 'item', kind: 'given', type: 'text' };

/** The number 5 under a heading that was said to go to a column in its unit: what is read, or the code of the refusal. */
function takenAs(header: string, x: TableColumn, unit = x.unit ?? '') {
  const text = tableText(`item;"${header.replaceAll('"', '""')}"\nslab;5\n`, [item, x]);
  if (!text.ok) throw new Error(text.problems[0]?.message);
  const read = readMapped(text.value, [item, x], {
    headed: true,
    goes: new Map([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: x.name, unit }],
    ]),
  });
  return read.ok ? `${read.value.cells[x.name]?.[0]}` : read.problems[0]?.code;
}

const volume = (unit = 'cy'): TableColumn => ({
  name: 'V_s',
  label: 'volume, if stated',
  kind: 'given',
  unit,
});

describe('a multiple anywhere in a heading is refused, whatever unit is said', () => {
  test.each([
    'V_s x1000 (m3)',
    'V_s x100 (m3)',
    'V_s x10 (m3)',
    'V_s X1000 (m3)',
    'V_s x1e3 (m3)',
    'V_s * 100 (m3)',
    'V_s·100',
    'V_s ÷ 1000',
    'V_s (m³/100)',
    'V_s / 100 (m3)',
    'V_s (x 0.001)',
    'V_s (cy) ×1000',
    'V_s (m3)x10',
    'V_s m3x100',
    'V_s m3 × 12',
    'V_s_x1000 (m3)',
    'V_s_1000 (m3)',
    'volume, if stated x1000 (m3)',
    'V_s in 10 m3',
    'V_s per 10 m3',
    'V_s in lots of 25 m3',
    'V_s, in 100s of cy',
    'V_s (m3 per 100)',
    'V_s per hundred cy',
    'V_s (10 m3)',
    'V_s (100 cy)',
    'V_s (100)',
    'V_s (units: 100 m3)',
    'Vol., 100 cy',
    'V_s 1000 (m3)',
    'Volume 100 (m3)',
    "V_s 1'000 (m3)",
    'V_s (m3) 1000',
    'V_s 1000x (m3)',
    'V_s (100 × m3)',
    'V_s 100s (m3)',
    "V_s '000 (m3)",
    'V_s (‘000 m3)',
    'V_s 10³ (m3)',
    'V_s hundreds (m3)',
    'V_s tens (m3)',
    'V_s (ten m3)',
    'V_s x ten (m3)',
    'V_s (dozen m3)',
    'V_s (百m3)',
    'V_s lakhs',
    'V_s k (m3)',
    'V_s times 1000 (m3)',
    'V_s multiplied by 100 (m3)',
  ])('%s', (header) => {
    for (const unit of ['cy', 'm3', '']) expect(takenAs(header, volume(), unit)).toBe('column-multiple');
  });

  test.each([
    ['price (USD/100 kg)', 'USD/t'],
    ['price per 100 kg', 'USD/t'],
    ['price per 1000', 'USD/cy'],
    ['load (kN/10 m)', 'kN/m'],
    ['strain [10⁻³]', '-'],
    ['strain x 10^-3', '-'],
  ])('%s for %s', (header, unit) => {
    expect(takenAs(header, volume(unit))).toBe('column-multiple');
  });
});

describe('a number that names or measures a thing is none', () => {
  test.each([
    ['Item 100', 'm3'],
    ['Layer 2 (m3)', 'm3'],
    ['Layer 2 m3', 'm3'],
    ['Vol 2', 'm3'],
    ['Vol. 10 mm plate', 'm3'],
    ['Length 10 mm plate (m)', 'm'],
    ['Slab 12 x 12 (m)', 'm'],
    ['Slab 300 mm x 300 mm (m)', 'm'],
    ['12" x 12" (in)', 'in'],
    ['2 x 4 timber (m3)', 'm3'],
    ['HP14x102 (ft)', 'ft'],
    ['W24 x 76 (ft)', 'ft'],
    ['Depth to 10 m', 'm'],
    ['100-year wave (m)', 'm'],
    ['wave height, hundred year (m)', 'm'],
    ['Volume (m3) *1', 'm3'],
    ['Section A/12 (m3)', 'm3'],
    ['Scale 1/100 (m3)', 'm3'],
    ['Concrete C30/37 (m3)', 'm3'],
    ['Output per 8 h (m3)', 'm3'],
    ['Crane 100 t (kN)', 'kN'],
    ['Bent 10, m3', 'm3'],
    ['Mass M (kg)', 'kg'],
    ['Modulus k (kN/m3)', 'kN/m3'],
    ['max 10 (kN)', 'kN'],
    ['Tens. (kN)', 'kN'],
  ])('%s', (header, unit) => {
    expect(takenAs(header, { name: 'x', kind: 'given', unit })).toMatch(/^5( |$)/);
  });

  test.each(['V x1000', 'volume per 10 m', 'hundreds of piles', 'F_100', 'load (100 m3)', 'wave, 10³ m3'])(
    'nor is the name or label “%s” of the column itself, with its unit or without',
    (label) => {
      for (const header of [label, label.toUpperCase(), `${label} (m3)`, `${label} [m3]`, `${label}, m3`])
        expect(takenAs(header, { name: 'x', label, kind: 'given', unit: 'm3' })).toMatch(/^5( |$)/);
    },
  );

  test('but what stands beside that name is one', () => {
    const x: TableColumn = { name: 'F_100', label: 'load per 10 m', kind: 'given', unit: 'm3' };
    expect(takenAs('F_100 x10 (m3)', x)).toBe('column-multiple');
    expect(takenAs('load per 10 m, thousands (m3)', x)).toBe('column-multiple');
  });
});

test('the size of a thing in a heading is not taken for the unit of its numbers', () => {
  const x: TableColumn = { name: 'L', kind: 'given', unit: 'm' };
  const stated = (header: string) =>
    unitOfHeader({ position: 0, header, unit: '', below: '', first: undefined }, x, standardUnits);
  expect(stated('Length 10 mm plate')).toBe('10 mm');
  expect(takenAs('Length 10 mm plate', x, '10 mm')).toBe('column-unit-unread');
  expect(stated('Length mm net')).toBe('mm');
});

/** Headings of volumes made of the parts that people make them of. */
const NAMES = ['V_s', 'Vs', 'Volume', 'Vol.', 'Qty', 'volume, if stated', 'Concrete', 'Deck slab net'];
const UNITS = ['m3', 'm³', 'cy', 'CY', 'cu. yd.', 'm^3', 'cf'];
const name = fc.constantFrom(...NAMES);
const unit = fc.constantFrom(...UNITS);
const brackets = fc.constantFrom(
  (text: string) => `(${text})`,
  (text: string) => `[${text}]`,
);
const number = fc.oneof(
  fc.constantFrom('10', '100', '1000', '1,000', '1 000', '10 000', '1000000', '1e3', '10^3', '10³', '10^6'),
  fc.integer({ min: 11, max: 5000 }).map((value) => `${value}`),
);
const round = fc.constantFrom('10', '100', '1000', '1,000', "1'000", '10 000', '100000');
const word = fc.constantFrom(
  'tens',
  'dozens',
  'hundreds',
  'thousands',
  'lakhs',
  'millions',
  'hundred',
  'Dutzend',
);
const sign = fc.constantFrom('x', '×', '*', '· ', 'x ', '× ', '* ');

const multiplied = fc
  .record({ name, unit, brackets, number, round, word, sign })
  .chain(({ name, unit, brackets, number, round, word, sign }) => {
    const by = `${sign}${number}`;
    return fc.constantFrom(
      `${name} ${by} ${brackets(unit)}`,
      `${name} ${by}`,
      `${name} ${brackets(unit)} ${by}`,
      `${name} ${brackets(`${unit} ${by}`)}`,
      `${name} ${brackets(by)}`,
      `${name} ${brackets(by)} ${unit}`,
      `${name}, ${unit} ${by}`,
      `${name} in ${number} ${unit}`,
      `${name} per ${number} ${unit}`,
      `${name} ${brackets(`in ${number} ${unit}`)}`,
      `${name} ${brackets(`${number} ${unit}`)}`,
      `${name} ${brackets(`${unit}/${round}`)}`,
      `${name}, ${number} ${unit}`,
      `${name} ${brackets(round)}`,
      `${name} ${brackets(unit)} ${round}`,
      `${name} ${word} ${brackets(unit)}`,
      `${name} in ${word} ${brackets(unit)}`,
      `${name} in ${word} of ${unit}`,
      `${name} ${brackets(`${word} ${unit}`)}`,
      `${name} ${brackets(unit)} ${brackets(`in ${word}`)}`,
    );
  });

test('whatever the heading, a multiple in it is refused in each unit that may be said', () => {
  const said = fc.constantFrom('', 'cy', 'm3', 'cf');
  fc.assert(
    fc.property(multiplied, said, (header, unit) => {
      expect(takenAs(header, volume(), unit)).toBe('column-multiple');
    }),
    { seed: 20_271, numRuns: 1000, verbose: true },
  );
});

test('whatever the heading, one that names a thing by its number or its size is taken', () => {
  const noun = fc.constantFrom('Item', 'Layer', 'Bent', 'Pier', 'Type', 'Zone', 'No.', 'Stage', 'Ch.');
  const size = fc.constantFrom(
    '10 mm plate',
    '300 x 300 mm',
    '12" piles',
    '40 ft span',
    '20-ton crane',
    '100-year flood',
  );
  const plain = fc
    .integer({ min: 1, max: 2000 })
    .chain((value) =>
      fc
        .record({ noun, name, unit, brackets, size })
        .chain(({ noun, name, unit, brackets, size }) =>
          fc.constantFrom(
            `${noun} ${value} ${brackets(unit)}`,
            `${noun} ${value}, ${unit}`,
            `${name} ${noun} ${value} ${brackets(unit)}`,
            `${name} ${size} ${brackets(unit)}`,
            `${name} ${brackets(unit)} ${size}`,
            `${size} ${brackets(unit)}`,
          ),
        ),
    );
  fc.assert(
    fc.property(plain, (header) => {
      expect(takenAs(header, volume('m3'))).not.toBe('column-multiple');
    }),
    { seed: 20_272, numRuns: 500, verbose: true },
  );
});
