import { isInSight, scrollUpOrDownTo } from './in-sight.ts';
import type { QuayLine } from './line/quay-line.ts';

/** For how many milliseconds the person stays on a line before it expands: a page that is crossed stays as it is. */
const rest = 150;

/** Expands the line the person rests on, and collapses the one they came from in the same step. */
export class ExpandedLine {
  readonly #page: HTMLElement;
  readonly #cellOn: (line: QuayLine) => HTMLElement | undefined;
  #shown: QuayLine | undefined;
  #wanted: QuayLine | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `cellOn` gives the cell of a line that the person is on, which expanding must not push out of sight. */
  constructor(page: HTMLElement, cellOn: (line: QuayLine) => HTMLElement | undefined) {
    this.#page = page;
    this.#cellOn = cellOn;
  }

  /** Takes note of the line the person is on alone; of none where they are elsewhere or on more than one. */
  restOn(line: QuayLine | undefined): void {
    if (line === this.#wanted) return;
    this.stop();
    this.#wanted = line;
    this.#timer = setTimeout(() => this.#turn(), rest);
  }

  /** Expands nothing until the person is somewhere again. */
  stop(): void {
    this.#wanted = undefined;
    clearTimeout(this.#timer);
  }

  #turn(): void {
    const line = this.#wanted;
    if (this.#shown && this.#shown !== line) this.#shown.expanded = false;
    this.#shown = line;
    if (!line || line.expanded) return;
    const cell = this.#cellOn(line);
    // Who has scrolled away meanwhile is not brought back.
    const stays = cell !== undefined && isInSight(cell, this.#page);
    line.expanded = true;
    void line.updateComplete.then(() => {
      const shown = stays ? this.#cellOn(line) : undefined;
      if (shown) scrollUpOrDownTo(shown, this.#page);
    });
  }
}
