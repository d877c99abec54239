import { isIdle } from './agreement.ts';
import { type Compared, compare, keyOf, valueAt } from './compared.ts';
import type { LoweredBook } from './lower/book.ts';
import { valueCell } from './lower/entries.ts';
import type { ValuePlace } from './lower/plan.ts';
import type { Hazard } from './lower/watched.ts';
import type { EngineValues } from './program.ts';
import { doubtWords, type RecheckDoubt, whereOf } from './report.ts';
import type { ComputedGrid } from './second-engine.ts';

/** A value no comparison can decide. */
interface Doubt extends Compared {
  readonly hazard: Hazard;
}

/**
 * The values a watched cell says cannot be decided. Where the two engines fell apart on one, the engine's value is put
 * on the grid, so that what depends on it is compared on equal terms; that may bring up more.
 */
export function settleDoubts(
  book: LoweredBook,
  computed: ComputedGrid,
  values: EngineValues,
): ReadonlyMap<string, Doubt> {
  const doubts = new Map<string, Doubt>();
  for (;;) {
    const found = idleValues(book, computed).filter((value) => !doubts.has(keyOf(value)));
    if (found.length === 0) return doubts;
    for (const value of found) doubts.set(keyOf(value), value);
    const apart = found.filter((value) => compare(value, book, computed, values) !== 'agree');
    computed.write(
      apart.map(({ id, row, place }) => ({ place, contents: valueCell(values(id, row), book.texts.codeOf) })),
    );
  }
}

function idleValues({ watched, places }: LoweredBook, computed: ComputedGrid): readonly Doubt[] {
  return watched.flatMap(({ id, row, hazard, place }): readonly Doubt[] => {
    if (!isIdle[hazard](computed.read(place))) return [];
    const own = places.get(id) as ValuePlace;
    const rows = row !== undefined ? [row] : Array.from({ length: own.count ?? 1 }, (_, at) => at);
    return rows.map((at) => ({ ...valueAt(own, at), hazard }));
  });
}

/** A value that is not decided, in words. */
export function doubtOf({ id, row, hazard }: Doubt): RecheckDoubt {
  const where = whereOf(id, row);
  return { ...where.place, message: doubtWords(where.words, hazard) };
}
