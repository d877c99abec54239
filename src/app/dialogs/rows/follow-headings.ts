import { type TableColumn, type TextColumn, unitOfHeader } from '../../../tables/index.ts';
import type { UnitRegistry } from '../../../units/index.ts';
import { callOf, type Settled } from './find-rows.ts';

/**
 * What was settled of the columns of a text, after it was corrected: where it has as many columns as before, a column
 * keeps its place, and what was settled of it, under another heading. A unit that the heading stated follows it.
 */
export function followHeadings(
  settled: ReadonlyMap<number, Settled>,
  before: readonly TextColumn[],
  after: readonly TextColumn[],
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): ReadonlyMap<number, Settled> {
  if (before.length !== after.length) return settled;
  if (before.some(({ position }, at) => position !== after[at]?.position)) return settled;
  const followed = new Map(settled);
  for (const [at, old] of before.entries()) {
    const now = after[at];
    const said = settled.get(old.position);
    if (now === undefined || said === undefined || said.called !== callOf(old)) continue;
    followed.set(old.position, { called: callOf(now), to: destinationUnder(said.to, old, now) });
  }
  return followed;

  function destinationUnder(to: Settled['to'], old: TextColumn, now: TextColumn): Settled['to'] {
    const column = to.kind === 'column' ? columns.find(({ name }) => name === to.name) : undefined;
    if (to.kind !== 'column' || column === undefined) return to;
    const wasStated = to.unit === unitOfHeader(old, column, registry);
    return wasStated ? { ...to, unit: unitOfHeader(now, column, registry) } : to;
  }
}
