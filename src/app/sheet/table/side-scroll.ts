import type { ReactiveController, ReactiveControllerHost } from 'lit';

type Host = ReactiveControllerHost & HTMLElement;

/**
 * How far a table is scrolled sideways. Renders its host again when another column comes fully into sight or leaves it,
 * not with each pixel; `edges` gives the right edges of the columns in px.
 */
export class SideScroll implements ReactiveController {
  readonly #host: Host;
  readonly #scroller: () => HTMLElement | null;
  readonly #edges: () => readonly number[];
  readonly #resized = new ResizeObserver(() => this.#look());
  #watched: readonly Element[] = [];

  /** The width of the window on the columns, in px; 0 before it is laid out. */
  width = 0;
  /** The height in px of the head, which covers the rows of a long table. */
  head = 0;
  /** Whether columns have gone under those that stay at the left. */
  scrolled = false;
  /** How many columns are not fully in sight at the right. */
  beyond = 0;

  constructor(host: Host, scroller: () => HTMLElement | null, edges: () => readonly number[]) {
    this.#host = host;
    this.#scroller = scroller;
    this.#edges = edges;
    host.addController(this);
  }

  hostUpdated(): void {
    const scroller = this.#scroller();
    const head = scroller?.querySelector('.head');
    const wanted = [scroller, scroller?.firstElementChild, head].filter((one) => one instanceof Element);
    if (wanted.length === this.#watched.length && wanted.every((one, at) => one === this.#watched[at]))
      return;
    this.#watch(wanted);
  }

  hostDisconnected(): void {
    this.#watch([]);
  }

  /** Scrolls on to the columns that are not in sight, past `stuck` px that stay. */
  goOn(stuck: number): void {
    this.#scroller()?.scrollBy({ left: this.width - stuck });
  }

  #watch(elements: readonly Element[]): void {
    this.#watched[0]?.removeEventListener('scroll', this.#look);
    this.#resized.disconnect();
    this.#watched = elements;
    elements[0]?.addEventListener('scroll', this.#look, { passive: true });
    for (const element of elements) this.#resized.observe(element);
  }

  readonly #look = (): void => {
    const scroller = this.#scroller();
    if (!scroller) return;
    const { scrollLeft, clientWidth: width } = scroller;
    const head = scroller.querySelector<HTMLElement>('.head')?.offsetHeight ?? 0;
    const scrolled = scrollLeft > 0;
    const beyond = this.#edges().filter((edge) => edge > scrollLeft + width + 1).length;
    const same =
      head === this.head && scrolled === this.scrolled && beyond === this.beyond && width === this.width;
    if (same) return;
    Object.assign(this, { head, scrolled, beyond, width });
    this.#host.requestUpdate();
  };
}
