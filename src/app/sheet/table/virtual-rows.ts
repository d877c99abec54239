import {
  elementScroll,
  observeElementOffset,
  observeElementRect,
  type VirtualItem,
  Virtualizer,
} from '@tanstack/virtual-core';
import type { ReactiveController, ReactiveControllerHost } from 'lit';

type Host = ReactiveControllerHost & HTMLElement;

/** Which rows of a long list of rows of one height are to be drawn, as its scroller stands. */
export class VirtualRows implements ReactiveController {
  readonly #host: Host;
  readonly #height: number;
  readonly #scroller: () => HTMLElement | null;
  readonly #virtualizer: Virtualizer<HTMLElement, HTMLElement>;
  #leave: (() => void) | undefined;

  /** `scroller` is the element that scrolls; `head` px of it are covered by what stays on top. */
  constructor(host: Host, height: number, scroller: () => HTMLElement | null) {
    this.#host = host;
    this.#height = height;
    this.#scroller = scroller;
    this.#virtualizer = new Virtualizer(this.#options(0));
    host.addController(this);
  }

  #options(count: number) {
    return {
      count,
      getScrollElement: this.#scroller,
      estimateSize: () => this.#height,
      overscan: 8,
      scrollToFn: elementScroll,
      observeElementRect,
      observeElementOffset,
      initialRect: { width: 0, height: 480 },
      onChange: () => this.#host.requestUpdate(),
    };
  }

  /** Tells how many rows there are. */
  setCount(count: number): void {
    if (this.#virtualizer.options.count !== count) this.#virtualizer.setOptions(this.#options(count));
  }

  /** The rows to draw, each with its number and how far down it stands. */
  get rows(): readonly VirtualItem[] {
    return this.#virtualizer.getVirtualItems();
  }

  get totalHeight(): number {
    return this.#virtualizer.getTotalSize();
  }

  hostConnected(): void {
    this.#leave = this.#virtualizer._didMount();
  }

  hostUpdated(): void {
    this.#virtualizer._willUpdate();
  }

  hostDisconnected(): void {
    this.#leave?.();
  }
}
