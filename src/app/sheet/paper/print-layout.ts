/** What a page is to its printing. */
interface PrintedPage extends HTMLElement {
  readonly elements: Iterable<Element & { readonly updateComplete: Promise<unknown> }>;
  readonly updateComplete: Promise<unknown>;
  requestUpdate(): void;
}

/** Lays a page out for paper while it is printed, and has the screen again afterwards as it was. */
export class PrintLayout {
  readonly #page: PrintedPage;
  #printing = false;
  /** What stood first in sight before the page was printed, and where. */
  #inSight: { readonly element: Element; readonly top: number } | undefined;

  constructor(page: PrintedPage) {
    this.#page = page;
  }

  /** Whether the page is laid out for paper. */
  get printing(): boolean {
    return this.#printing;
  }

  connect(): void {
    addEventListener('beforeprint', this.#onPrintEvent);
    addEventListener('afterprint', this.#onPrintEvent);
  }

  disconnect(): void {
    removeEventListener('beforeprint', this.#onPrintEvent);
    removeEventListener('afterprint', this.#onPrintEvent);
  }

  readonly #onPrintEvent = (event: Event): void => {
    const printing = event.type === 'beforeprint';
    // A browser tells of a print again that the app has told of.
    if (printing === this.#printing) return;
    this.#printing = printing;
    if (printing) this.#inSight = this.#firstInSight();
    this.#page.requestUpdate();
    if (!printing) void this.#restore();
  };

  #firstInSight(): { readonly element: Element; readonly top: number } | undefined {
    const { top: above } = this.#page.getBoundingClientRect();
    for (const element of this.#page.elements) {
      const { top } = element.getBoundingClientRect();
      if (top >= above) return { element, top };
    }
    return undefined;
  }

  /** Scrolls to where the screen was: lines were longer on paper, and nothing scrolled. */
  async #restore(): Promise<void> {
    await this.#page.updateComplete;
    await Promise.all(Array.from(this.#page.elements, (element) => element.updateComplete));
    const { element, top } = this.#inSight ?? {};
    if (element && top !== undefined) this.#page.scrollTop += element.getBoundingClientRect().top - top;
  }
}
