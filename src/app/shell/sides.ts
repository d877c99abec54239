import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** What stands beside the sheet: the list of sheets at its left, the panel at its right. */
export type Side = 'list' | 'panel';

type Host = ReactiveControllerHost & { readonly renderRoot: ParentNode };

/** The element of each side. */
const elements: Readonly<Record<Side, string>> = { list: 'quay-sheet-list', panel: 'quay-side-panel' };

/** In windows narrower than these the sheet needs the width for itself: a side then lies over it while it is shown. */
const needed: Readonly<Record<Side, string>> = { list: '(width < 800px)', panel: '(width < 1000px)' };

/**
 * Which sides are shown. Where there is room they stand beside the sheet, unless the person folds them. Elsewhere they are
 * folded, and lie over the sheet from when they are asked for until the person turns to something else.
 */
export class Sides implements ReactiveController {
  readonly #host: Host;
  readonly #narrow: Readonly<Record<Side, MediaQueryList>> = {
    list: matchMedia(needed.list),
    panel: matchMedia(needed.panel),
  };
  readonly #folded = new Set<Side>();
  /** The side that lies over the sheet; one at a time. */
  #over: Side | undefined;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    for (const query of Object.values(this.#narrow)) query.addEventListener('change', this.#resized);
    addEventListener('focusin', this.#turned);
    addEventListener('pointerdown', this.#turned);
  }

  hostDisconnected(): void {
    for (const query of Object.values(this.#narrow)) query.removeEventListener('change', this.#resized);
    removeEventListener('focusin', this.#turned);
    removeEventListener('pointerdown', this.#turned);
  }

  /** Whether a side lies over the sheet while it is shown. */
  isOver(side: Side): boolean {
    return this.#narrow[side].matches;
  }

  isShown(side: Side): boolean {
    return this.isOver(side) ? this.#over === side : !this.#folded.has(side);
  }

  /** Whether a side lies over the sheet now. */
  get isAnyOver(): boolean {
    return this.#over !== undefined;
  }

  /** Shows a side or folds it; the focus goes along into one that lies over the sheet. */
  toggle(side: Side): void {
    const shows = !this.isShown(side);
    if (this.isOver(side)) this.#over = shows ? side : undefined;
    else if (shows) this.#folded.delete(side);
    else this.#folded.add(side);
    this.#host.requestUpdate();
    if (!shows || !this.isOver(side)) return;
    void this.#host.updateComplete.then(() => this.#element(side)?.focus());
  }

  /** Shows a side that is folded. */
  show(side: Side): void {
    if (!this.isShown(side)) this.toggle(side);
  }

  /** Folds the side that lies over the sheet; false if none does. */
  foldOver(): boolean {
    if (this.#over === undefined) return false;
    this.#over = undefined;
    this.#host.requestUpdate();
    return true;
  }

  #element(side: Side): HTMLElement | null {
    return this.#host.renderRoot.querySelector<HTMLElement>(elements[side]);
  }

  readonly #resized = (): void => {
    if (this.#over !== undefined && !this.isOver(this.#over)) this.#over = undefined;
    this.#host.requestUpdate();
  };

  /** What lies over the sheet is in the way of whoever goes on there. */
  readonly #turned = (event: Event): void => {
    if (this.#over === undefined) return;
    const side = this.#element(this.#over);
    const path = event.composedPath();
    if (path.some((one) => one === side || (one instanceof Element && one.matches('quay-top-bar')))) return;
    if (path.some((one) => one instanceof Element && one.matches('quay-main-view'))) this.foldOver();
  };
}
