/** What the focus needs of the page. */
export interface FocusHost {
  /** The active cell as drawn; undefined while there is none or it is being edited. */
  readonly activeCell: () => HTMLElement | undefined;
  readonly onKey: (event: KeyboardEvent) => void;
}

/** Gives the focus to the active cell in time for the next frame, which lays the page out anyway. */
export class CellFocus {
  readonly #host: FocusHost;
  #frame = 0;

  constructor(host: FocusHost) {
    this.#host = host;
  }

  connect(): void {
    addEventListener('keydown', this.#earlyKey, { capture: true });
  }

  disconnect(): void {
    removeEventListener('keydown', this.#earlyKey, { capture: true });
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  soon(): void {
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.now());
  }

  now(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    const cell = this.#host.activeCell();
    cell?.focus({ preventScroll: true });
    cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  /** A key that comes before the focus finds the page, even where the focus was lost with the field that had it. */
  readonly #earlyKey = (event: KeyboardEvent): void => {
    if (this.#frame === 0) return;
    this.now();
    if (event.target === document.body) this.#host.onKey(event);
  };
}
