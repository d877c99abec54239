import { OF_MAGNITUDES } from './agreement.ts';
import { type Compared, valueAt } from './compared.ts';
import { type KnownCells, type LoweredBook, lowerBook } from './lower/book.ts';
import { REFUSED, type ValuePlace } from './lower/plan.ts';
import type { EngineValues, RecheckProgram } from './program.ts';
import { type ComputedGrid, computeGrid } from './second-engine.ts';
import { sizeId, valuesOfSizes, withSizes } from './sizes.ts';

/** Those of the numbers apart that are near zero for the sum of the magnitudes they are a balance of. */
export async function balancesAmong(
  apart: readonly Compared[],
  program: RecheckProgram,
  lowered: LoweredBook,
  computed: ComputedGrid,
  values: EngineValues,
): Promise<ReadonlySet<Compared>> {
  if (apart.length === 0) return new Set();
  const withSize = withSizes(program, new Set(apart.map(({ id }) => id)));
  const book = lowerBook(withSize, valuesOfSizes(values), cellsOf(lowered, computed));
  const sizes = await computeGrid(book.grid);
  try {
    return new Set(
      apart.filter(({ id, row, place }) => {
        const own = book.places.get(sizeId(id));
        const size = own && sizes.read(valueAt(own, row ?? 0).place);
        const [engine, grid] = [values(id, row), computed.read(place)];
        if (typeof size !== 'number' || typeof engine !== 'number' || typeof grid !== 'number') return false;
        return Math.abs(engine - grid) <= OF_MAGNITUDES * size;
      }),
    );
  } finally {
    sizes.close();
  }
}

/** What the second engine has computed already, so that beside the sizes nothing is computed once more. */
function cellsOf({ places }: LoweredBook, computed: ComputedGrid): KnownCells {
  return {
    has: (id) => places.has(id),
    at: (id, row) => {
      const value = computed.read(valueAt(places.get(id) as ValuePlace, row ?? 0).place);
      return typeof value === 'object' ? `=${REFUSED}` : value;
    },
  };
}
