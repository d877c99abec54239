import { describe, expect, test } from 'vitest';
import { type Destination, readMapped, type TableColumn, tableText } from '../../src/tables/index.ts';

const item: TableColumn = { name: 'item', kind: 'given', type: 'text' };

/** The number 5 under a heading that was said to go to a column in a unit: what is read, or the code of the refusal. */
function takenAs(header: string, unit: string, column: Partial<TableColumn> = {}, below = '') {
  const x: TableColumn = { name: 'x', kind: 'given', unit, ...column };
  const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
  const rows = [['item', header], ...(below === '' ? [] : [['', below]]), ['slab', '5']];
  const text = tableText(rows.map((cells) => cells.map(quoted).join(';')).join('\n'), [item, x]);
  if (!text.ok) throw new Error(text.problems[0]?.message);
  const read = readMapped(text.value, [item, x], {
    headed: true,
    goes: new Map([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: 'x', unit }],
    ]),
  });
  return read.ok ? `${read.value.cells.x?.[0]}` : read.problems[0]?.code;
}

describe('numbers that a heading gives in a multiple are in no unit', () => {
  test.each([
    ['Volume (1000 m³)', 'm3'],
    ['Volume (1,000 m3)', 'm3'],
    ['Volume, 1000 m3', 'm3'],
    ['Volume [10^3 m3]', 'm3'],
    ['Volume 10³ m³', 'm3'],
    ['Volume (x1000)', 'm3'],
    ["Volume ('000 m3)", 'm3'],
    ["Volume ('000s)", 'm3'],
    ['Volume (1000s m3)', 'm3'],
    ['Volume (1E3 m3)', 'm3'],
    ['Volume in thousands of m3', 'm3'],
    ['Volume, thousand m3', 'm3'],
    ['Volumen (Tm³)', 'm3'],
    ['Volumen in Tsd. m³', 'm3'],
    ['Volume (milliers de m³)', 'm3'],
    ['Volumen (miles de m³)', 'm3'],
    ['Объём, тыс. м³', 'm3'],
    ['Objętość (tys. m³)', 'm3'],
    ['体積 (千m3)', 'm3'],
    ['Cost (USD thousand)', 'USD'],
    ['Cost (kUSD)', 'USD'],
    ['Cost (USD million)', 'USD'],
    ['Kosten (TEUR)', 'EUR'],
    ['Kosten TEUR', 'EUR'],
    ['Kosten (k€)', 'EUR'],
    ['Cost, M$', 'USD'],
    ['Volume, m³ x 1000', 'm3'],
    ['Volume (m3 x1000)', 'm3'],
    ['Volume [m3 × 10^3]', 'm3'],
    ['Volume (m3·1000)', 'm3'],
    ['Volume (m3·10³)', 'm3'],
    ['Volume (E3 m3)', 'm3'],
    ['Volume (m3/1000)', 'm3'],
    ['Volume / 1000 (m3)', 'm3'],
    ['Volume (k m3)', 'm3'],
    ['Volume (thou m3)', 'm3'],
    ['Volume (m3 000)', 'm3'],
    ["Volume (m3'000)", 'm3'],
    ['Volume (hm3)', 'm3'],
    ['Volume (dam3)', 'm3'],
    ['Volume (tm3)', 'm3'],
    ['Volume (hcf)', 'm3'],
    ['Volume (Mm3)', 'm3'],
    ['Volume (MM3)', 'm3'],
    ['Volume (Mm³)', 'm3'],
    ['Volume, hundreds of cy', 'm3'],
    ['Volume (lakh m3)', 'm3'],
    ['Volume (mil m3)', 'm3'],
    ['Volume (mii m3)', 'm3'],
    ['Volume (tis. m3)', 'm3'],
    ['Volume (millares de m3)', 'm3'],
    ['Volume (bin m3)', 'm3'],
    ['Volume (ألف m3)', 'm3'],
    ['体积（万m³）', 'm3'],
    ['体积（千m³）', 'm3'],
    ['Area (Mm2)', 'm2'],
    ['Volume (MMcf)', 'm3'],
  ])('%s', (header, unit) => {
    expect(takenAs(header, unit)).toBe('column-multiple');
  });

  test('nor are those above which a row of units says so', () => {
    expect(takenAs('Volume', 'm3', {}, '1000 m³')).toBe('column-multiple');
    expect(takenAs('Cost', 'USD', {}, 'kUSD')).toBe('column-multiple');
  });
});

describe('what only looks like a multiple changes nothing', () => {
  test.each([
    ['Thickness (MM)', 'mm'],
    ['Thickness (mm)', 'm'],
    ['Area, ha', 'm2'],
    ['Mass (t)', 't'],
    ['Density (t/m3)', 't/m3'],
    ['Volume (M3)', 'm3'],
    ['Time (h)', 'h'],
    ['Grade E3 (m3)', 'm3'],
    ['Haul (miles)', 'mi'],
    ['Haul, miles', 'mi'],
    ['Load (kN)', 'kN'],
    ['Strength (MPa)', 'MPa'],
    ['Load (MN)', 'kN'],
    ['Mass, kg', 'kg'],
    ['Length (km)', 'm'],
    ['Min (m)', 'm'],
    ['Depth Min', 'm'],
    ['Ch. 1000 to 2000 (m)', 'm'],
    ['Type 1000 (kN)', 'kN'],
    ['Bin volume (m3)', 'm3'],
    ['Volume (m3)', 'm3'],
    ['Mill waste (m3)', 'm3'],
    ['Stiffness (kip/ft)', 'kip/ft'],
    ['Weight at 1000 m (kN)', 'kN'],
  ])('%s', (header, unit) => {
    expect(takenAs(header, unit)).toMatch(/^5( |$)/);
  });

  test('nor does a name of the column itself', () => {
    expect(takenAs('cost in thousands', 'USD', { label: 'cost in thousands' })).toMatch(/^5( |$)/);
  });
});

test('what a heading says beside the unit that was said for its numbers is told', () => {
  const x: TableColumn = { name: 'x', kind: 'given', unit: 'm3' };
  const read = (heading: string) => {
    const text = tableText(`item;${heading}\nslab;5`, [item, x]);
    if (!text.ok) throw new Error(text.problems[0]?.message);
    const goes = new Map<number, Destination>([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: 'x', unit: 'm3' }],
    ]);
    const found = readMapped(text.value, [item, x], { headed: true, goes });
    return (found.ok ? found.value.problems : found.problems).map(({ code }) => code);
  };
  expect(read('Volume (MCM)')).toEqual(['column-unit-set-aside']);
  expect(read('Volume (net)')).toEqual(['column-unit-set-aside']);
  expect(read('Volume (m3)')).toEqual([]);
  expect(read('Volume')).toEqual([]);
  expect(read('Volume (t)')).toEqual(['column-unit-other-kind']);
  expect(read('Cost (€)')).toEqual(['column-unit-other-kind']);
});
