import type { Table } from '../src/document/index.ts';

/** A table in which rows are looked for by what a stone is called. */
export const stones: Table = {
  id: 'stones',
  kind: 'table',
  name: 'stones',
  length: 2,
  columns: [
    { id: 'n', kind: 'given', name: 'stone', type: 'text', chunks: [['Granite', 'basalt']] },
    { id: 'r', kind: 'given', name: 'ρ', unit: 'kg/m^3', chunks: [[2700, 3000]] },
    { id: 'c', kind: 'given', name: 'cost', unit: 'USD/t', chunks: [[20, 30]] },
  ],
};
