import { partsOf, type Typed } from '../../language/index.ts';
import { ROW_ABOVE, SAME_ROW, TO_END, WHOLE } from '../store/cells.ts';

/** A cell or column a formula reads, and how far a change of it reaches. */
export interface Reference {
  readonly id: string;
  /** The table of a column; absent for a scalar. */
  readonly table?: string;
  readonly reach: number;
}

/** Everything a formula reads, each once with all the ways it is read, in the order of the text. */
export function referencesWithReach(typed: Typed): readonly Reference[] {
  const found = new Map<string, Reference>();
  collect(typed, SAME_ROW, 0, found);
  return [...found.values()];
}

function collect(node: Typed, row: number, also: number, found: Map<string, Reference>): void {
  if (node.kind === 'cell' || node.kind === 'column') {
    const [axis] = node.type.axes;
    const reach = (axis && !axis.fresh ? row | also : WHOLE) | (found.get(node.id)?.reach ?? 0);
    found.set(node.id, { id: node.id, reach, ...(axis && { table: axis.table }) });
  } else if (node.kind === 'above') {
    collect(node.column, ROW_ABOVE, also, found);
    collect(node.first, row, also, found);
  } else {
    const scans = node.kind === 'call' && node.fn.evaluate.kind === 'scan';
    for (const part of partsOf(node)) collect(part, row, scans ? also | TO_END : also, found);
  }
}
