import { html, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Session } from '../session/session.ts';

type Host = ReactiveControllerHost &
  EventTarget & { readonly session: Session; readonly renderRoot: ParentNode };

/** The initials of who checks, on a page with fields that wait for them: the focus comes here while they are not known. */
export class AskedInitials implements ReactiveController {
  readonly #host: Host;
  /** Whether somebody tried to check something without initials. */
  #wanted = false;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.#host.addEventListener('initials-wanted', this.#ask);
  }

  hostDisconnected(): void {
    this.#host.removeEventListener('initials-wanted', this.#ask);
  }

  /** The field. */
  draw(): TemplateResult {
    const { session } = this.#host;
    return html`<label>
      initials
      <input
        type="text"
        class="initials ${this.#wanted && session.checker === '' ? 'wanted' : ''}"
        maxlength="40"
        .value=${session.checker}
        @change=${({ target }: Event) => session.setChecker((target as HTMLInputElement).value)}
      />
    </label>`;
  }

  readonly #ask = (): void => {
    this.#wanted = true;
    this.#host.requestUpdate();
    void this.#host.updateComplete.then(() =>
      this.#host.renderRoot.querySelector<HTMLElement>('.initials')?.focus(),
    );
  };
}
