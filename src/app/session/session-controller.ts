import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session, SessionEvent } from './session.ts';

type Host = ReactiveControllerHost & { readonly session: Session };

/** Renders its host again when the session tells of something the host shows. */
export class SessionController implements ReactiveController {
  readonly #host: Host;
  readonly #shows: (event: SessionEvent) => boolean;
  #leave: (() => void) | undefined;

  constructor(host: Host, shows: (event: SessionEvent) => boolean = () => true) {
    this.#host = host;
    this.#shows = shows;
    host.addController(this);
  }

  hostConnected(): void {
    this.#leave = this.#host.session.subscribe((event) => {
      if (this.#shows(event)) this.#host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    this.#leave?.();
  }
}
