import type { TableCell } from '../../store/cells.ts';
import type { Cause, CauseFinder } from '../cause.ts';
import type { GatheredPart, GatherPlan } from '../gather.ts';
import { type Origin, originBehind, originItself, originOf } from '../origin.ts';
import { placeCursors, type Space, sizeOf } from '../space.ts';

/** The elements of an aggregate that have values, and what is wrong with the others. */
export interface Sample {
  /** One list of known values for each part. */
  readonly columns: number[][];
  /** What takes the value from all elements alike. */
  cause?: Cause;
  /** The first row that fails. */
  failing?: {
    readonly table: string;
    readonly row: number;
    readonly because: string;
    readonly origin: string;
    readonly blank: boolean;
    readonly uncovered?: true;
  };
  /** The blank rows, by column and row, in the order they were met. */
  readonly blank: Map<string, { readonly name: string; readonly cell: string; readonly row: number }>;
  /** The rows that have values. */
  known: number;
}

/** Looks at the elements of an aggregate one by one, for what is wrong where some have no value. */
export function takeSample(plan: GatherPlan, finder: CauseFinder): Sample {
  const sample: Sample = { columns: plan.parts.map(() => []), blank: new Map(), known: 0 };
  if (plan.pooled) for (const [at, part] of plan.parts.entries()) takeElements([part], at, sample, finder);
  else takeElements(plan.parts, 0, sample, finder);
  return sample;
}

/** Goes through the common space of some parts; an element counts only where all of them have a value. */
function takeElements(
  parts: readonly GatheredPart[],
  first: number,
  sample: Sample,
  finder: CauseFinder,
): void {
  const space = parts[0]?.space;
  const size = space ? sizeOf(space) : 0;
  for (let index = 0; index < size && space && !sample.cause; index += 1) {
    placeCursors(space, index);
    const values = parts.map((part) => finder.value(part.node));
    const gap = values.findIndex((value, at) => Number.isNaN(value) && parts[at]?.picked !== true);
    if (gap < 0) {
      for (const [at, value] of values.entries()) {
        const normal = parts[at]?.normal ? finder.normalOf(value) : value;
        sample.columns[first + at]?.push(normal);
      }
      sample.known += 1;
    } else judge(parts[gap] as GatheredPart, space, sample, finder);
  }
}

/** What an element without a value means for the whole. */
function judge(part: GatheredPart, space: Space, sample: Sample, finder: CauseFinder): void {
  const found = finder.cause(part.node);
  const [table] = space.tables;
  if (found.kind === 'table' || !table) {
    sample.cause = found;
    return;
  }
  if (found.kind === 'own') {
    const own = { name: '', ...originItself(found.problem) };
    sample.failing ??= failingRow(table.id, table.fresh, originBehind(found.problem) ?? own);
    return;
  }
  const { cell, row, node } = found;
  if (
    cell.shape === 'scalar' ||
    row === undefined ||
    !space.tables.includes(cell.table) ||
    node.type.axes[0]?.fresh === false
  ) {
    sample.cause = found;
    return;
  }
  if (part.known && finder.isBlankRow(part.known, row)) return;
  const root = finder.root(cell, row);
  if (root.kind === 'blank' && isWithin(root.cell, space)) {
    const name = root.cell === cell ? finder.written(node) : root.cell.id;
    const blank = { name, cell: root.cell.id, row: (root.row ?? 0) + 1 };
    sample.blank.set(`${blank.cell} ${blank.row}`, blank);
  } else sample.failing ??= failingRow(cell.table.id, row, originOf(root, finder.blankWords));
}

function failingRow(table: string, row: number, { name, ...begins }: Origin): NonNullable<Sample['failing']> {
  return { table, row: row + 1, ...begins, origin: name };
}

function isWithin(cell: { readonly shape: string; readonly table?: TableCell }, space: Space): boolean {
  return cell.shape === 'column' && cell.table !== undefined && space.tables.includes(cell.table);
}
