import type { Witness } from './witnesses.ts';

/**
 * Witnesses of the changes of one formula, in the order in which each change asks them. A witness is found when it is
 * first asked, for its case has to be entered, and who noticed one change is likely to notice the next.
 */
export class AskedWitnesses {
  readonly #found: Witness[] = [];
  readonly #others: Iterator<Witness>;
  readonly #otherwise: Witness;

  /**
   * @param others those not asked yet
   * @param otherwise who is asked where there is nobody
   */
  constructor(others: Iterator<Witness>, otherwise: Witness) {
    this.#others = others;
    this.#otherwise = otherwise;
  }

  *[Symbol.iterator](): Generator<Witness> {
    yield* [...this.#found];
    for (let next = this.#others.next(); !next.done; next = this.#others.next()) {
      this.#found.push(next.value);
      yield next.value;
    }
    if (this.#found.length === 0) yield this.#otherwise;
  }

  /** Has a witness asked first of the next change. */
  askFirst(witness: Witness): void {
    const at = this.#found.indexOf(witness);
    if (at > 0) this.#found.unshift(...this.#found.splice(at, 1));
  }
}
