import { expect, test } from 'vitest';
import type { Problem } from '../../src/diagnostics/index.ts';
import {
  type Destination,
  decodeText,
  namedMapping,
  type ReadOptions,
  readMapped,
  type TableCell,
  type TableReading,
  tableText,
  textColumns,
  unitOfHeader,
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

/** What was answered of a text: how it is read, the lines to leave out, and where its columns go. */
interface Answers {
  readonly options: ReadOptions;
  readonly skipped?: ReadonlySet<number>;
  readonly goes?: ReadonlyMap<number, Destination>;
}

function decoded({ bytes }: Pick<MadeText, 'bytes'>): string {
  const decoded = decodeText(bytes, (encoding, all) => new TextDecoder(encoding).decode(all));
  if (decoded === undefined) throw new Error('a text that was made is no text');
  return decoded.text;
}

function readMade(made: MadeText, { options, skipped = new Set(), goes = new Map() }: Answers): TableReading {
  const parted = tableText(decoded(made), COLUMNS, { skipped });
  if (!parted.ok) return { ...parted, account: undefined };
  const named = namedMapping(parted.value, COLUMNS);
  const mapping = { ...named, goes: new Map([...named.goes, ...goes]) };
  return readMapped(parted.value, COLUMNS, mapping, { ...options, check });
}

/** Where the columns without a name of the table go, the one of units to its numbers or else nowhere. */
function restOf(
  { units, remarks, foreign, percent, ...made }: MadeText,
  areUnits: boolean,
): ReadonlyMap<number, Destination> {
  const goes = new Map<number, Destination>();
  const parted = tableText(decoded(made), COLUMNS, { skipped: new Set(made.others) });
  const found = parted.ok ? textColumns(parted.value, true) : [];
  for (const [position, name] of foreign) {
    const column = COLUMNS.find((one) => one.name === name);
    const text = found.find((one) => one.position === position);
    if (column === undefined || text === undefined) continue;
    goes.set(position, { kind: 'column', name, unit: unitOfHeader(text, column, standardUnits) });
  }
  if (percent !== undefined) goes.set(percent, { kind: 'column', name: 'w', unit: '%' });
  if (units !== undefined)
    goes.set(units.position, areUnits ? { kind: 'unit', of: units.of } : { kind: 'out' });
  if (remarks !== undefined) goes.set(remarks, { kind: 'out' });
  return goes;
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
  const causes = new Map<string, number>();
  const readableCauses = new Map<string, number>();
  const unread: string[] = [];
  let readable = 0;
  const wrong: string[] = [];
  for (let seed = FIRST_SEED; seed < FIRST_SEED + TEXTS; seed += 1) {
    const made = makeText(seed);
    if (made.isReadable) readable += 1;
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
    const answers: Answers = {
      options: {
        decimal: made.decimal,
        totals: 'in',
        sums: 'in',
        notes: 'in',
        unnamed: 'in',
        nil: made.nil,
        parentheses: made.parentheses,
        ...(made.isCut && { short: 'blank' }),
        ...(made.isPlain && { thousands: 'plain' }),
        noRows: made.rows.length === 0,
      },
      skipped: new Set(made.others),
      goes: restOf(made, true),
    };
    // A column of units that is left out by a wrong answer must not turn the numbers into others.
    if (made.units !== undefined) judge(readMade(made, { ...answers, goes: restOf(made, false) }));
    if (judge(readMade(made, { options: {} }))) counts.read += 1;
    else {
      const answered = readMade(made, answers);
      if (judge(answered)) counts.answered += 1;
      else {
        counts.refused += 1;
        if (made.isReadable) {
          unread.push(`${seed}: ${errorsOf(answered).map((found) => found.message)[0]}`);
          for (const { code } of errorsOf(answered))
            readableCauses.set(code, (readableCauses.get(code) ?? 0) + 1);
        }
        for (const code of new Set(errorsOf(answered).map((found) => found.code)))
          causes.set(code, (causes.get(code) ?? 0) + 1);
      }
    }
  }
  console.log(
    `${TEXTS} texts from seed ${FIRST_SEED}: ${counts.read} read at once, ${counts.answered} once asked, ` +
      `${counts.refused} refused, ${wrong.length} wrong`,
  );
  console.log(`${unread.length} of ${readable} that a careful person can read are refused once asked`);
  for (const [code, count] of readableCauses) console.log(`of these ${code}: ${count}`);
  for (const told of unread.slice(0, Number(process.env.QUAYBOOK_TOLD ?? 0))) console.log(told);
  const ranked = [...causes].sort((a, b) => b[1] - a[1]);
  for (const [code, count] of ranked)
    console.log(`${code}: ${((100 * count) / TEXTS).toFixed(1)} % of the texts are refused for it`);
  expect(wrong.slice(0, 8)).toEqual([]);
  // A reader that refuses what it could read is none.
  expect(counts.read).toBeGreaterThan(TEXTS * 0.25);
  expect(unread.length).toBeLessThan(readable * 0.01);
  expect(readable).toBeGreaterThan(TEXTS * 0.7);
}, 600_000);
