import { interleave, mustAgree, ratio, weigh } from './measure.ts';
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
  const timings = interleave(
    [
      { name: 'engine', count: 1, run: () => loadTakeoff(givens) },
      { name: 'HyperFormula', count: 1, run: () => buildTakeoff(rows), every: 5 },
    ],
    15,
    0,
  );
  return {
    title: 'a table of 100,000 rows, from typed columns to totals',
    timings,
    ratios: { table_load_vs_hyperformula: ratio(timings[0], timings[1]) },
  };
}

function measureEdits(givens: Takeoff): readonly Measured[] {
  const own = weigh(() => loadTakeoff(givens));
  const rows = takeoffRows(givens);
  const other = weigh(() => buildTakeoff(rows));
  const engine = { name: 'engine', mb: own.mb };
  const spreadsheet = { name: 'HyperFormula', mb: other.mb };
  let round = 0;
  const rowOf = () => (round * 7919) % ROWS;
  const edits = interleave(
    [
      {
        ...engine,
        count: 1,
        run: () => {
          round += 1;
          editTakeoff(own.built, rowOf(), round % 90);
        },
      },
      { ...spreadsheet, count: 1, run: () => editSpreadsheet(other.built, rowOf(), round % 90) },
    ],
    25,
    5,
  );
  mustAllAgree('after the edits', totalsOf(own.built), spreadsheetTotals(other.built));
  let which = 0;
  let quantity = otherQuantity(0);
  let cells: number[][] = [];
  const prepare = () => {
    which += 1;
    quantity = otherQuantity(which >> 1);
    cells = Array.from(quantity, (value) => [value]);
  };
  const replaced = interleave(
    [
      { ...engine, count: 1, prepare, run: () => replaceQuantity(own.built, quantity) },
      { ...spreadsheet, count: 1, prepare, run: () => replaceInSpreadsheet(other.built, cells), every: 4 },
    ],
    9,
    0,
  );
  replaceQuantity(own.built, givens.quantity);
  replaceInSpreadsheet(
    other.built,
    Array.from(givens.quantity, (value) => [value]),
  );
  mustAllAgree('after the columns', totalsOf(own.built), spreadsheetTotals(other.built));
  return [
    {
      title: 'one edit of that table',
      timings: edits,
      ratios: { table_edit_vs_hyperformula: ratio(edits[0], edits[1]) },
    },
    {
      title: 'one column of that table replaced',
      timings: replaced,
      ratios: { table_column_vs_hyperformula: ratio(replaced[0], replaced[1]) },
    },
  ];
}

function measureLoop(givens: Takeoff): Measured {
  const engine = loadTakeoff(givens);
  const quantities = [0, 1, 2].map(otherQuantity);
  let round = 0;
  const quantity = () => quantities[round % quantities.length] as Float64Array;
  const timings = interleave(
    [
      {
        name: 'engine',
        count: 1,
        run: () => {
          round += 1;
          replaceQuantity(engine, quantity());
        },
      },
      { name: 'loop', count: 1, run: () => loopTakeoff({ ...givens, quantity: quantity() }) },
    ],
    200,
    50,
  );
  mustAllAgree('engine and loop', totalsOf(engine), loopTakeoff({ ...givens, quantity: quantity() }));
  return {
    title: 'that table computed anew, against a hand-written loop',
    timings,
    ratios: { table_vs_loop: 1 / ratio(timings[0], timings[1]) },
  };
}

function mustAllAgree(when: string, a: Totals, b: Totals): void {
  for (const key of ['net', 'cost', 'time'] as const) mustAgree(`${key} ${when}`, a[key], b[key]);
}
