import { compare } from './compare.ts';
import { hyperFormulaSheet } from './hyperformula.ts';
import { mathjsSheet } from './mathjs-sheet.ts';
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
    const { timings, quotient } = compare(sheets.map((sheet) => editing(sheet, graph)));
    mustAllAgree(sheets, graph);
    return [
      {
        title: 'one edit of a sheet of 60 cells',
        timings,
        ratios: { edit60_vs_hyperformula: quotient('HyperFormula'), edit60_vs_mathjs: quotient('mathjs') },
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
    const { timings, quotient } = compare(sheets.map((sheet) => editing(sheet, graph)));
    mustAllAgree(sheets, graph);
    return [
      {
        title: 'one edit of a book of 6,000 cells',
        timings,
        ratios: { edit6000_vs_hyperformula: quotient('HyperFormula') },
      },
    ];
  },
};
