import { partsOf, type Typed } from '../../../language/index.ts';
import type { CauseFinder } from '../cause.ts';

/** A name in a formula and what it stands for, in words. */
export interface NamedValue {
  readonly written: string;
  readonly is: string;
}

/** So many names of conditions are told with their values. */
const MOST_TOLD = 4;

/** The names in conditions that have one value where the cursors stand, each once. */
export function namedValues(conditions: readonly Typed[], finder: CauseFinder): readonly NamedValue[] {
  const said = new Map(
    conditions.flatMap(namesIn).map((one) => [finder.written(one), finder.shown(finder.value(one), one)]),
  );
  return [...said].slice(0, MOST_TOLD).map(([written, is]) => ({ written, is }));
}

/** A whole column has a value a row, and none that could be told. */
function namesIn(node: Typed): readonly Typed[] {
  return node.kind === 'cell' ? [node] : partsOf(node).flatMap(namesIn);
}
