import { css, html, LitElement, nothing } from 'lit';
import { takeCaseBackEdit } from '../../review/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { drawSign } from '../style/signs.ts';

/** Says above every page of the book that the inputs of a case stand on its sheets, and takes them back. */
export class ExampleNote extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  static override styles = css`
    p {
      display: flex;
      flex-wrap: wrap;
      gap: 4px 16px;
      align-items: center;
      margin: 0;
      padding: 6px 20px;
      background: var(--paper);
      border-block-end: 2px solid var(--warn);
      color: var(--warn);
      font-size: var(--type-small);
    }
    .sign {
      width: 14px;
      height: 14px;
      fill: none;
      stroke: currentcolor;
      stroke-width: 1.8;
      vertical-align: -2px;
    }
    button {
      min-height: 28px;
      padding: 2px 12px;
      border: 1px solid currentcolor;
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
      cursor: pointer;
    }
    button:focus-visible {
      outline: 2px solid var(--accent);
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'book');
  }

  override render() {
    const { example } = this.session.notebook.book;
    if (!example) return nothing;
    return html`<p role="status">
      <span>${drawSign('warning')} The inputs of “${example.title}”, a case of the template ${example.template}, stand on the sheets in place of the book’s own. Taking them back restores what stood there, also where something else was entered since.</span>
      <button @click=${this.#takeBack}>Take them back</button>
    </p>`;
  }

  readonly #takeBack = (): void => {
    const edit = takeCaseBackEdit(this.session.notebook.book);
    if (edit) this.session.apply(edit);
  };
}
