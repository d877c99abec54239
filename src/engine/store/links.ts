import { type Cell, type Edge, NO_EDGES } from './cells.ts';

/** What a cell reads, and how. */
export interface Link {
  readonly source: Cell;
  readonly reach: number;
}

/** Makes a cell read these, and nothing else. */
export function link(reader: Cell, links: readonly Link[]): void {
  for (const edge of reader.sources) leave(edge);
  reader.sources =
    links.length === 0
      ? NO_EDGES
      : links.map(({ source, reach }) => {
          const edge: Edge = { source, reader, reach, at: source.readers.length };
          source.readers.push(edge);
          return edge;
        });
}

/** Takes an edge from its source; the last edge takes its place. */
function leave(edge: Edge): void {
  const { readers } = edge.source;
  const last = readers.pop();
  if (!last || last === edge) return;
  readers[edge.at] = last;
  last.at = edge.at;
}
