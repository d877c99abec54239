import { compileStepper } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import type { ColumnCell, Cycle, Stepper } from '../store/cells.ts';
import { ALL_ROWS, clean, markDirty, noRows, type RowWindow, resize } from '../store/column.ts';
import { type Allowance, stepsAtOnce } from './slice.ts';

/**
 * Computes columns that depend on one another through ABOVE: row by row from the first marked row, every column on
 * each row. It ends after the marked rows once a row comes out as it was, or when the time is over: what is left is then
 * marked. The rows changed, a window a member.
 */
export function updateRows(
  cycle: Extract<Cycle, { kind: 'rows' }>,
  world: World,
  allowance?: Allowance,
): { readonly windows: readonly RowWindow[]; readonly done: boolean } {
  const { members, table } = cycle;
  const reshaped = members.filter((member) => resize(member, table.length) || member.reshaped).length > 0;
  const first = reshaped ? 0 : Math.min(...members.map((member) => member.dirtyFrom));
  const marked = reshaped ? table.length : Math.max(...members.map((member) => member.dirtyTo));
  const steppers = members.map((member) => begin(member, world));
  const changed = members.map(noRows);
  // A running value may change without changing any column on that row.
  const carries = steppers.some((stepper) => stepper.steps.length > 0);
  const atOnce = allowance ? stepsAtOnce(members, world, allowance) : 0;
  let done = true;
  for (let row = first; row < table.length; row += 1) {
    table.row = row;
    let differs = false;
    for (let m = 0; m < members.length; m += 1) {
      const { steps, value } = steppers[m] as Stepper;
      for (const step of steps) step();
      if (writeRow(members[m] as ColumnCell, row, value(), changed[m] as RowWindow)) differs = true;
    }
    if (!differs && !carries && row + 1 >= marked) break;
    if (allowance && row + 1 < table.length && (row - first) % atOnce === atOnce - 1 && allowance.isOver()) {
      for (const member of members) markDirty(member, row + 1, Math.max(marked, row + 2));
      done = false;
      break;
    }
  }
  return { windows: reshaped ? members.map(() => ALL_ROWS) : changed, done };
}

function begin(member: ColumnCell, world: World): Stepper {
  const { content } = member;
  if (content.kind !== 'formula') throw new Error(`${member.id} has no formula and is in a circle`);
  const { formula } = content;
  clean(member);
  member.reshaped = false;
  formula.epoch += 1;
  formula.stepper ??= compileStepper(world, formula);
  return formula.stepper;
}

function writeRow(column: ColumnCell, row: number, after: number, changed: RowWindow): boolean {
  const before = column.values[row] as number;
  if (before === after) return false;
  column.values[row] = after;
  if (Number.isNaN(before)) column.gaps -= 1;
  if (Number.isNaN(after)) column.gaps += 1;
  changed.from = Math.min(changed.from, row);
  changed.to = Math.max(changed.to, row + 1);
  return true;
}
