import { expect, test } from 'vitest';
import type { Problem } from '../../src/diagnostics/index.ts';
import {
  encodingOf,
  namedMapping,
  type ReadOptions,
  readMapped,
  type TableCell,
  type TableReading,
  tableText,
} from '../../src/tables/index.ts';
import { readEntry, readUnit, standardUnits, toSI } from '../../src/units/index.ts';
import { COLUMNS, type MadeText, makeText } from './made-texts.ts';

/** How many texts are made; `npm run texts` makes 10,000. */
const TEXTS = Number(process.env.QUAYBOOK_TEXTS ?? 1500);
const FIRST_SEED = 20_260;

function unitOf(name: string) {
  const read = readUnit(COLUMNS.find((column) => column.name === name)?.unit ?? '', standardUnits);
  if (!read.ok) throw new Error('the columns have units');
  return read.value;
}

const isWord = (name: string): boolean => COLUMNS.find((column) => column.name === name)?.type === 'text';

/** What is wrong with a cell, as the book that takes it would find. */
const check: NonNullable<ReadOptions['check']> = (name, cell) => {
  if (isWord(name) || typeof cell === 'number') return undefined;
  const read = readEntry(`${cell}`, standardUnits, unitOf(name));
  return read.ok ? undefined : read.problems[0];
};

function siOf(name: string, cell: TableCell): string | number | null {
  if (cell === null || isWord(name)) return cell;
  if (typeof cell === 'number') return toSI(cell, unitOf(name));
  const read = readEntry(cell, standardUnits, unitOf(name));
  return read.ok && read.value.kind === 'number' ? read.value.si : Number.NaN;
}

function readMade({ bytes }: MadeText, options: ReadOptions, skipped = new Set<number>()): TableReading {
  const encoding = encodingOf(bytes);
  if (encoding === undefined) throw new Error('a text that was made is no text');
  const parted = tableText(new TextDecoder(encoding).decode(bytes), COLUMNS, { skipped });
  if (!parted.ok) return { ...parted, account: undefined };
  return readMapped(parted.value, COLUMNS, namedMapping(parted.value, COLUMNS), { ...options, check });
}

function errorsOf(read: TableReading): readonly Problem[] {
  return read.ok ? read.value.problems.filter(({ severity }) => severity === 'error') : read.problems;
}

/** Whether a problem says where: a line, lines, or a column. */
function hasPlace({ data, code }: Problem): boolean {
  const keys = ['line', 'lines', 'pointLine', 'header', 'columns', 'first'];
  return keys.some((key) => data[key] !== undefined) || /^(?:table-|cells-.*-more)/.test(code);
}

/** Why a text that was read is not what was written, or '' if it is. */
function difference(read: Extract<TableReading, { ok: true }>, { rows }: MadeText): string {
  const { length, cells } = read.value;
  if (length !== rows.length) return `${length} rows for ${rows.length}`;
  for (const [at, row] of rows.entries()) {
    for (const [name, value] of Object.entries(row)) {
      const found = siOf(name, cells[name]?.[at] ?? null);
      const isSame =
        typeof value === 'number' && typeof found === 'number'
          ? Math.abs(found - value) <= 1e-9 * Math.abs(value)
          : found === value;
      if (!isSame) return `row ${at + 1}, ${name}: ${found} for ${value}`;
    }
  }
  return '';
}

test(`of ${TEXTS} texts as people write them each is read as it was written, or refused with its place`, () => {
  const counts = { read: 0, answered: 0, refused: 0 };
  const wrong: string[] = [];
  for (let seed = FIRST_SEED; seed < FIRST_SEED + TEXTS; seed += 1) {
    const made = makeText(seed);
    const judge = (read: TableReading): boolean => {
      const errors = errorsOf(read);
      const account = read.account;
      if (account !== undefined) {
        const sum = Object.values(account.counts).reduce((total, count) => total + count, 0);
        const written = new Set(account.columns.map(({ position }) => position)).size;
        if (sum !== account.cells || written !== account.columns.length) wrong.push(`${seed}: the account`);
      }
      for (const found of errors) if (!hasPlace(found)) wrong.push(`${seed}: ${found.code} without a place`);
      if (!read.ok || errors.length > 0) {
        if (errors.length === 0) wrong.push(`${seed}: refused without a reason`);
        return false;
      }
      const found = difference(read, made);
      if (found !== '') wrong.push(`${seed}: ${found}\n${made.text}`);
      return true;
    };
    if (judge(readMade(made, {}))) counts.read += 1;
    else if (
      judge(readMade(made, { decimal: made.decimal, totals: 'in', notes: 'in' }, new Set(made.others)))
    )
      counts.answered += 1;
    else counts.refused += 1;
  }
  console.log(
    `${TEXTS} texts from seed ${FIRST_SEED}: ${counts.read} read at once, ${counts.answered} once asked, ` +
      `${counts.refused} refused, ${wrong.length} wrong`,
  );
  expect(wrong.slice(0, 8)).toEqual([]);
  // A reader that refuses what it could read is none.
  expect(counts.read).toBeGreaterThan(TEXTS * 0.3);
  expect(counts.read + counts.answered).toBeGreaterThan(TEXTS * 0.5);
}, 600_000);
