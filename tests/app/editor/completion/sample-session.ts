import type { Session } from '../../../../src/app/session/session.ts';
import { type Book, blankBook, type Part } from '../../../../src/document/index.ts';
import { computedSession } from '../../computed-session.ts';

const pier: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'b', kind: 'given', name: 'b', label: 'berth length', entry: '120 ft', unit: 'ft' },
      { id: 'q', kind: 'given', name: 'q', label: 'deck load', entry: '600 psf', unit: 'psf' },
      {
        id: 'm',
        kind: 'choice',
        name: 'method',
        entry: 'API',
        options: [{ value: 'API', label: 'API RP 2GEO' }, { value: 'measured' }],
      },
      { id: 's', kind: 'choice', name: 'top_soil', entry: 'clay', from: 'layers.soil' },
      { id: 'w', kind: 'calc', name: 'w', label: 'line load', formula: 'q * 10 ft', unit: 'kip/ft' },
      { id: 'W', kind: 'calc', name: 'W', label: 'deck weight', formula: 'w * b + basis.P', unit: 'kip' },
      { id: 'f', kind: 'calc', name: 'F', formula: 'SUM(layers.f)', unit: 'kip' },
      { id: 'c', kind: 'check', name: 'ok', formula: 'W <= F * 100', unit: 'kip' },
    ],
  },
  {
    id: 't',
    kind: 'table',
    name: 'layers',
    length: 2,
    columns: [
      { id: 'ts', kind: 'given', name: 'soil', label: 'soil', type: 'text', chunks: [['clay', 'sand']] },
      { id: 'th', kind: 'given', name: 'h', label: 'thickness', unit: 'ft', chunks: [[10, 20]] },
      { id: 'tb', kind: 'calc', name: 'bottom', formula: 'ABOVE(bottom; 0 ft) + h', unit: 'ft' },
      { id: 'tf', kind: 'calc', name: 'f', formula: 'h * b * 1 psf * IF(soil = "clay"; 1; 2)', unit: 'kip' },
    ],
  },
  {
    id: 'u',
    kind: 'table',
    name: 'marks',
    columns: [
      { id: 'uz', kind: 'series', name: 'z', formula: 'SERIES(0 ft; b; 10 ft)', unit: 'ft' },
      { id: 'un', kind: 'calc', name: 'n', formula: 'z / layers.h_0', unit: '' },
    ],
  },
  { id: 'ch', kind: 'chart', form: 'line', table: 'layers', x: 'bottom', y: ['f', 'h'] },
  { id: 'fig', kind: 'figure', figure: 'section', cells: { length: 'b', load: 'w', soils: 'layers.soil' } },
];

const basis: readonly Part[] = [
  {
    id: 'bp',
    kind: 'rows',
    rows: [
      { id: 'P', kind: 'given', name: 'P', label: 'crane load', entry: '45 kip', unit: 'kip' },
      { id: 'x', kind: 'calc', name: 'x', formula: 'pier.layers.h', unit: 'ft' },
      { id: 'y', kind: 'calc', name: 'y', formula: 'MAX(pier.layers.bottom) + pier.b', unit: 'ft' },
    ],
  },
];

/** A small book of two sheets that name one another, with a table, a choice, a chart and a sketch. */
export const sampleBook: Book = {
  ...blankBook(),
  settings: { ...blankBook().settings, system: 'US' },
  sheets: [
    { key: 'pier', title: 'Pier', parts: pier },
    { key: 'basis', title: 'Basis', parts: basis },
  ],
};

/** A session on a book whose edits go nowhere. */
export function sessionOn(book: Book = sampleBook): Session {
  return computedSession(book);
}

/** The place of the value of a line of the sample's first block. */
export function lineOf(item: string, field = 'value') {
  return { sheet: 'pier', part: 'p', item, field };
}
