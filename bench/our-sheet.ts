import { createEngine, type Engine } from '../src/engine/index.ts';
import { checkFormula, numberType, type Scope } from '../src/language/index.ts';
import { baseDimension, readUnit, standardUnits, type Unit } from '../src/units/index.ts';
import { type Graph, startOf } from './sheet-graph.ts';

/** The id of a cell of the graph. */
export function idOf(at: number): string {
  return `sheet.x${at}`;
}

/** Sees every cell of the graph as a length in metres. */
export function graphScope(): Scope {
  const type = numberType(baseDimension('L'));
  const unit = metre();
  return {
    units: standardUnits,
    names: () => [],
    resolve: (name) => ({ kind: 'cell', named: { id: `sheet.${name}`, type, unit } }),
  };
}

/** The metre, as a unit. */
export function metre(): Unit {
  const unit = readUnit('m', standardUnits);
  if (!unit.ok) throw new Error('the registry has no metre');
  return unit.value;
}

/** The graph in the engine, computed. */
export function ourSheet(graph: Graph): Engine {
  const engine = createEngine();
  const scope = graphScope();
  for (const at of graph.givens) engine.setInput(idOf(at), startOf(at));
  for (const [at, cell] of graph.cells.entries()) {
    if (!cell) continue;
    const { typed, text, problems } = checkFormula(cell.ours, scope);
    if (problems[0]) throw new Error(`${cell.ours}: ${problems[0].message}`);
    engine.setFormula(idOf(at), typed, { text });
  }
  engine.recalculate();
  return engine;
}

/** The number in a cell of the engine; throws on anything else. */
export function ourNumber(engine: Engine, id: string): number {
  const reading = engine.read(id);
  if (reading.status !== 'ok' || typeof reading.value !== 'number') throw new Error(`no number in ${id}`);
  return reading.value;
}
