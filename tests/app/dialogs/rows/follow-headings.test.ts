import { expect, test } from 'vitest';
import type { Settled } from '../../../../src/app/dialogs/rows/find-rows.ts';
import { followHeadings } from '../../../../src/app/dialogs/rows/follow-headings.ts';
import { type TableColumn, tableText, textColumns } from '../../../../src/tables/index.ts';
import { standardUnits } from '../../../../src/units/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

function columnsOf(headings: string) {
  const text = tableText(`${headings}\nslab;1;x\n`, COLUMNS, { delimiter: ';' });
  if (!text.ok) throw new Error('the text can be parted');
  return textColumns(text.value, true);
}

function follow(settled: readonly (readonly [number, Settled])[], before: string, after: string) {
  const followed = followHeadings(
    new Map(settled),
    columnsOf(before),
    columnsOf(after),
    COLUMNS,
    standardUnits,
  );
  return [...followed];
}

const volume = (called: string, unit: string) =>
  [1, { called, to: { kind: 'column', name: 'V_s', unit } }] as const;

test('a column keeps its place and its unit under a corrected heading', () => {
  expect(follow([volume('Menge', 'm3')], 'Teil;Menge', 'Teil;Mengen')).toEqual([volume('Mengen', 'm3')]);
  const out = [0, { called: 'Teil', to: { kind: 'out' } }] as const;
  expect(follow([out], 'Teil;Menge', 'Bauteil;Menge')).toEqual([
    [0, { called: 'Bauteil', to: { kind: 'out' } }],
  ]);
});

test('a unit that the heading stated follows the heading', () => {
  expect(follow([volume('Menge (cy)', 'cy')], 'Teil;Menge (cy)', 'Teil;Menge (cf)')).toEqual([
    volume('Menge (cf)', 'cf'),
  ]);
  // What was said in its place stays.
  expect(follow([volume('Menge (cy)', 'm^3')], 'Teil;Menge (cy)', 'Teil;Menge (cf)')).toEqual([
    volume('Menge (cf)', 'm^3'),
  ]);
});

test('where a column is put in or taken out nothing follows', () => {
  expect(follow([volume('Menge', 'm3')], 'Teil;Menge', 'Teil;Nr.;Menge')).toEqual([volume('Menge', 'm3')]);
});

test('what was settled under yet another heading stays with that', () => {
  expect(follow([volume('Stück', 'm3')], 'Teil;Menge', 'Teil;Mengen')).toEqual([volume('Stück', 'm3')]);
});
