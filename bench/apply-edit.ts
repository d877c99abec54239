import { type Book, blankBook, type Row, setEntry } from '../src/document/index.ts';
import { openNotebook } from '../src/notebook/index.ts';
import { readUnit, standardUnits } from '../src/units/index.ts';
import { compare } from './compare.ts';
import { hyperFormulaSheet } from './hyperformula.ts';
import { weigh } from './measure.ts';
import type { Part } from './part.ts';
import { editing, mustAllAgree, type SheetContestant } from './sheet-contestant.ts';
import { type Graph, sheetGraph } from './sheet-graph.ts';

/** (a) The same edit of 60 cells the whole way: an entry as text through `apply`, and the result read. */
export const apply60: Part = {
  name: 'apply60',
  measure: () => {
    const graph = sheetGraph(60);
    const sheets = [notebookSheet(graph), hyperFormulaSheet(graph)];
    const { timings, quotient } = compare(sheets.map((sheet) => editing(sheet, graph)));
    mustAllAgree(sheets, graph);
    return [
      {
        title: 'one edit of a sheet of 60 cells through the notebook',
        timings,
        ratios: { apply60_vs_hyperformula: quotient('HyperFormula') },
      },
    ];
  },
};

function notebookSheet(graph: Graph): SheetContestant {
  const metre = readUnit('m', standardUnits);
  if (!metre.ok) throw new Error('the registry has no metre');
  const { built, mb } = weigh(() => openNotebook(bookOf(graph)));
  return {
    name: 'notebook',
    mb,
    edit: ({ at, value }) => {
      const applied = built.apply(setEntry({ sheet: 'sheet', part: 'p', row: `r${at}` }, `${value} m`));
      if (!applied.ok) throw new Error(applied.problems[0]?.message ?? 'the edit was refused');
    },
    read: (at) => {
      const result = built.result(`sheet.x${at}`);
      if (result.status !== 'ok' || result.value.kind !== 'number') throw new Error(`no number in x${at}`);
      return result.value.si;
    },
  };
}

/** The graph as a book of one sheet with one block of rows. */
function bookOf({ cells }: Graph): Book {
  const rows = cells.map((cell, at): Row => {
    const named = { id: `r${at}`, name: `x${at}`, unit: 'm' };
    return typeof cell === 'number'
      ? { kind: 'given', ...named, entry: `${cell} m` }
      : { kind: 'calc', ...named, formula: cell.ours };
  });
  return { ...blankBook(), sheets: [{ key: 'sheet', title: '', parts: [{ id: 'p', kind: 'rows', rows }] }] };
}
