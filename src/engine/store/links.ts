import { type Cell, NO_SOURCES } from './cells.ts';

/** What a cell reads, and how. */
export interface Link {
  readonly source: Cell;
  readonly reach: number;
}

/**
 * Who reads each cell: a list for every source, in flat arrays, for a recalculation goes along them at every cell and
 * an object for each edge would be fetched from memory each time. Cells are named by their index, edges by a number.
 */
export interface Links {
  /** Makes a cell read these, and nothing else. */
  readonly link: (reader: Cell, links: readonly Link[]) => void;
  /** By cell: the first edge to a reader, -1 if nothing reads it. The arrays are replaced when they grow. */
  readonly first: Int32Array;
  /** By edge: the next edge of the same source, -1 after the last. */
  readonly next: Int32Array;
  /** By edge: the index of the cell that reads. */
  readonly reader: Int32Array;
  /** By edge: how far a change reaches into a column that reads; 0 for other readers, which are only computed anew. */
  readonly reach: Uint8Array;
}

const START = 64;

/** Links of no cells. */
export function createLinks(): Links {
  let before = new Int32Array(START);
  let used = 0;
  const free: number[] = [];

  const reserveEdges = (): void => {
    if (used < links.next.length) return;
    const length = used * 2;
    links.next = wider(links.next, length);
    links.reader = wider(links.reader, length);
    before = wider(before, length);
    const reach = new Uint8Array(length);
    reach.set(links.reach);
    links.reach = reach;
  };

  const enter = ({ source, reach }: Link, reader: Cell): number => {
    if (source.index >= links.first.length) links.first = wider(links.first, source.index * 2);
    reserveEdges();
    const edge = free.pop() ?? used++;
    const head = links.first[source.index] as number;
    links.next[edge] = head;
    before[edge] = -1;
    if (head >= 0) before[head] = edge;
    links.first[source.index] = edge;
    links.reader[edge] = reader.index;
    links.reach[edge] = reader.shape === 'column' ? reach : 0;
    return edge;
  };

  const leave = (source: Cell, edge: number): void => {
    const previous = before[edge] as number;
    const next = links.next[edge] as number;
    if (previous >= 0) links.next[previous] = next;
    else links.first[source.index] = next;
    if (next >= 0) before[next] = previous;
    free.push(edge);
  };

  const links = {
    first: new Int32Array(START).fill(-1),
    next: new Int32Array(START),
    reader: new Int32Array(START),
    reach: new Uint8Array(START),
    link: (reader: Cell, wanted: readonly Link[]): void => {
      for (const { source, edge } of reader.sources) leave(source, edge);
      reader.sources =
        wanted.length === 0 ? NO_SOURCES : wanted.map((link) => ({ ...link, edge: enter(link, reader) }));
    },
  };
  return links;
}

/** A longer copy; the new places hold -1. */
function wider(array: Int32Array<ArrayBuffer>, length: number): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(length).fill(-1);
  longer.set(array);
  return longer;
}
