import type { Cell } from './store/cells.ts';

/**
 * The ids of cells, each of which stands in the list once. The set itself is made when somebody looks into it: most
 * edits change much of a sheet, and nobody asks for all of it. A class, because one is made at every edit, and
 * closures would be made with it.
 */
export class ChangedIds implements ReadonlySet<string> {
  readonly #cells: readonly Cell[];
  #ids: ReadonlySet<string> | undefined;

  constructor(cells: readonly Cell[]) {
    this.#cells = cells;
  }

  #set(): ReadonlySet<string> {
    this.#ids ??= new Set(this.#cells.map((cell) => cell.id));
    return this.#ids;
  }

  get size(): number {
    return this.#cells.length;
  }

  has(id: string): boolean {
    return this.#set().has(id);
  }

  forEach(visit: (id: string, again: string, set: ReadonlySet<string>) => void, thisArg?: unknown): void {
    this.#set().forEach(visit, thisArg);
  }

  keys(): SetIterator<string> {
    return this.#set().keys();
  }

  values(): SetIterator<string> {
    return this.#set().values();
  }

  entries(): SetIterator<[string, string]> {
    return this.#set().entries();
  }

  [Symbol.iterator](): SetIterator<string> {
    return this.#set()[Symbol.iterator]();
  }
}
