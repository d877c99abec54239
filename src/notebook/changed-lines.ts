/**
 * The lines, columns and tables whose value may have changed: of the cells that the engine has beside them (`x#computed`)
 * the line they belong to. Like what the engine says it is gathered when somebody looks into it, for most edits change
 * much of a sheet.
 */
export class ChangedLines implements Iterable<string> {
  readonly #cells: Iterable<string>;
  readonly #others: readonly string[];
  #lines: ReadonlySet<string> | undefined;

  /** What the engine has changed, and other lines. */
  constructor(cells: Iterable<string>, others: readonly string[] = []) {
    this.#cells = cells;
    this.#others = others;
  }

  /** How many there are. */
  get size(): number {
    return this.#gathered().size;
  }

  /** Whether the line, column or table is among them. */
  has(id: string): boolean {
    return this.#gathered().has(id);
  }

  [Symbol.iterator](): Iterator<string> {
    return this.#gathered()[Symbol.iterator]();
  }

  #gathered(): ReadonlySet<string> {
    this.#lines ??= new Set([...this.#cells, ...this.#others].map(lineOf));
    return this.#lines;
  }
}

function lineOf(id: string): string {
  const beside = id.indexOf('#');
  return beside < 0 ? id : id.slice(0, beside);
}
