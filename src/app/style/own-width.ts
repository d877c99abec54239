import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Tells an element its width (px) while it is on the page, at first and whenever it changes. */
export class OwnWidth implements ReactiveController {
  readonly #host: ReactiveControllerHost & Element;
  readonly #resizes: ResizeObserver;

  constructor(host: ReactiveControllerHost & Element, told: (width: number) => void) {
    this.#host = host;
    this.#resizes = new ResizeObserver(([entry]) => told(entry?.contentRect.width ?? 0));
    host.addController(this);
  }

  hostConnected(): void {
    this.#resizes.observe(this.#host);
  }

  hostDisconnected(): void {
    this.#resizes.disconnect();
  }
}
