import { checkFormula } from '../src/language/index.ts';
import { compare, times } from './compare.ts';
import { graphColumn, hyperFormulaOf } from './hyperformula.ts';
import { graphScope } from './our-sheet.ts';
import type { Part } from './part.ts';
import { sheetGraph } from './sheet-graph.ts';

/** Two thirds of these cells are formulas: ten thousand. */
const CELLS = 15_000;

/** (c) Ten thousand formulas parsed and checked, dimensions included, against HyperFormula's build of the same. */
export const check10k: Part = {
  name: 'check10k',
  measure: () => {
    const graph = sheetGraph(CELLS);
    const formulas = graph.cells.flatMap((cell) => (typeof cell === 'number' ? [] : [cell.ours]));
    if (formulas.length !== 10_000) throw new Error(`there are ${formulas.length} formulas`);
    const rows = graphColumn(graph);
    const check = () => {
      for (const formula of formulas) {
        const { problems } = checkFormula(formula, graphScope);
        if (problems[0]) throw new Error(`${formula}: ${problems[0].message}`);
      }
    };
    const { timings, quotient } = compare([
      { name: 'parse and check', run: times(check) },
      { name: 'HyperFormula', run: times(() => hyperFormulaOf(rows)) },
    ]);
    return [
      {
        title: '10,000 formulas made ready',
        timings,
        ratios: { check10k_vs_hyperformula: quotient('HyperFormula') },
      },
    ];
  },
};
