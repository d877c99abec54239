import { afterEach, expect, test, vi } from 'vitest';
import { type FunctionEntry, findFunction } from '../../src/language/index.ts';
import { newSheet, type Sheet } from './sheet.ts';

afterEach(() => vi.restoreAllMocks());

/** The elements of columns that a function is given to walk along, and those that are copied, while something is done. */
function countElements(name: string, work: () => void): number {
  const { evaluate } = entryOf(name);
  if (evaluate.kind !== 'gather') throw new Error(`${name} gathers nothing`);
  const { of, refuse } = evaluate;
  let elements = 0;
  const counting =
    <A extends [readonly Float64Array[], ...unknown[]], R>(call: (...args: A) => R) =>
    (...args: A): R => {
      elements += args[0].reduce((sum, { length }) => sum + length, 0);
      return call(...args);
    };
  vi.spyOn(evaluate, 'of').mockImplementation(counting(of));
  if (refuse) vi.spyOn(evaluate, 'refuse' as 'of').mockImplementation(counting(refuse) as never);
  const { map } = Float64Array.prototype;
  vi.spyOn(Float64Array.prototype, 'map').mockImplementation(function (this: Float64Array, ...args) {
    elements += this.length;
    return map.apply(this, args);
  });
  work();
  vi.restoreAllMocks();
  return elements;
}

/** How often a function of single values is called while something is done. */
function countCalls(name: string, work: () => void): number {
  const { evaluate } = entryOf(name);
  if (evaluate.kind !== 'each') throw new Error(`${name} is no function of single values`);
  const { of } = evaluate;
  let calls = 0;
  vi.spyOn(evaluate, 'of').mockImplementation((...args) => {
    calls += 1;
    return of(...args);
  });
  work();
  vi.restoreAllMocks();
  return calls;
}

function entryOf(name: string): FunctionEntry {
  const entry = findFunction(name);
  if (!entry) throw new Error(`there is no function ${name}`);
  return entry;
}

function table(rows: number, columns: Readonly<Record<string, (row: number) => number | null>>): Sheet {
  const sheet = newSheet();
  sheet.table('t', rows);
  for (const [name, valueAt] of Object.entries(columns))
    sheet.column(
      `t.${name}`,
      Array.from({ length: rows }, (_, row) => valueAt(row)),
    );
  return sheet;
}

/** Reads why every row of a column has no value. */
function reasons(sheet: Sheet, name: string, code: string): void {
  const codes = sheet.rows(name);
  expect(codes.every((one) => one === code)).toBe(true);
}

const FEW = 1000;
const MANY = 8000;

/** Eight times the rows take eight times the work, and a little more for sorting them. */
function expectLinear(work: (rows: number) => number): void {
  const [few, many] = [work(FEW), work(MANY)];
  expect(few).toBeGreaterThan(0);
  expect(many).toBeLessThan(few * 12);
}

test('why rows that pick blank elements have no value is found in linear work', () => {
  expectLinear((rows) => {
    const sheet = table(rows, { blank: () => null, place: (row) => row + 1 });
    sheet.calcColumn('t.picked', 'INDEX(t.blank; place)');
    return countElements('INDEX', () => {
      sheet.run();
      reasons(sheet, 't.picked', 'blank-cell');
    });
  });
});

test('why rows look up keys that stand beside nothing is found in linear work', () => {
  expectLinear((rows) => {
    const sheet = table(rows, { key: (row) => row, blank: () => null });
    sheet.calcColumn('t.found', 'LOOKUP(key; t.key; t.blank; "exact")');
    return countElements('LOOKUP', () => {
      sheet.run();
      reasons(sheet, 't.found', 'blank-cell');
    });
  });
});

test('why keys stand nowhere or twice is found in linear work', () => {
  for (const shift of [0.5, 0]) {
    expectLinear((rows) => {
      const sheet = table(rows, { key: (row) => row >> 1, sought: (row) => (row >> 1) + shift });
      sheet.calcColumn('t.found', 'MATCH(sought; t.key; "exact")');
      return countElements('MATCH', () => {
        sheet.run();
        reasons(sheet, 't.found', shift === 0 ? 'outside-domain' : 'key-not-found');
      });
    });
  }
});

test('why points lie beyond a line is found in linear work', () => {
  expectLinear((rows) => {
    const sheet = table(rows, { x: (row) => row, sought: (row) => row + 1e6 });
    sheet.calcColumn('t.y', 'INTERPOLATE(sought; t.x; t.x; "refuse")');
    return countElements('INTERPOLATE', () => {
      sheet.run();
      reasons(sheet, 't.y', 'outside-domain');
    });
  });
});

test('why every row waits on a sum over rows of which one is blank is found in linear work', () => {
  expectLinear((rows) => {
    const sheet = table(rows, { x: (row) => (row === 3 ? null : row) });
    sheet.calcColumn('t.share', 'ROW() / SUM(SQRT(t.x))');
    return countCalls('SQRT', () => {
      sheet.run();
      reasons(sheet, 't.share', 'rows-blank');
    });
  });
});

test('what is found out once for all rows is found anew when a value changes', () => {
  const sheet = table(4, { x: (row) => (row === 1 ? null : row), sought: () => 2 });
  sheet.calcColumn('t.share', 'ROW() / SUM(t.x)');
  sheet.calcColumn('t.picked', 'INDEX(t.x; sought)');
  sheet.run();
  const message = (name: string) => {
    const reading = sheet.engine.readColumn(`s.${name}`).at(0);
    return 'problem' in reading ? reading.problem.message : reading.status;
  };
  expect(message('t.share')).toMatch(/row 2/);
  expect(message('t.picked')).not.toBe('ok');
  sheet.patch('t.x', 1, [1, null]);
  sheet.run();
  expect(message('t.share')).toMatch(/row 3/);
  expect(message('t.picked')).toBe('ok');
  sheet.patch('t.x', 2, [2]);
  sheet.run();
  expect(message('t.share')).toBe('ok');
});
