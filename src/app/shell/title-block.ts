import { css, html, LitElement } from 'lit';
import { setTitle, type Title } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';

const fields: readonly { readonly field: keyof Title; readonly label: string; readonly wide?: true }[] = [
  { field: 'project', label: 'Project', wide: true },
  { field: 'subject', label: 'Subject', wide: true },
  { field: 'job', label: 'Job' },
  { field: 'client', label: 'Client', wide: true },
  { field: 'prepared', label: 'Prepared' },
  { field: 'checked', label: 'Checked' },
  { field: 'date', label: 'Date' },
  { field: 'revision', label: 'Revision' },
];

/** The drawing office's title block on top of each sheet; every field is typed in place. */
export class TitleBlock extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;

  static override styles = css`
    :host {
      display: grid;
      grid-template-columns: repeat(12, 1fr);
      border-bottom: 1.5px solid var(--ink);
    }
    label {
      grid-column: span 2;
      min-width: 0;
      padding: 6px 12px 5px;
      border-inline-end: 1px solid var(--rule);
      border-block-end: 1px solid var(--rule);
    }
    label.wide {
      grid-column: span 4;
    }
    .sheet {
      grid-column: span 2;
      padding: 6px 12px 5px;
      border-block-end: 1px solid var(--rule);
    }
    .name {
      display: block;
      font-size: 12px;
      color: var(--ink-soft);
    }
    input {
      width: 100%;
      padding: 0;
      border: 0;
      background: none;
      color: inherit;
      font: inherit;
      text-overflow: ellipsis;
    }
    input:focus-visible {
      outline: 2px solid var(--accent);
      outline-offset: 2px;
    }
  `;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'book' || kind === 'place');
  }

  override render() {
    const { title, sheets } = this.session.notebook.book;
    const at = sheets.findIndex((sheet) => sheet.key === this.session.sheet);
    return html`
      ${fields.map(
        ({ field, label, wide }) => html`<label class=${wide ? 'wide' : ''}>
          <span class="name">${label}</span>
          <input .value=${title[field]} @change=${(event: Event) => this.#set(field, event)} />
        </label>`,
      )}
      <div class="sheet"><span class="name">Sheet</span>${at + 1} of ${sheets.length}</div>
    `;
  }

  #set(field: keyof Title, event: Event): void {
    const input = event.target as HTMLInputElement;
    const applied = this.session.apply(setTitle(field, input.value));
    if (!applied.ok) input.value = this.session.notebook.book.title[field];
  }
}
