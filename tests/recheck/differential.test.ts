import { expect, test } from 'vitest';
import { functionTable } from '../../src/language/index.ts';
import { openNotebook, recheckProgram } from '../../src/notebook/index.ts';
import { recheck } from '../../src/recheck/index.ts';
import { instead } from './books.ts';
import { randomFrom } from './random.ts';
import { formulasOf, randomBook } from './random-book.ts';
import { functionsIn } from './random-formula.ts';

const SEED = 20_261_125;
/** Books are rechecked in batches, a test each. */
const BATCHES = 6;
const BOOKS_A_BATCH = 10;
/** The least formulas that every function must have been rechecked in. */
const LEAST = 50;

console.log(`recheck: random books start from seed ${SEED}`);

const rechecked = new Map<string, number>();
const withValue = new Map<string, number>();
const count = (into: Map<string, number>, name: string) => into.set(name, (into.get(name) ?? 0) + 1);
let formulas = 0;

/** Rechecks one random book and counts its functions; what the engines do not agree on. */
async function recheckRandomBook(seed: number): Promise<readonly string[]> {
  const book = randomBook(randomFrom(seed));
  const notebook = openNotebook(book);
  const { program, values } = recheckProgram(notebook);
  const report = await recheck(program, values);
  const skipped = new Set(report.notRechecked.map(({ id }) => id));
  const named = formulasOf(book);
  for (const [id, { formula, table }] of named) {
    const item = notebook.model.items.get(id);
    if (skipped.has(id) || !item || !('checked' in item) || item.checked.problems.length > 0) continue;
    formulas += 1;
    const hasValue = (table === undefined ? values(id) : values(id, 0)) !== undefined;
    for (const { name } of functionsIn(formula)) {
      count(rechecked, name);
      if (hasValue) count(withValue, name);
    }
  }
  return report.findings.map(({ id, message }) => `seed ${seed}: ${message}: ${named.get(id)?.formula}`);
}

test.each(Array.from({ length: BATCHES }, (_, batch) => SEED + batch * BOOKS_A_BATCH))(
  'random formulas have the same values in both engines, from seed %i on',
  async (first) => {
    const wrong: string[] = [];
    for (let at = 0; at < BOOKS_A_BATCH; at += 1) wrong.push(...(await recheckRandomBook(first + at)));
    expect(wrong).toEqual([]);
  },
);

test('every function that has a lowering was among them often enough', () => {
  const names = functionTable.filter(({ noRecheck }) => noRecheck === undefined).map(({ name }) => name);
  const words = names.map((name) => `${name} ${rechecked.get(name) ?? 0} (${withValue.get(name) ?? 0})`);
  console.log(`recheck: ${formulas} random formulas; of each function (with a value): ${words.join(', ')}`);
  expect(formulas).toBeGreaterThan(4000);
  expect(names.filter((name) => (rechecked.get(name) ?? 0) < LEAST)).toEqual([]);
  expect(names.filter((name) => (withValue.get(name) ?? 0) < LEAST / 5)).toEqual([]);
});

test('in a random book every perturbed value is found, and nothing else', async () => {
  for (let at = 0; at < 4; at += 1) {
    const random = randomFrom(SEED + at);
    const { program, values } = recheckProgram(openNotebook(randomBook(random)));
    const before = await recheck(program, values);
    const silent = new Set([...before.notRechecked, ...before.indeterminate].map(({ id }) => id));
    const other: Record<string, number | boolean> = {};
    for (const cell of program.cells) {
      if (silent.has(cell.id) || !random.oneIn(4)) continue;
      const row = cell.kind === 'input' || cell.table === undefined ? undefined : 0;
      const value = values(cell.id, row);
      const key = row === undefined ? cell.id : `${cell.id} ${row}`;
      if (typeof value === 'boolean') other[key] = !value;
      else if (typeof value === 'number' && Math.abs(value) > 1e-6) other[key] = value * (1 + 1e-6);
    }
    expect(Object.keys(other).length).toBeGreaterThan(5);
    const { findings } = await recheck(program, instead(values, other));
    const keyOf = (id: string, row: number | undefined) => (row === undefined ? id : `${id} ${row - 1}`);
    expect(findings.map(({ id, row }) => keyOf(id, row)).sort()).toEqual(Object.keys(other).sort());
    for (const { id, row, engine, recheck: second } of findings) {
      expect(engine).toBe(other[keyOf(id, row)]);
      const sound = values(id, row === undefined ? undefined : row - 1);
      if (typeof second === 'number') expect(second / (sound as number)).toBeCloseTo(1, 8);
      else expect(second).toBe(sound);
    }
  }
});
