import { referencesOf } from '../language/index.ts';
import { coded, isIdle, OF_MAGNITUDES, type Verdict, verdictOf } from './agreement.ts';
import type { GridPlace } from './grid.ts';
import { type LoweredBook, lowerBook } from './lower/book.ts';
import { valueCell } from './lower/entries.ts';
import type { ValuePlace } from './lower/plan.ts';
import type { Hazard } from './lower/watched.ts';
import type { EngineValue, EngineValues, RecheckProgram } from './program.ts';
import {
  doubtWords,
  findingWords,
  type RecheckDoubt,
  type RecheckFinding,
  type RecheckReport,
  whereWords,
} from './report.ts';
import { type ComputedGrid, computeGrid } from './second-engine.ts';
import { sizeId, valuesOfSizes, withSizes } from './sizes.ts';

/** One value to compare: a line's, or one row's of a column (from 0). */
interface Compared {
  readonly id: string;
  readonly row: number | undefined;
  readonly place: GridPlace;
}

/** A value no comparison can decide. */
interface Doubt extends Compared {
  readonly hazard: Hazard;
}

/**
 * Computes a whole book a second time, as plain spreadsheet formulas with HyperFormula, and compares every value with
 * the live engine's. Numbers agree within 1e-9 of themselves, or what is left of a balance within 1e-12 of the sum of
 * the magnitudes; a value the engine does not have must be an error on the grid. A formula that cannot be lowered is
 * named with the reason, and the engine's value stands in for it where others depend on it.
 */
export async function recheck(program: RecheckProgram, values: EngineValues): Promise<RecheckReport> {
  const book = lowerBook(program, values);
  const computed = await computeGrid(book.grid);
  try {
    const doubts = settleDoubts(book, computed, values);
    const apart: Compared[] = [];
    const differing: Compared[] = [];
    const counts = { agree: 0, 'without value': 0 };
    for (const value of valuesOf(book)) {
      if (doubts.has(keyOf(value.id, value.row))) continue;
      const verdict = compare(value, book, computed, values);
      if (verdict === 'apart') apart.push(value);
      else if (verdict === 'differ') differing.push(value);
      else counts[verdict] += 1;
    }
    const balanced = await balancesAmong(apart, program, computed, values);
    const wrong = [...differing, ...apart.filter((value) => !balanced.has(value))];
    return {
      agree: counts.agree + balanced.size,
      withoutValue: counts['without value'],
      findings: [...findingsOf(wrong, book, computed, values), ...rowCountFindings(program, book, computed)],
      indeterminate: Array.from(doubts.values(), doubtOf),
      notRechecked: Array.from(book.borrowed, ([id, reason]) => ({ id, reason })),
    };
  } finally {
    computed.close();
  }
}

function keyOf(id: string, row: number | undefined): string {
  return row === undefined ? id : `${id} ${row}`;
}

function* valuesOf({ places, borrowed }: LoweredBook): Iterable<Compared> {
  for (const [id, place] of places) {
    if (borrowed.has(id)) continue;
    const count = place.count ?? 1;
    for (let at = 0; at < count; at += 1)
      yield { id, row: place.count === undefined ? undefined : at, place: placeOfRow(place, at) };
  }
}

function placeOfRow({ sheet, row, column }: ValuePlace, at: number): GridPlace {
  return { sheet: sheet.name, row: row + at, column };
}

function compare(value: Compared, book: LoweredBook, computed: ComputedGrid, values: EngineValues): Verdict {
  return verdictOf(coded(values(value.id, value.row), book.texts.codeOf), computed.read(value.place));
}

/**
 * The values a watched cell says cannot be decided. Where the two engines fell apart on one, the engine's value is put
 * on the grid, so that what depends on it is compared on equal terms; that may bring up more.
 */
function settleDoubts(
  book: LoweredBook,
  computed: ComputedGrid,
  values: EngineValues,
): ReadonlyMap<string, Doubt> {
  const doubts = new Map<string, Doubt>();
  for (;;) {
    const found = idleValues(book, computed).filter(({ id, row }) => !doubts.has(keyOf(id, row)));
    if (found.length === 0) return doubts;
    for (const value of found) doubts.set(keyOf(value.id, value.row), value);
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
    return rows.map((at) => ({
      id,
      row: own.count === undefined ? undefined : at,
      place: placeOfRow(own, at),
      hazard,
    }));
  });
}

/** Those of the numbers apart that are near zero for the sum of the magnitudes they are a balance of. */
async function balancesAmong(
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
        const size = own && sizes.read(placeOfRow(own, row ?? 0));
        const [engine, grid] = [values(id, row), computed.read(place)];
        if (typeof size !== 'number' || typeof engine !== 'number' || typeof grid !== 'number') return false;
        return Math.abs(engine - grid) <= OF_MAGNITUDES * size;
      }),
    );
  } finally {
    sizes.close();
  }
}

function findingsOf(
  wrong: readonly Compared[],
  book: LoweredBook,
  computed: ComputedGrid,
  values: EngineValues,
): readonly RecheckFinding[] {
  const ids = new Set(wrong.map(({ id }) => id));
  return wrong.map(({ id, row, place }) => {
    const { cell } = book.places.get(id) as ValuePlace;
    const engine = values(id, row);
    const grid = computed.read(place);
    const shown: EngineValue =
      typeof grid === 'object'
        ? undefined
        : typeof grid === 'number' && typeof engine === 'string'
          ? book.texts.textOf(grid)
          : grid;
    const sources = cell.kind === 'formula' ? [...referencesOf(cell.tree)] : [];
    const from = sources.find((source) => source !== id && ids.has(source));
    const rowFromOne = row === undefined ? undefined : row + 1;
    return {
      id,
      ...(rowFromOne !== undefined && { row: rowFromOne }),
      engine,
      recheck: shown,
      message: findingWords(whereWords(id, rowFromOne), engine, shown, cell.unit, from),
    };
  });
}

/** A table whose series makes another number of rows on the grid than in the engine. */
function rowCountFindings(
  program: RecheckProgram,
  { rowCounts }: LoweredBook,
  computed: ComputedGrid,
): readonly RecheckFinding[] {
  return rowCounts.flatMap(({ table: id, place }) => {
    const table = program.tables.find((known) => known.id === id);
    const grid = computed.read(place);
    const rows = typeof grid === 'number' && grid >= 1 ? grid : undefined;
    const engine = table?.failed ? undefined : table?.rows;
    if (rows === engine) return [];
    const message = findingWords(`${id}, its number of rows`, engine, rows, undefined);
    return [{ id, engine, recheck: rows, message }];
  });
}

function doubtOf({ id, row, hazard }: Doubt): RecheckDoubt {
  const rowFromOne = row === undefined ? undefined : row + 1;
  const message = doubtWords(whereWords(id, rowFromOne), hazard);
  return { id, ...(rowFromOne !== undefined && { row: rowFromOne }), message };
}
