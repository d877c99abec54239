import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { blankBook, type Part, writeBook } from '../../src/document/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'quaybook-'));

/** Writes a file for a test and gives its path. */
export function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** Writes a file of bytes for a test and gives its path. */
export function bytesFileOf(name: string, bytes: Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

/** A book with one sheet `s` of the parts given, as a file; its path. */
export function bookFile(name: string, parts: readonly Part[]): string {
  return fileOf(name, writeBook({ ...blankBook(), sheets: [{ key: 's', title: 'Sheet', parts }] }));
}

/** A small sound book: a beam of width and depth, with a check and a table of layers. */
export const beam: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      {
        id: 'b',
        kind: 'given',
        name: 'b',
        entry: '12 in',
        unit: 'in',
        range: { min: '1 in', max: '100 in' },
      },
      { id: 'd', kind: 'given', name: 'd', entry: '24', unit: 'in' },
      { id: 'x', kind: 'given', name: 'x', entry: '', unit: 'ft', optional: true },
      { id: 'A', kind: 'calc', name: 'A', formula: 'b * d', unit: 'ft^2' },
      { id: 'y', kind: 'calc', name: 'y', formula: 'IF(ISBLANK(x); 1 ft; x)', unit: 'ft' },
      { id: 'c', kind: 'check', name: 'c', formula: 'A <= 2.5 (ft^2)', unit: 'ft^2' },
      { id: 'T', kind: 'calc', name: 'T', formula: 'SUM(layers.t)', unit: 'm' },
    ],
  },
  {
    id: 't',
    kind: 'table',
    name: 'layers',
    length: 2,
    columns: [
      { id: 'soil', kind: 'given', name: 'soil', label: 'soil', type: 'text', chunks: [['clay', 'sand']] },
      { id: 'th', kind: 'given', name: 't', label: 'thickness', unit: 'm', chunks: [[2, '10 ft']] },
      { id: 'bo', kind: 'calc', name: 'bottom', formula: 'RUNNINGSUM(t)', unit: 'm' },
    ],
  },
];
