import { type Book, blankBook, chunksOfCells, type Part } from '../../src/document/index.ts';
import { ROWS, takeoff } from '../takeoff.ts';

/** A book with a takeoff of 100,000 rows: three given columns, three of formulas, and the totals below. */
export function largeBook(): Book {
  const { quantity, waste, price } = takeoff();
  const given = (id: string, name: string, unit: string, values: Float64Array) => ({
    id,
    kind: 'given' as const,
    name,
    label: name,
    unit,
    chunks: chunksOfCells([...values]),
  });
  const calc = (id: string, name: string, formula: string, unit: string) => ({
    id,
    kind: 'calc' as const,
    name,
    label: name,
    formula,
    unit,
  });
  const parts: readonly Part[] = [
    {
      id: 'p1',
      kind: 'rows',
      title: 'Rates and totals',
      rows: [
        { id: 'r1', kind: 'given', name: 'rate', label: 'rate of work', entry: '40 m^3/h', unit: 'm^3/h' },
        { id: 'r2', kind: 'given', name: 'markup', label: 'markup', entry: '8 %', unit: '%' },
        calc('r3', 'V', 'SUM(t.net)', 'm^3'),
        calc('r4', 'K', 'SUM(t.cost) * (1 + markup)', 'USD'),
        calc('r5', 'T', 'SUM(t.time)', 'h'),
        calc('r6', 'K_h', 'K / T', 'USD/h'),
      ],
    },
    {
      id: 'p2',
      kind: 'table',
      name: 't',
      title: 'Takeoff',
      length: ROWS,
      columns: [
        given('c1', 'quantity', 'm^3', quantity),
        given('c2', 'waste', '', waste),
        given('c3', 'price', 'USD/m^3', price),
        calc('c4', 'net', 'quantity * (1 + waste)', 'm^3'),
        calc('c5', 'cost', 'net * price', 'USD'),
        calc('c6', 'time', 'net / rate', 'h'),
      ],
    },
  ];
  const book = blankBook();
  return {
    ...book,
    title: { ...book.title, project: 'Takeoff' },
    settings: { ...book.settings, system: 'SI' },
    sheets: [{ key: 'job', title: 'Takeoff', parts }],
  };
}
