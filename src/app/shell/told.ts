import { css, html, LitElement } from 'lit';
import { takenOut } from '../editing/taken-out.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

/** Tells what was just deleted, and how it comes back, until the next change. */
export class Told extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  #deleted: string | undefined;

  static override styles = css`
    :host {
      color: var(--ink);
    }
    kbd {
      font: inherit;
      font-weight: 600;
    }
  `;

  constructor() {
    super();
    new SessionController(this, (event) => this.#hear(event));
  }

  #hear(event: SessionEvent): boolean {
    if (event.kind !== 'book') return false;
    const before = this.#deleted;
    this.#deleted = event.back && takenOut(event.back);
    return this.#deleted !== before;
  }

  override render() {
    return html`<div role="status">
      ${this.#deleted === undefined ? '' : html`${this.#deleted} deleted; <kbd>Ctrl+Z</kbd> undoes it`}
    </div>`;
  }
}
