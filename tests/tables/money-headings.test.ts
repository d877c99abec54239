import { describe, expect, test } from 'vitest';
import {
  type Destination,
  readMapped,
  type TableColumn,
  tableText,
  textColumns,
  unitOfHeader,
} from '../../src/tables/index.ts';
import { standardUnits } from '../../src/units/index.ts';

const ITEM: TableColumn = { name: 'item', kind: 'given', type: 'text' };

/** The number 5 under a heading that goes to a column of prices, its unit as the heading has it or as was said. */
function priceUnder(header: string, said?: string, unit = 'USD') {
  const price: TableColumn = { name: 'price', label: 'price', kind: 'given', unit };
  const text = tableText(`item\t${header}\nslab\t5\n`, [ITEM, price]);
  if (!text.ok) throw new Error(text.problems[0]?.message);
  const column = textColumns(text.value, true)[1];
  if (column === undefined) throw new Error('the text has one column');
  const inUnit = said ?? unitOfHeader(column, price, standardUnits);
  const read = readMapped(text.value, [ITEM, price], {
    headed: true,
    goes: new Map<number, Destination>([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: 'price', unit: inUnit }],
    ]),
  });
  return read.ok ? `${read.value.cells.price?.[0]}` : read.problems[0]?.code;
}

const ASKED = /^column-(?:unit-other-kind|unit-unread|multiple)$/;

describe('amounts in another currency than the column has, or in a multiple of it, are asked for', () => {
  test.each([
    'Price $k',
    'Price $ k',
    'Price ($k)',
    'Price $ (k)',
    'Price $M',
    'Price $m',
    'Price $000',
    "Price $ '000",
    'Price USD k',
    'Price USD m',
    'Price kUSD',
    'Price k$',
    'Price CHF k',
    'Price CHF',
    'Price TEUR',
    'Price T€',
    'Price Mio. €',
    'Price €k',
    'Price C$',
    'Price (C$)',
    'Price C$ k',
    'Price A$',
    'Price NZ$',
    'Price R$',
    'Price CAD$',
    'Price $CAD',
    'Price CAD $',
    'Price Fr.',
    'Price (Fr.)',
    'Price SFr.',
    'Price kr',
    'Price kr.',
    'Price (KR)',
    'Price $ CA',
    'Price CDN $',
    'P.U. € HT',
    'Price Euro',
    'Price euros',
    'Preis Euro netto',
    'Price £',
    'Price ¥',
    'Price ￥',
    '单价(元)',
    '単価円',
    '単価（千円）',
    '단가(원)',
    'Цена, руб.',
    'Цена руб',
    'Price zł',
    'Price złotych',
    'Price Kč',
    'Price ₹',
    'Price Rs.',
    'Price ฿',
    'Price RM',
    'Price cents',
    'Price ¢',
    'Price (ct)',
    'Price pence',
    'Price USD (EUR)',
    'Price € ($)',
  ])('%s', (header) => {
    expect(priceUnder(header)).toMatch(ASKED);
  });

  test.each([
    'Price C$',
    'Price A$',
    'Price Fr.',
    'Price CHF k',
    'Price Euro',
    'Price $k',
    'Price (CHF)',
    'P.U. € HT',
    'Prix $ CA',
  ])('%s, whatever unit is said', (header) => {
    expect(priceUnder(header, 'USD')).toMatch(ASKED);
  });

  test.each(['Rate €/t', 'Rate (C$/t)', 'Rate CHF/t', 'Rate Fr./t', 'Rate k$/t', 'Rate Euro je t'])(
    '%s above a price',
    (header) => {
      expect(priceUnder(header, undefined, 'USD/t')).toMatch(ASKED);
    },
  );
});

describe('amounts in the currency of the column are read', () => {
  test.each([
    'Price',
    'Price $',
    'Price ($)',
    'Price USD',
    'Price (USD)',
    'Price US$',
    'Price (US$)',
    'Unit price [USD]',
    'Price in USD',
    'Price, $',
    'Price USD net',
    'Price per piece',
    'Price dollars',
    'Price 2024',
    'Total price',
    'Price (net)',
    'Marketing price',
    'Price of crane',
  ])('%s', (header) => {
    expect(priceUnder(header, header === 'Price (net)' ? 'USD' : undefined)).toMatch(/^5(?: |$)/);
  });

  test.each(['Rate', 'Rate $/t', 'Rate (USD/t)', 'Rate US$/t'])('%s above a price', (header) => {
    expect(priceUnder(header, undefined, 'USD/t')).toMatch(/^5(?: |$)/);
  });
});

test('a note on another currency by its name is not left out with the others', () => {
  const price: TableColumn = { name: 'price', kind: 'given', unit: 'USD' };
  const codes = (note: string): readonly string[] => {
    const text = tableText(`${note}\t\t\nitem\tprice\tqty\nslab\t5\t1\n`, [ITEM, price]);
    if (!text.ok) throw new Error(text.problems[0]?.message);
    const goes = new Map<number, Destination>([
      [0, { kind: 'column', name: 'item', unit: '' }],
      [1, { kind: 'column', name: 'price', unit: '' }],
      [2, { kind: 'out' }],
    ]);
    const read = readMapped(text.value, [ITEM, price], { headed: true, goes }, { notes: 'out' });
    return read.ok ? [] : read.problems.map(({ code }) => code);
  };
  for (const note of ['All prices in Euro', 'Montants en francs', 'Prices in C$', 'Valores en R$'])
    expect(codes(note)).toEqual(['multiple-left-out']);
  for (const note of ['Prices in US$', 'Rates of the north berth', 'Pound of the crane'])
    expect(codes(note)).toEqual([]);
});
