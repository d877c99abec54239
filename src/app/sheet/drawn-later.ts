import type { QuayTable } from '../table/quay-table.ts';
import { QuayLine } from './quay-line.ts';
import { QuayWords } from './quay-words.ts';

type Drawn = QuayLine | QuayWords | QuayTable;

/** Has an element drawn again whose values may have changed. */
export function redraw(element: Drawn): void {
  if (element instanceof QuayLine) element.requestUpdate();
  else element.stamp += 1;
}

/** Draws what changed: at once what is in sight, right after the next frame pictures and what is out of sight. */
export class DrawnLater {
  readonly #outOfSight = new WeakSet<Element>();
  readonly #waiting = new Set<Drawn>();
  #frame = 0;

  /** Learns from the events of a page which of its parts the browser skips. */
  watch(page: HTMLElement | DocumentFragment): void {
    page.addEventListener('contentvisibilityautostatechange', (event) => {
      const { target, skipped } = event as ContentVisibilityAutoStateChangeEvent;
      if (!(target instanceof Element)) return;
      if (skipped) this.#outOfSight.add(target);
      else this.#outOfSight.delete(target);
    });
  }

  draw(element: Drawn): void {
    const part = element.closest('.part');
    const waits = element instanceof QuayWords || (part !== null && this.#outOfSight.has(part));
    if (!waits) redraw(element);
    else if (!this.#waiting.has(element)) {
      this.#waiting.add(element);
      if (this.#frame === 0) this.#frame = requestAnimationFrame(() => setTimeout(() => this.#drawWaiting()));
    }
  }

  #drawWaiting(): void {
    this.#frame = 0;
    for (const element of this.#waiting) redraw(element);
    this.#waiting.clear();
  }
}
