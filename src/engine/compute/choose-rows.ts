import {
  type ChosenValues,
  type ComparisonOperator,
  firstAbove,
  firstNotBelow,
  type SortedKeys,
  sortKeys,
} from '../../language/index.ts';
import { order, verdict, verdictsOf } from './operations.ts';

/** One comparison of a condition: every row's key `op` the key sought. */
export interface KeyComparison {
  readonly op: ComparisonOperator;
  /** One key a row; none is missing. */
  readonly keys: Float64Array;
}

/** What is made of the rows for which all comparisons hold with these keys, one a comparison. */
export type Choose = (sought: readonly number[]) => number;

/** A stretch of the sorted keys. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Prepares choosing among the values of rows (one a row) for many keys. One comparison takes the time of a search; of
 * several, the rows that one of them leaves are gone through.
 */
export function chooseRows(
  comparisons: readonly KeyComparison[],
  values: Float64Array,
  chosen: ChosenValues,
): Choose {
  const [only] = comparisons;
  if (values.length === 0) return () => chosen.of(values);
  if (comparisons.length === 1 && only) return chooseByOne(only, values, chosen);
  return chooseByAll(comparisons, values, chosen);
}

function chooseByOne({ op, keys }: KeyComparison, values: Float64Array, chosen: ChosenValues): Choose {
  const sorted = sortKeys(keys);
  const all = keys.length;
  if (op === '<' || op === '<=') {
    const made = chosen.ofBeginnings(picked(values, sorted.rows));
    const end = op === '<' ? firstNotBelow : firstAbove;
    return ([key = Number.NaN]) => made[end(sorted.keys, key)] as number;
  }
  if (op === '>' || op === '>=') {
    const made = chosen.ofBeginnings(picked(values, sorted.rows.toReversed()));
    const start = op === '>' ? firstAbove : firstNotBelow;
    return ([key = Number.NaN]) => made[all - start(sorted.keys, key)] as number;
  }
  // Many rows seek the same key.
  const known = new Map<number, number>();
  return ([key = Number.NaN]) => {
    const from = firstNotBelow(sorted.keys, key);
    const to = firstAbove(sorted.keys, key);
    const at = from * (all + 1) + to;
    let found = known.get(at);
    if (found === undefined) {
      const rows = op === '=' ? inOrder(sorted, { from, to }) : outside(sorted, { from, to });
      found = chosen.of(picked(values, rows));
      known.set(at, found);
    }
    return found;
  };
}

function chooseByAll(
  comparisons: readonly KeyComparison[],
  values: Float64Array,
  chosen: ChosenValues,
): Choose {
  const sortedOf = new Map<Float64Array, SortedKeys>();
  const sorted = comparisons.map(({ keys }) => {
    const known = sortedOf.get(keys) ?? sortKeys(keys);
    sortedOf.set(keys, known);
    return known;
  });
  const known = new Map<string, number>();
  const scratch = new Float64Array(values.length);
  return (sought) => {
    const places = comparisons.map((_, at) => {
      const { keys } = sorted[at] as SortedKeys;
      const key = sought[at] as number;
      return { from: firstNotBelow(keys, key), to: firstAbove(keys, key) };
    });
    // The rows chosen follow from the places alone.
    const name = places.map(({ from, to }) => `${from} ${to}`).join(' ');
    const before = known.get(name);
    if (before !== undefined) return before;
    const stretches = comparisons.map(({ op, keys }, at) =>
      stretchOf(op, places[at] as Stretch, keys.length),
    );
    const narrow = stretches.reduce(
      (best, one, at) => (widthOf(one) < widthOf(stretches[best]) ? at : best),
      0,
    );
    const stretch = stretches[narrow] as Stretch;
    // Sorting rows back into their order costs more than passing over some.
    const few = widthOf(stretch) * 16 < values.length || comparisons[narrow]?.op === '=';
    const rows = few ? inOrder(sorted[narrow] as SortedKeys, stretch) : undefined;
    const count = rows?.length ?? values.length;
    let held = 0;
    for (let at = 0; at < count; at += 1) {
      const row = rows ? (rows[at] as number) : at;
      if (!holdsAll(comparisons, sought, row)) continue;
      scratch[held] = values[row] as number;
      held += 1;
    }
    const found = chosen.of(scratch.subarray(0, held));
    known.set(name, found);
    return found;
  };
}

function holdsAll(comparisons: readonly KeyComparison[], sought: readonly number[], row: number): boolean {
  for (let k = 0; k < comparisons.length; k += 1) {
    const { op, keys } = comparisons[k] as KeyComparison;
    if (verdict(verdictsOf[op], order(keys[row] as number, sought[k] as number)) !== 1) return false;
  }
  return true;
}

/** Where the rows stand for which a comparison holds; all of them for one that leaves rows on both sides. */
function stretchOf(op: ComparisonOperator, { from, to }: Stretch, all: number): Stretch {
  switch (op) {
    case '=':
      return { from, to };
    case '<':
      return { from: 0, to: from };
    case '<=':
      return { from: 0, to };
    case '>':
      return { from: to, to: all };
    case '>=':
      return { from, to: all };
    case '<>':
      return { from: 0, to: all };
  }
}

function widthOf(stretch: Stretch | undefined): number {
  return stretch ? Math.max(0, stretch.to - stretch.from) : Number.POSITIVE_INFINITY;
}

/** The rows of a stretch in their order in the table. */
function inOrder({ keys, rows }: SortedKeys, { from, to }: Stretch): Uint32Array {
  const stretch = rows.subarray(from, to);
  return keys[from] === keys[to - 1] ? stretch : stretch.slice().sort();
}

/** The rows outside a stretch in their order in the table. */
function outside({ rows }: SortedKeys, { from, to }: Stretch): Uint32Array {
  const kept = new Uint32Array(rows.length - (to - from));
  kept.set(rows.subarray(0, from));
  kept.set(rows.subarray(to), from);
  return kept.sort();
}

function picked(values: Float64Array, rows: Uint32Array): Float64Array {
  const found = new Float64Array(rows.length);
  for (let at = 0; at < rows.length; at += 1) found[at] = values[rows[at] as number] as number;
  return found;
}
