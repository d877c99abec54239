import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session, SessionEvent } from './session.ts';

type Host = ReactiveControllerHost & { readonly session: Session };

/**
 * Renders its host again when the session tells of something the host shows: with the keystroke, or `after` the frame in
 * which the page has answered. What stands beside the page need not make it wait.
 */
export class SessionController implements ReactiveController {
  readonly #host: Host;
  readonly #shows: (event: SessionEvent) => boolean;
  readonly #when: 'with' | 'after';
  #heard: Session | undefined;
  #leave: (() => void) | undefined;
  #frame = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    host: Host,
    shows: (event: SessionEvent) => boolean = () => true,
    when: 'with' | 'after' = 'with',
  ) {
    this.#host = host;
    this.#shows = shows;
    this.#when = when;
    host.addController(this);
  }

  hostConnected(): void {
    this.#listen();
  }

  /** A book that is opened anew has a session of its own. */
  hostUpdate(): void {
    if (this.#host.session !== this.#heard) this.#listen();
  }

  #listen(): void {
    this.#leave?.();
    this.#heard = this.#host.session;
    this.#leave = this.#heard.subscribe((event) => {
      if (this.#shows(event)) this.#render();
    });
  }

  #render(): void {
    if (this.#when === 'with') {
      this.#host.requestUpdate();
      return;
    }
    this.#stop();
    this.#frame = requestAnimationFrame(() => {
      this.#timer = setTimeout(() => this.#host.requestUpdate());
    });
  }

  #stop(): void {
    cancelAnimationFrame(this.#frame);
    clearTimeout(this.#timer);
  }

  hostDisconnected(): void {
    this.#leave?.();
    this.#stop();
  }
}
