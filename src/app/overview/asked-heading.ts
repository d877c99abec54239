import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session, SessionEvent } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

type Host = ReactiveControllerHost & Element & { readonly session: Session; readonly renderRoot: ParentNode };

/** Draws a page about the book again when the session tells of what it `shows`, and gives its heading the focus once it was asked for. */
export class AskedHeading implements ReactiveController {
  readonly #host: Host;
  /** Whether the page was asked for and does not have the focus yet. */
  #asked = true;

  constructor(host: Host, shows: (event: SessionEvent) => boolean, when: 'with' | 'after' = 'with') {
    this.#host = host;
    host.addController(this);
    new SessionController(
      host,
      (event) => {
        if (event.kind === 'place') this.#asked = true;
        return event.kind === 'place' || shows(event);
      },
      when,
    );
  }

  hostUpdated(): void {
    if (this.#asked && !this.#host.hasAttribute('paper'))
      this.#host.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    this.#asked = false;
  }
}
