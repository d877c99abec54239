import type { Cell } from './store/cells.ts';

/**
 * The ids of what has changed. The set itself is made when somebody looks into it: most edits change much of a sheet,
 * and not everybody asks for all of it. A class, because one is made at every edit, and closures would be made with it.
 */
export class ChangedIds implements Iterable<string> {
  readonly #cells: readonly Cell[];
  #ids: ReadonlySet<string> | undefined;

  /** Each cell stands in the list once. */
  constructor(cells: readonly Cell[]) {
    this.#cells = cells;
  }

  /** How many have changed. */
  get size(): number {
    return this.#cells.length;
  }

  /** Whether the cell, column or table has changed. */
  has(id: string): boolean {
    return this.#set().has(id);
  }

  [Symbol.iterator](): Iterator<string> {
    return this.#set()[Symbol.iterator]();
  }

  #set(): ReadonlySet<string> {
    this.#ids ??= new Set(this.#cells.map((cell) => cell.id));
    return this.#ids;
  }
}
