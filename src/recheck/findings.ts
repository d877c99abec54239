import { referencesOf } from '../language/index.ts';
import { isUnreadable } from './agreement.ts';
import type { Compared } from './compared.ts';
import type { LoweredBook } from './lower/book.ts';
import type { ValuePlace } from './lower/plan.ts';
import type { EngineValue, EngineValues, RecheckProgram } from './program.ts';
import { findingWords, type RecheckFinding, unreadableWords, whereOf } from './report.ts';
import type { ComputedGrid } from './second-engine.ts';

/** The most rows the language lets a series make. */
const MOST_ROWS = 200_000;

/** The values the engines do not agree on, in words; what depends on another of them names it. */
export function findingsOf(
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
    const where = whereOf(id, row);
    if (isUnreadable(grid))
      return {
        ...where.place,
        engine,
        recheck: undefined,
        message: unreadableWords(where.words, grid.error),
      };
    const second = shown(engine, grid, book);
    const sources = cell.kind === 'formula' ? [...referencesOf(cell.tree)] : [];
    const from = sources.find((source) => source !== id && ids.has(source));
    const message = findingWords(where.words, engine, second, cell.unit, from);
    return { ...where.place, engine, recheck: second, message };
  });
}

/** A value of the grid as one of the engine's: a code as its text, an error as no value. */
function shown(engine: EngineValue, grid: ReturnType<ComputedGrid['read']>, book: LoweredBook): EngineValue {
  if (typeof grid === 'object') return undefined;
  return typeof grid === 'number' && typeof engine === 'string' ? book.texts.textOf(grid) : grid;
}

/** A table whose series makes another number of rows on the grid than in the engine. */
export function rowCountFindings(
  program: RecheckProgram,
  { rowCounts }: LoweredBook,
  computed: ComputedGrid,
): readonly RecheckFinding[] {
  return rowCounts.flatMap(({ table: id, place }) => {
    const table = program.tables.find((known) => known.id === id);
    const grid = computed.read(place);
    const rows = typeof grid === 'number' && grid >= 1 && grid <= MOST_ROWS ? grid : undefined;
    const engine = table?.failed ? undefined : table?.rows;
    if (rows === engine) return [];
    return [
      {
        id,
        engine,
        recheck: rows,
        message: findingWords(`${id}, its number of rows`, engine, rows, undefined),
      },
    ];
  });
}
