import { css, html, LitElement } from 'lit';
import type { Edit } from '../../document/index.ts';
import { putIn } from '../editing/put-in.ts';
import { takenOut } from '../editing/taken-out.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

/** Tells what was just deleted or put into a table, and how that is undone, until the next change or another sheet. */
export class Told extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  #words: string | undefined;
  /** The sheet it happened on. */
  #sheet = '';

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
    const before = this.#words;
    const { sheet, overview } = this.session;
    if (event.kind === 'book') {
      this.#words = event.back && wordsOf(event.back);
      this.#sheet = sheet;
    } else if (event.kind === 'place' && (overview || sheet !== this.#sheet)) this.#words = undefined;
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
