import { address, type GridCell } from '../grid.ts';
import type { EngineValue, RecheckColumn, RecheckEntry, RecheckInput } from '../program.ts';
import { scaleToSI } from './nodes.ts';
import { Obstacle } from './obstacle.ts';
import { type BookPlan, REFUSED, type ValuePlace } from './plan.ts';

/** The column of a line's entry as written, beside its value. */
const WRITTEN_COLUMN = 2;

/** Writes entered values; a text is the reason they cannot be. */
export function writeEntries(plan: BookPlan, cell: RecheckInput | RecheckColumn): string | undefined {
  const place = plan.places.get(cell.id) as ValuePlace;
  const entries = cell.kind === 'input' ? [cell.entry] : cell.entries;
  const unread = entries.find(
    (entry) => entry.kind === 'number' && entry.unit && !plan.constants.unit(entry.unit),
  );
  if (unread?.kind === 'number')
    return `the factor of its unit ${unread.unit?.text} is not in the independent table`;
  const scaledOnes = entries.some(
    (entry) => entry.kind === 'number' && entry.unit && plan.constants.unit(entry.unit)?.factor !== undefined,
  );
  if (scaledOnes) {
    const reason = refusedFor(plan, place.count ?? 1);
    if (reason !== undefined) return reason;
  }
  const end = cell.kind === 'input' ? WRITTEN_COLUMN : (place.sheet.rows[place.row]?.length ?? 0);
  const beside = scaledOnes ? end : undefined;
  if (beside !== undefined && cell.kind === 'column') for (const row of place.sheet.rows) row.push(null);
  for (let at = 0; at < (place.count ?? 1); at += 1) {
    const entry = entries[at] ?? ({ kind: 'missing' } satisfies RecheckEntry);
    const row = place.sheet.rows[place.row + at] as GridCell[];
    row[place.column] = entryCell(plan, entry, (written) => {
      if (beside === undefined) return undefined;
      row[beside] = written;
      return address(place.sheet.name, place.row + at, beside, cell.kind === 'column');
    });
  }
  return undefined;
}

/** Why there is no room for so many formulas. */
function refusedFor({ budget }: BookPlan, count: number): string | undefined {
  try {
    budget.begin(count);
    return undefined;
  } catch (error) {
    if (!(error instanceof Obstacle)) throw error;
    budget.undo();
    return error.message;
  }
}

function entryCell(
  plan: BookPlan,
  entry: RecheckEntry,
  write: (written: number) => string | undefined,
): GridCell {
  switch (entry.kind) {
    case 'number': {
      const unit = entry.unit ? plan.constants.unit(entry.unit) : undefined;
      const written = unit?.factor === undefined ? undefined : write(entry.written);
      return unit && written !== undefined ? `=${scaleToSI(written, unit)}` : entry.written;
    }
    case 'text':
      return plan.texts.codeOf(entry.text);
    case 'truth':
      return entry.value;
    case 'missing':
    case 'failed':
      return `=${REFUSED}`;
  }
}

/** Puts values where no formula is written, so that what depends on them can be computed. */
export function fill(plan: BookPlan, id: string, cellAt: (row: number | undefined) => GridCell): void {
  const place = plan.places.get(id) as ValuePlace;
  for (let at = 0; at < (place.count ?? 1); at += 1)
    (place.sheet.rows[place.row + at] as GridCell[])[place.column] = cellAt(
      place.count === undefined ? undefined : at,
    );
}

/** A value of the engine as a cell of the grid. */
export function valueCell(value: EngineValue, codeOf: (text: string) => number): GridCell {
  if (value === undefined) return `=${REFUSED}`;
  return typeof value === 'string' ? codeOf(value) : value;
}
