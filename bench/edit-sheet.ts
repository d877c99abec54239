import { hyperFormulaSheet } from './hyperformula.ts';
import { mathjsSheet } from './mathjs-sheet.ts';
import { interleave, ratio } from './measure.ts';
import { engineSheet } from './our-sheet.ts';
import type { Part } from './part.ts';
import { editing, mustAllAgree } from './sheet-contestant.ts';
import { sheetGraph } from './sheet-graph.ts';

/** (a) An edit of a random given of a sheet of 60 cells: the engine alone, HyperFormula, mathjs with its units. */
export const edit60: Part = {
  name: 'edit60',
  measure: () => {
    const graph = sheetGraph(60);
    const sheets = [engineSheet(graph), hyperFormulaSheet(graph), mathjsSheet(graph)];
    const counts = [1000, 50, 25];
    const contestants = sheets.map((sheet, at) => editing(sheet, graph, counts[at] ?? 1));
    const timings = interleave(contestants, 60, 10);
    mustAllAgree(sheets, graph);
    const [own, spreadsheet, mathjs] = timings;
    return [
      {
        title: 'one edit of a sheet of 60 cells',
        timings,
        ratios: {
          edit60_vs_hyperformula: ratio(own, spreadsheet),
          edit60_vs_mathjs: ratio(own, mathjs),
        },
      },
    ];
  },
};

/** (a) The same of a hundred such sheets that read from one another: the engine alone and HyperFormula. */
export const edit6000: Part = {
  name: 'edit6000',
  measure: () => {
    const graph = sheetGraph(6000);
    const sheets = [engineSheet(graph), hyperFormulaSheet(graph)];
    const contestants = sheets.map((sheet) => editing(sheet, graph, 40));
    const timings = interleave(contestants, 25, 5);
    mustAllAgree(sheets, graph);
    return [
      {
        title: 'one edit of a book of 6,000 cells',
        timings,
        ratios: { edit6000_vs_hyperformula: ratio(timings[0], timings[1]) },
      },
    ];
  },
};
