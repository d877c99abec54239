import type { QuayLine } from './line/quay-line.ts';

/** For how many milliseconds the person stays on a line before it unfolds: a page that is crossed stays as it is. */
const rest = 150;

/** Unfolds the line the person rests on, and folds the one they came from in the same step. */
export class Unfolding {
  readonly #unfolded: (line: QuayLine) => void;
  #shown: QuayLine | undefined;
  #wanted: QuayLine | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** `unfolded` is told of a line once it is drawn with all it has. */
  constructor(unfolded: (line: QuayLine) => void) {
    this.#unfolded = unfolded;
  }

  /** Takes note of the line the person is on alone; of none where they are elsewhere or on more than one. */
  restOn(line: QuayLine | undefined): void {
    if (line === this.#wanted) return;
    this.stop();
    this.#wanted = line;
    this.#timer = setTimeout(() => this.#turn(), rest);
  }

  /** Unfolds nothing until the person is somewhere again. */
  stop(): void {
    this.#wanted = undefined;
    clearTimeout(this.#timer);
  }

  #turn(): void {
    const line = this.#wanted;
    if (this.#shown && this.#shown !== line) this.#shown.unfolded = false;
    this.#shown = line;
    if (!line || line.unfolded) return;
    line.unfolded = true;
    void line.updateComplete.then(() => this.#unfolded(line));
  }
}
