import { css, html, LitElement, nothing } from 'lit';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

/** Shows what was typed for a place that the book has no more, until the person has taken it or lets go of it. */
export class StrayedDraft extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  static override styles = css`
    .box {
      position: fixed;
      z-index: 2;
      inset: auto 24px 48px auto;
      width: min(46ch, calc(100vw - 48px));
      padding: 12px 18px;
      border: 1px solid var(--rule-strong);
      background: var(--paper);
      box-shadow: var(--shadow-raised);
    }
    p {
      margin: 0 0 8px;
    }
    textarea {
      box-sizing: border-box;
      width: 100%;
      padding: 4px 8px;
      border: 1px solid var(--rule-strong);
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
    }
    button {
      margin-block-start: 8px;
      padding: 0;
      border: 0;
      background: none;
      color: var(--accent);
      font: inherit;
      cursor: pointer;
    }
    @media print {
      .box {
        display: none;
      }
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'hand');
  }

  override render() {
    const { strayed } = this.session;
    if (!strayed) return nothing;
    return html`<div class="box" role="alert">
      <p>The place you were typing in is not in the book any more. What you typed is here, for you to copy:</p>
      <textarea readonly rows="3" aria-label="What you typed" .value=${strayed.draft}></textarea>
      <button type="button" @click=${() => this.session.forgetStrayed()}>I have it, or do not need it</button>
    </div>`;
  }
}
