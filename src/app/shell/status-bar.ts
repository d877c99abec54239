import { css, html, LitElement } from 'lit';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { sheetStates } from './sheet-states.ts';

/** What fails and what has a problem in the whole book, and the keys to begin with. */
export class StatusBar extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  static override styles = css`
    :host {
      display: flex;
      justify-content: space-between;
      gap: 24px;
      padding: 5px 18px;
      border-block-start: 1px solid var(--rule);
      background: var(--paper);
      font-size: 13px;
      color: var(--ink-soft);
    }
    span + span {
      margin-inline-start: 20px;
    }
    .bad {
      color: var(--bad);
      font-weight: 600;
    }
    kbd {
      font: inherit;
      font-weight: 600;
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'book', 'after');
  }

  override render() {
    const states = [...sheetStates(this.session.notebook).values()];
    const sum = (key: 'problems' | 'failing' | 'checks') =>
      states.reduce((total, state) => total + state[key], 0);
    const [problems, failing, checks] = [sum('problems'), sum('failing'), sum('checks')];
    const words =
      failing === 0
        ? `${checks} checks hold`
        : `${failing} of ${checks} checks ${failing === 1 ? 'fails' : 'fail'}`;
    return html`<div role="status">
        <span class=${failing > 0 ? 'bad' : ''}>${checks === 0 ? 'no checks' : words}</span>
        <span class=${problems > 0 ? 'bad' : ''}>${problems} ${problems === 1 ? 'problem' : 'problems'}</span>
      </div>
      <quay-told .session=${this.session}></quay-told>
      <div><kbd>F2</kbd> edit · <kbd>Ctrl+G</kbd> go to · <kbd>?</kbd> keys</div>`;
  }
}
