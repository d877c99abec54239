import { type Contestant, compare, times } from './compare.ts';
import { mustAgree, weigh } from './measure.ts';
import type { Measured, Part } from './part.ts';
import { otherQuantity, ROWS, type Takeoff, type Totals, takeoff } from './takeoff.ts';
import { editTakeoff, loadTakeoff, replaceQuantity, totalsOf } from './takeoff-engine.ts';
import {
  buildTakeoff,
  editSpreadsheet,
  replaceInSpreadsheet,
  spreadsheetTotals,
  takeoffRows,
} from './takeoff-hyperformula.ts';
import { loopTakeoff } from './takeoff-loop.ts';

/** (b) and (d): a table of 100,000 rows with three formula columns and totals. */
export const table: Part = {
  name: 'table',
  measure: () => {
    const givens = takeoff();
    return [measureLoop(givens), measureLoad(givens), ...measureEdits(givens)];
  },
};

function measureLoad(givens: Takeoff): Measured {
  const rows = takeoffRows(givens);
  const { timings, quotient } = compare([
    { name: 'engine', run: times(() => loadTakeoff(givens)) },
    { name: 'HyperFormula', run: times(() => buildTakeoff(rows)) },
  ]);
  return {
    title: 'a table of 100,000 rows, from typed columns to totals',
    timings,
    ratios: { table_load_vs_hyperformula: quotient('HyperFormula') },
  };
}

function measureEdits(givens: Takeoff): readonly Measured[] {
  const own = weigh(() => loadTakeoff(givens));
  const rows = takeoffRows(givens);
  const other = weigh(() => buildTakeoff(rows));
  const edits = compare([
    { name: 'engine', mb: own.mb, run: edited((row, quantity) => editTakeoff(own.built, row, quantity)) },
    {
      name: 'HyperFormula',
      mb: other.mb,
      run: edited((row, quantity) => editSpreadsheet(other.built, row, quantity)),
    },
  ]);
  replaceBoth(givens.quantity);
  mustAllAgree('after the edits', totalsOf(own.built), spreadsheetTotals(other.built));
  const quantities = [0, 1, 2].map(otherQuantity);
  const columns = quantities.map(cellsOf);
  const replaced = compare([
    {
      name: 'engine',
      mb: own.mb,
      run: inTurn(quantities, (quantity) => replaceQuantity(own.built, quantity)),
    },
    {
      name: 'HyperFormula',
      mb: other.mb,
      run: inTurn(columns, (cells) => replaceInSpreadsheet(other.built, cells)),
    },
  ]);
  replaceBoth(givens.quantity);
  mustAllAgree('after the columns', totalsOf(own.built), spreadsheetTotals(other.built));
  return [
    {
      title: 'one edit of that table',
      timings: edits.timings,
      ratios: { table_edit_vs_hyperformula: edits.quotient('HyperFormula') },
    },
    {
      title: 'one column of that table replaced',
      timings: replaced.timings,
      ratios: { table_column_vs_hyperformula: replaced.quotient('HyperFormula') },
    },
  ];

  function replaceBoth(quantity: Float64Array): void {
    replaceQuantity(own.built, quantity);
    replaceInSpreadsheet(other.built, cellsOf(quantity));
  }
}

function measureLoop(givens: Takeoff): Measured {
  const engine = loadTakeoff(givens);
  const quantities = [0, 1, 2].map(otherQuantity);
  const { timings, quotient } = compare([
    { name: 'loop', run: inTurn(quantities, (quantity) => loopTakeoff({ ...givens, quantity })) },
    { name: 'engine', run: inTurn(quantities, (quantity) => replaceQuantity(engine, quantity)) },
  ]);
  const [quantity] = quantities as [Float64Array];
  replaceQuantity(engine, quantity);
  mustAllAgree('engine and loop', totalsOf(engine), loopTakeoff({ ...givens, quantity }));
  return {
    title: 'that table computed anew, against a hand-written loop',
    timings: timings.toReversed(),
    ratios: { table_vs_loop: quotient('engine') },
  };
}

/** A run that puts a quantity into one row after another. */
function edited(edit: (row: number, quantity: number) => void): Contestant['run'] {
  let at = 0;
  return times(() => {
    at += 1;
    edit((at * 7919) % ROWS, at % 90);
  });
}

/** A run that takes the given things in turn. */
function inTurn<T>(all: readonly T[], operation: (one: T) => void): Contestant['run'] {
  let at = 0;
  return times(() => {
    at += 1;
    operation(all[at % all.length] as T);
  });
}

/** A column as rows of a spreadsheet. */
function cellsOf(column: Float64Array): number[][] {
  return Array.from(column, (value) => [value]);
}

function mustAllAgree(when: string, a: Totals, b: Totals): void {
  for (const key of ['net', 'cost', 'time'] as const) mustAgree(`${key} ${when}`, a[key], b[key]);
}
