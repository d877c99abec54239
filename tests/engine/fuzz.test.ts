import { describe, expect, test } from 'vitest';
import {
  type Chance,
  type Content,
  chanceOf,
  NAMES,
  randomFormula,
  randomSeries,
  TABLES,
  type TableName,
  TEXT_COLUMNS,
  TEXTS,
  tableOf,
} from './random-book.ts';
import { newSheet, type Sheet } from './sheet.ts';

/** A book as plain data, and how it is put into a sheet. */
interface Model {
  readonly cells: Map<string, Content>;
  readonly lengths: Map<TableName, number>;
}

const tableNames = Object.keys(TABLES) as TableName[];

function holdsTexts(name: string): boolean {
  return TEXT_COLUMNS.some((column) => column === name);
}

function declareAll(sheet: Sheet): void {
  for (const name of NAMES) {
    if (holdsTexts(name)) sheet.declareText(name);
    else sheet.declare(name, '');
  }
}

function put(sheet: Sheet, name: string, content: Content): void {
  const table = tableOf(name);
  if (content.kind === 'absent') sheet.engine.remove(`s.${name}`);
  else if (content.kind === 'formula') {
    if (name === 'p.z') sheet.series(name, content.formula, '');
    else if (table) sheet.calcColumn(name, content.formula, '');
    else sheet.calc(name, content.formula, '');
  } else if (table) sheet.column(name, content.values, holdsTexts(name) ? 'text' : '');
  else sheet.given(name, content.values[0] ?? null, '');
}

/** The same book put into a new sheet, in a random order. */
function fromScratch(model: Model, chance: Chance): Sheet {
  const sheet = newSheet();
  declareAll(sheet);
  for (const [table, length] of model.lengths) sheet.table(table, length);
  const left = [...model.cells];
  while (left.length > 0) {
    const [entry] = left.splice(chance.below(left.length), 1);
    if (entry && entry[1].kind !== 'absent') put(sheet, ...entry);
  }
  sheet.run();
  return sheet;
}

/** Everything that can be read, problems with their words included. */
function contents(sheet: Sheet, model: Model): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  for (const [name, { kind }] of model.cells) {
    if (tableOf(name) === undefined) found[name] = sheet.read(name);
    else if (kind !== 'absent') {
      const column = sheet.engine.readColumn(`s.${name}`);
      found[name] = [column.problem, ...Array.from({ length: column.length }, (_, row) => column.at(row))];
    }
  }
  for (const table of tableNames) found[table] = sheet.engine.rowsOf(`s.${table}`);
  return found;
}

function randomNumber(chance: Chance): number | null {
  return chance.oneIn(12) ? null : chance.below(40) / 4 - 2;
}

function randomColumn(name: string, length: number, chance: Chance): Content {
  const texts = holdsTexts(name);
  const value = () => (texts ? (chance.oneIn(15) ? null : chance.pick(TEXTS)) : randomNumber(chance));
  return { kind: 'given', values: Array.from({ length }, value) };
}

function randomContent(name: string, model: Model, chance: Chance): Content {
  const table = tableOf(name);
  if (name === 'p.z') return { kind: 'formula', formula: randomSeries(chance) };
  if (holdsTexts(name)) return randomColumn(name, model.lengths.get(table as TableName) ?? 0, chance);
  if (chance.oneIn(30)) return { kind: 'absent' };
  if (table === undefined)
    return chance.oneIn(3)
      ? { kind: 'given', values: [randomNumber(chance)] }
      : { kind: 'formula', formula: randomFormula(name, chance) };
  if (table !== 'p' && chance.oneIn(2)) return randomColumn(name, model.lengths.get(table) ?? 0, chance);
  return { kind: 'formula', formula: randomFormula(name, chance) };
}

/** One random edit, made to the model and to the sheet. */
function edit(model: Model, sheet: Sheet, chance: Chance): string {
  if (chance.oneIn(8)) return editLength(model, sheet, chance);
  const name = chance.pick(NAMES);
  const before = model.cells.get(name);
  if (before?.kind === 'given' && before.values.length > 0 && !chance.oneIn(4)) {
    const row = chance.below(before.values.length);
    const value = holdsTexts(name) ? chance.pick(TEXTS) : randomNumber(chance);
    const values = before.values.map((old, at) => (at === row ? value : old));
    model.cells.set(name, { kind: 'given', values });
    if (tableOf(name) === undefined) sheet.given(name, value, '');
    else sheet.patch(name, row, [value]);
    return `${name}[${row}] = ${value}`;
  }
  const content = randomContent(name, model, chance);
  model.cells.set(name, content);
  put(sheet, name, content);
  return `${name}: ${JSON.stringify(content)}`;
}

function editLength(model: Model, sheet: Sheet, chance: Chance): string {
  const table = chance.pick(['t', 'u'] as const);
  const length = chance.below(6);
  model.lengths.set(table, length);
  sheet.table(table, length);
  for (const [name, content] of model.cells) {
    if (tableOf(name) !== table || content.kind !== 'given') continue;
    const values = Array.from({ length }, (_, row) => content.values[row] ?? null);
    model.cells.set(name, { kind: 'given', values });
  }
  return `${table} has ${length} rows`;
}

function start(chance: Chance): Model {
  const model: Model = { cells: new Map(), lengths: new Map([['t', 4] as const, ['u', 3] as const]) };
  for (const name of NAMES) model.cells.set(name, randomContent(name, model, chance));
  return model;
}

const SEEDS = Array.from({ length: 40 }, (_, at) => 1000 + at);
const EDITS = 20;

describe.each(SEEDS)('seed %i', (seed) => {
  test('after every random edit the sheet is what it would be if it were made anew', () => {
    const chance = chanceOf(seed);
    const model = start(chance);
    const sheet = fromScratch(model, chance);
    const steps: string[] = [];
    for (let step = 0; step < EDITS; step += 1) {
      const before = contents(sheet, model);
      const edits = chance.oneIn(5) ? 3 : 1;
      for (let k = 0; k < edits; k += 1) steps.push(edit(model, sheet, chance));
      const changed = sheet.run();
      const now = contents(sheet, model);
      const last = steps.slice(-edits).join('\n');
      expect(now, last).toEqual(contents(fromScratch(model, chance), model));
      for (const [name, value] of Object.entries(now)) {
        if (!changed.has(`s.${name}`)) expect(value, `${name} after ${last}`).toEqual(before[name]);
      }
    }
  });
});

/** What stands where a value is not computed yet. */
function isPending(value: unknown): boolean {
  return JSON.stringify(value).includes('not-computed-yet');
}

const SLICED_SEEDS = Array.from({ length: 25 }, (_, at) => 5000 + at);
let pendingSeen = 0;

describe.each(SLICED_SEEDS)('in slices, seed %i', (seed) => {
  test('at every moment what has a value has the right one, and in the end everything has', () => {
    const chance = chanceOf(seed);
    const model = start(chance);
    const sheet = fromScratch(model, chance);
    // Work of a few operations is long, and the time is over now and then.
    const slice = { isOver: () => chance.oneIn(3), long: 1 + chance.below(60) };
    const steps: string[] = [];
    const look = (before: Record<string, unknown>) => {
      const changed = sheet.engine.recalculate(slice);
      const now = contents(sheet, model);
      const scratch = contents(fromScratch(model, chance), model);
      const last = steps.slice(-4).join('\n');
      for (const [name, value] of Object.entries(now)) {
        if (tableNames.some((table) => table === name)) continue;
        if (isPending(value)) {
          pendingSeen += 1;
          if (isPending(before[name])) continue;
        } else expect(value, `${name} after ${last}`).toEqual(scratch[name]);
        if (!changed.has(`s.${name}`)) expect(value, `${name} after ${last}`).toEqual(before[name]);
      }
      return now;
    };
    for (let step = 0; step < EDITS; step += 1) {
      const before = contents(sheet, model);
      steps.push(edit(model, sheet, chance));
      let now = look(before);
      while (!chance.oneIn(3) && sheet.engine.pending) now = look(now);
    }
    for (let turn = 0; sheet.engine.pending; turn += 1) {
      if (turn > 1000) throw new Error('the work does not end');
      sheet.engine.recalculate(slice);
    }
    expect(contents(sheet, model), steps.join('\n')).toEqual(contents(fromScratch(model, chance), model));
  });
});

test('work was left for later, and seen to be', () => {
  expect(pendingSeen).toBeGreaterThan(200);
});
