import { css, html, LitElement } from 'lit';
import { dialogStyles } from '../style/dialog-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import { keyGroups } from './keys.ts';

/** The sheet of keys. */
export class KeysDialog extends LitElement {
  static override styles = [
    dialogStyles,
    css`
      .groups {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 8px 40px;
      }
      dl {
        display: grid;
        grid-template-columns: fit-content(9.5rem) 1fr;
        gap: 4px 16px;
        margin: 0;
      }
      dt {
        font-weight: 600;
        text-wrap: balance;
      }
      dd {
        margin: 0;
        color: var(--ink-soft);
      }
      @media (width < 40rem) {
        .groups {
          grid-template-columns: 1fr;
        }
      }
      h3 {
        margin: 12px 0 6px;
        font-size: 13px;
        color: var(--ink-soft);
      }
    `,
  ];

  show(): void {
    const dialog = this.renderRoot.querySelector('dialog');
    showModal(dialog);
    // The button that has the focus stands below the keys; one begins to read at their head.
    dialog?.scrollTo(0, 0);
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <h2 id="title">Keys</h2>
      <div class="groups">
        ${keyGroups.map(
          ({ title, keys }) => html`<section>
            <h3>${title}</h3>
            <dl>${keys.map(([key, does]) => html`<dt>${key}</dt><dd>${does}</dd>`)}</dl>
          </section>`,
        )}
      </div>
      <form method="dialog" class="buttons"><button autofocus>Close</button></form>
    </dialog>`;
  }
}
