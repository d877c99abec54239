import { createEngine, type Engine } from '../src/engine/index.ts';
import { checkFormula, numberType, type Scope } from '../src/language/index.ts';
import { baseDimension, standardUnits } from '../src/units/index.ts';
import { weigh } from './measure.ts';
import type { SheetContestant } from './sheet-contestant.ts';
import type { Graph } from './sheet-graph.ts';

/** Sees every cell of the graph as a length. */
export const graphScope: Scope = {
  units: standardUnits,
  names: () => [],
  resolve: (name) => ({ kind: 'cell', named: { id: `sheet.${name}`, type: numberType(baseDimension('L')) } }),
};

/** The graph in the engine, computed. */
export function engineSheet(graph: Graph): SheetContestant {
  const ids = graph.cells.map((_, at) => `sheet.x${at}`);
  const { built, mb } = weigh(() => load(graph));
  return {
    name: 'engine',
    mb,
    edit: ({ at, value }) => {
      built.setInput(ids[at] ?? '', value);
      built.recalculate();
    },
    read: (at) => numberOf(built, ids[at] ?? ''),
  };
}

function load(graph: Graph): Engine {
  const engine = createEngine({ units: standardUnits, system: 'SI' });
  for (const [at, cell] of graph.cells.entries()) {
    if (typeof cell === 'number') engine.setInput(`sheet.x${at}`, cell);
    else {
      const { typed, text, problems } = checkFormula(cell.ours, graphScope);
      if (problems[0]) throw new Error(`${cell.ours}: ${problems[0].message}`);
      engine.setFormula(`sheet.x${at}`, typed, { text });
    }
  }
  engine.recalculate();
  return engine;
}

/** The number in a cell of the engine; throws on anything else. */
export function numberOf(engine: Engine, id: string): number {
  const reading = engine.read(id);
  if (reading.status !== 'ok' || typeof reading.value !== 'number') throw new Error(`no number in ${id}`);
  return reading.value;
}
