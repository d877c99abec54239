import type { Contestant } from './compare.ts';
import { mustAgree } from './measure.ts';
import { type Graph, type GraphEdit, graphEdits } from './sheet-graph.ts';

/** Somebody who keeps a sheet computed: takes edits and tells the number in a cell. */
export interface SheetContestant {
  readonly name: string;
  readonly mb: number;
  readonly edit: (edit: GraphEdit) => void;
  /** Metres. */
  readonly read: (at: number) => number;
}

/** A contestant that makes edits, other ones in each batch. */
export function editing(sheet: SheetContestant, graph: Graph): Contestant {
  const next = graphEdits(graph);
  let batch: readonly GraphEdit[] = [];
  return {
    name: sheet.name,
    mb: sheet.mb,
    prepare: (count) => {
      batch = next(count);
    },
    run: () => {
      for (const edit of batch) sheet.edit(edit);
    },
  };
}

/** Puts the same values into all sheets and throws unless they agree in every tenth cell. */
export function mustAllAgree(sheets: readonly SheetContestant[], graph: Graph): void {
  const [first, ...others] = sheets;
  for (const at of graph.givens) for (const sheet of sheets) sheet.edit({ at, value: 2 + (at % 7) });
  for (let at = graph.cells.length - 1; at >= 0; at -= 10) {
    for (const other of others) mustAgree(`cell ${at}, ${other.name}`, first?.read(at) ?? 0, other.read(at));
  }
}
