import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { OwnWidth } from '../style/own-width.ts';

type Host = ReactiveControllerHost & HTMLElement;

/** How much of itself a bar can leave to its menu, step by step. */
const MOST = 3;

/**
 * Leaves to the menu of a bar as much as it has no room for: the attribute `fold` of the bar counts the steps, and its
 * styles say what each of them takes out. Measured, for words and letters have other widths elsewhere.
 */
export class BarFit implements ReactiveController {
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
    new OwnWidth(host, () => this.#fit());
  }

  hostConnected(): void {
    // The type has its widths once it has come.
    void document.fonts.ready.then(() => this.#fit());
  }

  hostUpdated(): void {
    this.#fit();
  }

  /** Of what the bar holds nothing may stand beyond its edge. */
  #fit(): void {
    const host = this.#host;
    for (let fold = 0; fold <= MOST; fold += 1) {
      host.setAttribute('fold', `${fold}`);
      if (host.scrollWidth <= host.clientWidth) return;
    }
  }
}
