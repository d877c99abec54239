import { type Book, blankBook, type Part, type Row } from '../../src/document/index.ts';

const given = (id: string, name: string, entry: string, unit: string): Row => ({
  id,
  kind: 'given',
  name,
  label: `the ${name}`,
  entry,
  unit,
});

const parts: readonly Part[] = [
  { id: 'p1', kind: 'prose', role: 'text', text: 'A beam of one span.' },
  {
    id: 'p2',
    kind: 'rows',
    title: 'Beam',
    rows: [
      given('r1', 'L', '4 m', 'm'),
      given('r2', 'q', '10 kN/m', 'kN/m'),
      { id: 'r3', kind: 'calc', name: 'M', label: 'moment', formula: 'q * L^2 / 8', unit: 'kN·m' },
      { id: 'r4', kind: 'check', name: 'c_M', formula: 'M <= 25 (kN*m)' },
    ],
  },
  {
    id: 'p3',
    kind: 'table',
    name: 'spans',
    title: 'Spans',
    length: 3,
    columns: [
      { id: 'k1', kind: 'given', name: 'mark', type: 'text', chunks: [['a', 'b', 'c']] },
      { id: 'k2', kind: 'given', name: 'length', unit: 'm', chunks: [[1, '2 m', null]] },
      { id: 'k3', kind: 'calc', name: 'twice', formula: '2 * length', unit: 'm' },
    ],
  },
  { id: 'p4', kind: 'rows', rows: [given('r5', 'g', '1 m', 'm')] },
];

/** A book of one sheet, `beam`: a text, a titled block of four lines, a table of three rows, a block of one line. */
export function smallBook(): Book {
  return { ...blankBook(), sheets: [{ key: 'beam', title: 'Beam', parts }] };
}

/** A place on that sheet. */
export const at = (part: string, item: string, field: string) => ({ sheet: 'beam', part, item, field });
