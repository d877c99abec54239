import { readScroll, restoreScroll, type ScrollState } from './scroll-state.ts';

/** What turning sheets needs of the page. */
interface Host extends HTMLElement {
  readonly renderRoot: HTMLElement | DocumentFragment;
}

/** Another sheet on the same page: each stands where it was left, a new one at its top. */
export class SheetTurn {
  readonly #page: Host;
  readonly #cell: () => HTMLElement | undefined;
  /** The sheet that was drawn last. */
  #shown: string | undefined;
  /** How far each sheet was scrolled when it was left. */
  readonly #left = new Map<string, ScrollState>();

  /** `cell` gives the active cell as drawn. */
  constructor(page: Host, cell: () => HTMLElement | undefined) {
    this.#page = page;
    this.#cell = cell;
  }

  /** Remembers how the sheet stands that is left for another. */
  leaveFor(sheet: string): void {
    if (this.#shown !== undefined && this.#shown !== sheet)
      this.#left.set(this.#shown, readScroll(this.#page));
  }

  /** Another book is open, whose sheets are not those that were left. */
  forget(): void {
    this.#left.clear();
  }

  /**
   * Takes note of the sheet that was drawn. `stays` tells, some frames on, whether the page still stands where it was
   * brought.
   *
   * @returns whether it is the first sheet, another than before, or the same
   */
  drawn(sheet: string, stays: () => boolean): 'first' | 'another' | 'same' {
    const before = this.#shown;
    if (before === sheet) return 'same';
    this.#shown = sheet;
    const isStill = (): boolean => this.#shown === sheet && stays();
    restoreScroll(this.#page, this.#left.get(sheet) ?? { top: 0 }, { cell: this.#cell, stays: isStill });
    return before === undefined ? 'first' : 'another';
  }
}
