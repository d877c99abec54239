import { css, html, LitElement } from 'lit';
import type { Edit } from '../../document/index.ts';
import { putIn } from '../editing/put-in.ts';
import { takenOut } from '../editing/taken-out.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

/** Tells what was just deleted or put into a table, and how that is undone, until the next change. */
export class Told extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  #words: string | undefined;

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
    const before = this.#words;
    this.#words = event.back && wordsOf(event.back);
    return this.#words !== before;
  }

  override render() {
    return html`<div role="status">
      ${this.#words === undefined ? '' : html`${this.#words}; <kbd>Ctrl+Z</kbd> undoes it`}
    </div>`;
  }
}

function wordsOf(back: Edit): string | undefined {
  const gone = takenOut(back);
  return gone === undefined ? putIn(back) : `${gone} deleted`;
}
