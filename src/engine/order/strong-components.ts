import type { Cell } from '../store/cells.ts';

/**
 * The strongly connected components of cells that stand side by side in the order, sources before readers: a component
 * has several cells where they depend on one another in a cycle. Sources outside the stretch are not looked at. Tarjan's algorithm
 * (Depth-first search and linear graph algorithms, 1972, from memory), without recursion, so that a chain may be of
 * any length.
 */
export function componentsOf(cells: readonly Cell[]): readonly (readonly Cell[])[] {
  const base = cells[0]?.position ?? 0;
  const count = cells.length;
  const index = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const onStack = new Uint8Array(count);
  const nextSource = new Int32Array(count);
  const stack: number[] = [];
  const path: number[] = [];
  const groups: Cell[][] = [];
  let counter = 0;

  const enter = (at: number): void => {
    index[at] = low[at] = counter;
    counter += 1;
    stack.push(at);
    onStack[at] = 1;
    path.push(at);
  };

  for (let root = 0; root < count; root += 1) {
    if (index[root] !== -1) continue;
    enter(root);
    while (path.length > 0) {
      const at = path[path.length - 1] as number;
      const { sources } = cells[at] as Cell;
      const next = nextSource[at] as number;
      if (next < sources.length) {
        nextSource[at] = next + 1;
        const source = (sources[next]?.source.position ?? -1) - base;
        if (source < 0 || source >= count) continue;
        if (index[source] === -1) enter(source);
        else if (onStack[source]) low[at] = Math.min(low[at] as number, index[source] as number);
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) low[parent] = Math.min(low[parent] as number, low[at] as number);
      if (low[at] !== index[at]) continue;
      const group: Cell[] = [];
      let member: number;
      do {
        member = stack.pop() as number;
        onStack[member] = 0;
        group.push(cells[member] as Cell);
      } while (member !== at);
      groups.push(group);
    }
  }
  return groups;
}
