import { OF_MAGNITUDES } from './agreement.ts';
import { type Compared, valueAt } from './compared.ts';
import { lowerBook } from './lower/book.ts';
import type { EngineValues, RecheckProgram } from './program.ts';
import { type ComputedGrid, computeGrid } from './second-engine.ts';
import { sizeId, valuesOfSizes, withSizes } from './sizes.ts';

/** Those of the numbers apart that are near zero for the sum of the magnitudes they are a balance of. */
export async function balancesAmong(
  apart: readonly Compared[],
  program: RecheckProgram,
  computed: ComputedGrid,
  values: EngineValues,
): Promise<ReadonlySet<Compared>> {
  if (apart.length === 0) return new Set();
  const withSize = withSizes(program, new Set(apart.map(({ id }) => id)));
  const book = lowerBook(withSize, valuesOfSizes(values));
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
