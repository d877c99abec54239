import { describe, expect, test } from 'vitest';
import { directedMapping } from '../../src/cli/columns-option.ts';
import { readOptions } from '../../src/cli/options.ts';
import { tableKinds, tableOptions } from '../../src/cli/table-options.ts';
import {
  type ReadOptions,
  readMapped,
  type TableCell,
  type TableColumn,
  tableText,
} from '../../src/tables/index.ts';
import { readEntry, readUnit, standardUnits, toSI } from '../../src/units/index.ts';
import { type Expected, TAKEOFF_TEXTS } from './takeoff-texts.ts';
import { WORLD_TEXTS } from './world-texts.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'no', kind: 'given', type: 'text' },
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'n', kind: 'given', unit: '-' },
  { name: 'L', kind: 'given', unit: 'ft' },
  { name: 'h', kind: 'given', unit: 'in' },
  { name: 'A', kind: 'given', unit: 'sf' },
  { name: 'V', kind: 'given', unit: 'cy' },
  { name: 'M', kind: 'given', unit: 'lbm' },
  { name: 'w', kind: 'given', unit: '%' },
  { name: 'p', kind: 'given', unit: 'USD' },
];

const isWord = (name: string): boolean => COLUMNS.find((column) => column.name === name)?.type === 'text';

function unitOf(name: string) {
  const read = readUnit(COLUMNS.find((column) => column.name === name)?.unit ?? '', standardUnits);
  if (!read.ok) throw new Error(`the unit of ${name} is none`);
  return read.value;
}

const check: NonNullable<ReadOptions['check']> = (name, cell) => {
  if (isWord(name) || typeof cell === 'number') return undefined;
  const read = readEntry(`${cell}`, standardUnits, unitOf(name));
  return read.ok ? undefined : read.problems[0];
};

function siOf(name: string, cell: TableCell): Expected {
  if (cell === null || isWord(name)) return cell;
  if (typeof cell === 'number') return toSI(cell, unitOf(name));
  const read = readEntry(cell, standardUnits, unitOf(name));
  return read.ok && read.value.kind === 'number' ? read.value.si : Number.NaN;
}

/** Reads a text as `--table` does, with what is said of it there. */
function readSaid(text: string, say: readonly string[]) {
  const { columns, header, decimal, skipped, consents } = tableOptions(readOptions('calc', say, tableKinds));
  const parted = tableText(text, COLUMNS, { skipped });
  if (!parted.ok) return { problems: parted.problems, cells: undefined };
  const mapping = directedMapping(parted.value, COLUMNS, columns, header);
  const read = readMapped(parted.value, COLUMNS, mapping, {
    ...consents,
    ...(decimal && { decimal }),
    check,
  });
  const { account } = read;
  const sum = Object.values(account?.counts ?? {}).reduce((total, count) => total + count, 0);
  expect(sum).toBe(account?.cells);
  const problems = read.ok ? read.value.problems : read.problems;
  const wrong = problems.filter(({ severity }) => severity === 'error');
  return { problems: wrong, cells: read.ok && wrong.length === 0 ? read.value.cells : undefined };
}

describe.each([...TAKEOFF_TEXTS, ...WORLD_TEXTS])('$what', ({ text, say, cells, refused }) => {
  test(cells === undefined ? 'is refused with its place' : 'is read as it was meant', () => {
    const found = readSaid(text, say);
    if (refused !== undefined) {
      const [code, place] = refused;
      expect(found.problems.map((one) => one.code)).toContain(code);
      expect(found.problems.find((one) => one.code === code)?.message).toContain(place);
      return;
    }
    expect(found.problems).toEqual([]);
    expect(Object.keys(found.cells ?? {}).sort()).toEqual(Object.keys(cells ?? {}).sort());
    for (const [name, values] of Object.entries(cells ?? {})) {
      const read = (found.cells?.[name] ?? []).map((cell) => siOf(name, cell));
      expect(read).toHaveLength(values.length);
      for (const [at, value] of values.entries()) {
        if (typeof value === 'number') expect(read[at]).toBeCloseTo(value, 9);
        else expect(read[at]).toBe(value);
      }
    }
  });
});

test.each([
  ['takeoffs', TAKEOFF_TEXTS],
  ['the world', WORLD_TEXTS],
])('there are sixty texts of %s, and each says what is expected', (_, texts) => {
  expect(texts.length).toBeGreaterThanOrEqual(60);
  expect(texts.filter(({ cells, refused }) => (cells === undefined) === (refused === undefined))).toEqual([]);
});
