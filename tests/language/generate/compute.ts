import { createEngine } from '../../../src/engine/index.ts';
import { checkFormula } from '../../../src/language/index.ts';
import { fillWorld, worldScope, worldTables } from './world.ts';

/** What one element of a formula comes to: a value in SI, or the code of the problem it has instead. */
export type Outcome = number | string | boolean | { readonly problem: string };

/** Computes formula texts over the world, in a column of `table` or in a line. Throws on a formula that is refused. */
export function worldComputer(table?: string): (text: string) => readonly Outcome[] {
  const engine = createEngine();
  fillWorld(engine);
  const scope = worldScope(table);
  const place = table === undefined ? {} : { table: `w.${table}` };
  const id = table === undefined ? 'w.result' : `w.${table}.result`;
  return (text) => {
    const checked = checkFormula(text, scope);
    const [first] = checked.problems;
    if (first) throw new Error(`${text} is refused: ${first.message}`);
    engine.setFormula(id, checked.typed, { ...place, text: checked.text });
    engine.recalculate();
    const readings =
      table === undefined
        ? [engine.read(id)]
        : Array.from({ length: worldTables.get(table) ?? 0 }, (_, row) => engine.readColumn(id).at(row));
    return readings.map((reading) =>
      reading.status === 'ok'
        ? reading.value
        : { problem: reading.status === 'missing' ? 'missing' : reading.problem.code },
    );
  };
}
