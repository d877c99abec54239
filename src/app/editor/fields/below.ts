import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Keeps what belongs to a field right below it, above everything else on the page and within the window: note and
 * list stand in a popover, so no scrolling box cuts them off. The field's `--below-height` is how tall it is.
 */
export class Below implements ReactiveController {
  #frame: number | undefined;
  #draw: (() => void) | undefined;
  #drawing = false;
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #parts: () => { readonly field: Element; readonly popover: HTMLElement } | undefined;

  constructor(
    host: ReactiveControllerHost & HTMLElement,
    parts: () => { field: Element; popover: HTMLElement } | undefined,
  ) {
    this.#host = host;
    this.#parts = parts;
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('scroll', this.placeSoon, { capture: true, passive: true });
    addEventListener('resize', this.placeSoon);
  }

  hostDisconnected(): void {
    removeEventListener('scroll', this.placeSoon, { capture: true });
    removeEventListener('resize', this.placeSoon);
  }

  hostUpdated(): void {
    if (!this.#drawing) this.placeSoon();
  }

  /** Has the host draw again what stands below, and puts it in place, in the next frame. */
  drawSoon(draw: () => void): void {
    this.#draw = draw;
    this.placeSoon();
  }

  /** Puts the popover where the field is, in time for the next frame: a keystroke waits for no layout. */
  readonly placeSoon = (): void => {
    this.#frame ??= requestAnimationFrame(() => void this.#inFrame());
  };

  async #inFrame(): Promise<void> {
    this.#frame = undefined;
    const draw = this.#draw;
    this.#draw = undefined;
    this.#drawing = true;
    draw?.();
    // A host that draws again is done before the frame is laid out.
    await this.#host.updateComplete;
    this.#drawing = false;
    this.#place();
  }

  #place(): void {
    const parts = this.#parts();
    // A page that is about to go away has no window any more.
    if (!parts?.popover.isConnected || !document.defaultView) return;
    const { field, popover } = parts;
    if (!popover.matches(':popover-open')) popover.showPopover();
    const at = field.getBoundingClientRect();
    popover.style.minWidth = `${Math.min(at.width, 420)}px`;
    const { offsetWidth, offsetHeight } = popover;
    this.#host.style.setProperty('--below-height', `${offsetHeight}px`);
    const room = innerHeight - at.bottom;
    const above = offsetHeight + 12 > room && at.top > room;
    popover.style.left = `${Math.max(8, Math.min(at.left - 2, innerWidth - offsetWidth - 8))}px`;
    popover.style.top = `${above ? at.top - offsetHeight - 5 : at.bottom + 5}px`;
  }
}
