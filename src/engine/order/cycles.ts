import { type Cell, type ColumnCell, type Cycle, SAME_ROW, type Source, WHOLE } from '../store/cells.ts';

/**
 * What a cycle of cells is. Columns of one table are computed row by row where every way round passes through ABOVE;
 * anything else is a loop and has no value.
 */
export function cycleOf(group: readonly Cell[]): Cycle {
  const inside = new Set(group);
  const edges = (cell: Cell) => cell.sources.filter((edge) => inside.has(edge.source));
  const held = (cell: Cell) => edges(cell).filter((edge) => (edge.reach & (SAME_ROW | WHOLE)) !== 0);
  const [first] = group;
  const opened = first?.shape === 'column' && group.every((cell) => isRowFormula(cell, first));
  if (!opened) return { kind: 'loop', members: group, loop: loopIn(group, edges) };
  const { ordered, rest } = sorted(group, held);
  if (rest.length > 0) return { kind: 'loop', members: group, loop: loopIn(rest, held) };
  const whole = group.find((cell) => edges(cell).some((edge) => (edge.reach & WHOLE) !== 0));
  if (whole) return { kind: 'loop', members: group, loop: loopIn([whole], edges) };
  return { kind: 'rows', members: ordered as readonly ColumnCell[], table: first.table };
}

function isRowFormula(cell: Cell, first: ColumnCell): boolean {
  return cell.shape === 'column' && cell.table === first.table && cell.content.kind === 'formula';
}

/** Sources before readers along the given edges, by peeling; `rest` is what circles keep back, by name. */
function sorted(
  group: readonly Cell[],
  edges: (cell: Cell) => readonly Source[],
): { ordered: Cell[]; rest: Cell[] } {
  const readers = new Map<Cell, Cell[]>();
  const waiting = new Map<Cell, number>();
  for (const cell of group) {
    const sources = edges(cell);
    waiting.set(cell, sources.length);
    for (const { source } of sources) {
      const known = readers.get(source);
      if (known) known.push(cell);
      else readers.set(source, [cell]);
    }
  }
  const ordered = group.filter((cell) => waiting.get(cell) === 0);
  for (const cell of ordered) {
    for (const reader of readers.get(cell) ?? []) {
      const left = (waiting.get(reader) ?? 0) - 1;
      waiting.set(reader, left);
      if (left === 0) ordered.push(reader);
    }
  }
  const done = new Set(ordered);
  return { ordered, rest: group.filter((cell) => !done.has(cell)) };
}

/** The shortest way round from the first cell by name that has one: a, what a reads, …, a. */
function loopIn(cells: readonly Cell[], edges: (cell: Cell) => readonly Source[]): readonly Cell[] {
  const byName = [...cells].sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const start of byName) {
    const reachedFrom = new Map<Cell, Cell>();
    const queue: Cell[] = [start];
    for (const cell of queue) {
      for (const { source } of edges(cell)) {
        if (source === start) return [...wayTo(cell, start, reachedFrom), start];
        if (reachedFrom.has(source)) continue;
        reachedFrom.set(source, cell);
        queue.push(source);
      }
    }
  }
  throw new Error('a circle of cells has no way round');
}

function wayTo(cell: Cell, start: Cell, reachedFrom: ReadonlyMap<Cell, Cell>): Cell[] {
  const way = [cell];
  let at = cell;
  while (at !== start) {
    at = reachedFrom.get(at) ?? start;
    way.push(at);
  }
  return way.reverse();
}
