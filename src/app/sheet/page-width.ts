import type { ReactiveControllerHost } from 'lit';

/** How wide a page is on the screen, in whole pixels; a change draws it anew. */
export class PageWidth {
  readonly #host: ReactiveControllerHost;
  #width = 0;
  readonly #observer = new ResizeObserver(([entry]) => {
    const width = Math.round(entry?.contentRect.width ?? 0);
    if (width === 0 || width === this.#width) return;
    this.#width = width;
    this.#host.requestUpdate();
  });

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  /** 0 before the page was laid out. */
  get px(): number {
    return this.#width;
  }

  observe(page: Element): void {
    this.#observer.observe(page);
  }

  disconnect(): void {
    this.#observer.disconnect();
  }
}
