import { hyperFormulaOf, numberIn } from './hyperformula.ts';
import { type Contestant, interleave, mustAgree, ratio, weigh } from './measure.ts';
import { mathjsSheet } from './mathjs-sheet.ts';
import { idOf, ourNumber, ourSheet } from './our-sheet.ts';
import type { Measured, Part } from './part.ts';
import { type Graph, graphEdits, sheetGraph, startOf } from './sheet-graph.ts';

/** A spreadsheet of the graph: one column, A1 downwards. */
export function spreadsheetRows(graph: Graph, count: number): (number | string)[][] {
  return Array.from({ length: count }, (_, at) => [graph.cells[at]?.sheet ?? startOf(at)]);
}

function compare(count: number, batch: number, rounds: number, withMathjs: boolean): Measured {
  const graph = sheetGraph(count);
  const edits = graphEdits(graph, batch);
  const last = count - 1;
  const own = weigh(() => ourSheet(graph));
  const other = weigh(() => hyperFormulaOf(spreadsheetRows(graph, count)));
  const contestants: Contestant[] = [
    {
      name: 'engine',
      count: batch,
      mb: own.mb,
      run: () => {
        for (const [at, value] of edits) {
          own.built.setInput(idOf(at), value);
          own.built.recalculate();
        }
      },
    },
    {
      name: 'HyperFormula',
      count: batch,
      mb: other.mb,
      run: () => {
        for (const [at, value] of edits) other.built.setCellContents({ sheet: 0, row: at, col: 0 }, value);
      },
    },
  ];
  const third = withMathjs ? weigh(() => mathjsSheet(graph)) : undefined;
  if (third) {
    const run = () => {
      for (const [at, value] of edits) third.built.edit(at, value);
    };
    contestants.push({ name: 'mathjs', count: batch, mb: third.mb, run });
  }
  const timings = interleave(contestants, rounds, 5);
  const result = ourNumber(own.built, idOf(last));
  mustAgree(`edit of ${count} cells, HyperFormula`, result, numberIn(other.built, last, 0));
  if (third) mustAgree(`edit of ${count} cells, mathjs`, result, third.built.read(last));
  return {
    title: `one edit of a sheet of ${count} cells`,
    timings,
    ratios: {
      [`edit${count}_vs_hyperformula`]: ratio(timings[0], timings[1]),
      ...(third && { [`edit${count}_vs_mathjs`]: ratio(timings[0], timings[2]) }),
    },
  };
}

/** (a) An edit of a random given of a sheet of 60 cells, in the engine alone. */
export const edit60: Part = { name: 'edit60', measure: () => [compare(60, 50, 60, true)] };

/** (a) The same of 6,000 cells. */
export const edit6000: Part = { name: 'edit6000', measure: () => [compare(6000, 4, 25, false)] };
