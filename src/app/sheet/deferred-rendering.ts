import { QuayLine } from './line/quay-line.ts';
import { QuayWords } from './line/quay-words.ts';
import type { QuayTable } from './table/quay-table.ts';

type Drawn = QuayLine | QuayWords | QuayTable;

/** Has an element drawn again whose values may have changed. */
export function redraw(element: Drawn): void {
  if (element instanceof QuayLine) element.requestUpdate();
  else element.stamp += 1;
}

/** Draws what changed: in time for the next frame what is in sight, right after it pictures and what is out of sight. */
export class DeferredRendering {
  readonly #outOfSight = new WeakSet<Element>();
  readonly #forFrame = new Set<Drawn>();
  readonly #afterFrame = new Set<Drawn>();
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

  /** Has an element drawn again when its turn comes. */
  schedule(element: Drawn): void {
    const part = element.closest('.part');
    const waits = element instanceof QuayWords || (part !== null && this.#outOfSight.has(part));
    (waits ? this.#afterFrame : this.#forFrame).add(element);
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.#inFrame());
  }

  #inFrame(): void {
    this.#frame = 0;
    drawAll(this.#forFrame);
    if (this.#afterFrame.size > 0) setTimeout(() => drawAll(this.#afterFrame));
  }
}

function drawAll(waiting: Set<Drawn>): void {
  // What left the page since then may draw ids that are gone.
  for (const element of waiting) if (element.isConnected) redraw(element);
  waiting.clear();
}
