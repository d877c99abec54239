import { css, html, LitElement, nothing } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Title } from '../../../document/index.ts';
import { onLeave } from '../../editor/fields/on-leave.ts';
import type { Session } from '../../session/session.ts';
import { SessionController } from '../../session/session-controller.ts';
import { titleFieldOf, titlePlace } from '../../view-model/place.ts';

interface Field {
  readonly field: keyof Title;
  readonly label: string;
  /** How many of the twelve columns it takes. */
  readonly span: 2 | 4;
}

const upper: readonly Field[] = [
  { field: 'project', label: 'Project', span: 4 },
  { field: 'subject', label: 'Subject', span: 4 },
  { field: 'job', label: 'Job', span: 2 },
];
const lower: readonly Field[] = [
  { field: 'client', label: 'Client', span: 4 },
  { field: 'prepared', label: 'Prepared', span: 2 },
  { field: 'checked', label: 'Checked', span: 2 },
  { field: 'date', label: 'Date', span: 2 },
  { field: 'revision', label: 'Revision', span: 2 },
];

/** The drawing office's title block on top of each sheet; every field is typed in place. */
export class TitleBlock extends LitElement {
  static override properties = { session: { attribute: false }, sheetWords: { attribute: false } };
  declare session: Session;
  /** What stands for the sheet on paper, where it is not the one in hand. */
  declare sheetWords: string | undefined;

  static override styles = css`
    .example {
      grid-column: 1 / -1;
      padding: 3px 6px;
      color: var(--bad);
      font-size: var(--type-small);
      font-weight: 600;
    }
    :host {
      display: grid;
      grid-template-columns: repeat(12, 1fr);
      border-bottom: 1.5px solid var(--ink);
    }
    .field {
      position: relative;
      min-width: 0;
      padding: 6px 14px 5px;
      border-inline-end: 1px solid var(--rule);
      border-block-end: 1px solid var(--rule);
    }
    .two {
      grid-column: span 2;
    }
    .four {
      grid-column: span 4;
    }
    .name {
      display: block;
      font-size: 12px;
      color: var(--ink-soft);
    }
    /* What is typed in a field cannot wrap: its text stands there whole, and makes way for the field that is typed in. */
    .whole {
      display: block;
      min-height: 1lh;
      overflow-wrap: anywhere;
    }
    input {
      position: absolute;
      inset: auto 14px 5px;
      padding: 0;
      border: 0;
      background: none;
      color: inherit;
      font: inherit;
      opacity: 0;
    }
    input:focus {
      opacity: 1;
    }
    input:focus ~ .whole {
      visibility: hidden;
    }
    input:focus-visible {
      outline: 2px solid var(--accent);
      outline-offset: 2px;
    }
    @media screen and (width < 40rem) {
      :host {
        grid-template-columns: 1fr 1fr;
      }
      .two,
      .four {
        grid-column: auto;
      }
    }
    :host([paper]) {
      border: 1.5px solid var(--ink);

      .field {
        padding: 3px 8px 2px;
      }
      .name {
        font-size: 13.2px;
      }
      /* The box closes the rows and the lower one: four fields are in the upper. */
      .field:is(:nth-child(4), :last-child) {
        border-inline-end: 0;
      }
      .field:nth-child(n + 5) {
        border-block-end: 0;
      }
      input {
        display: none;
      }
    }
  `;

  constructor() {
    super();
    new SessionController(
      this,
      ({ kind }) => kind === 'book' || kind === 'place' || kind === 'hand',
      'after',
    );
  }

  override render() {
    const { title, sheets, example } = this.session.notebook.book;
    const at = sheets.findIndex((sheet) => sheet.key === this.session.sheet);
    return html`
      ${upper.map((one) => this.#field(one, title))}
      <div class="field two"><span class="name">Sheet</span>${
        this.sheetWords ?? (this.session.overview ? `all ${sheets.length}` : `${at + 1} of ${sheets.length}`)
      }</div>
      ${lower.map((one) => this.#field(one, title))}
      ${
        example && this.hasAttribute('paper')
          ? html`<div class="example">The inputs of “${example.title}”, a case of the template ${example.template}, stand on the sheets in place of the book’s own.</div>`
          : nothing
      }
    `;
  }

  #field({ field, label, span }: Field, title: Title) {
    const { hand } = this.session;
    const draft = hand && titleFieldOf(hand.place) === field ? hand.draft : undefined;
    return html`<label class="field ${span === 4 ? 'four' : 'two'}">
      <span class="name">${label}</span>
      <input
        name=${field}
        .value=${live(draft ?? title[field])}
        @input=${(event: Event) => this.#type(field, event)}
        @keydown=${(event: KeyboardEvent) => this.#key(event)}
        @blur=${(event: Event) => this.#blur(event)}
      />
      <span class="whole" aria-hidden="true">${title[field]}</span>
    </label>`;
  }

  #type(field: keyof Title, event: Event): void {
    const { session } = this;
    const { value } = event.target as HTMLInputElement;
    const { hand } = session;
    if (hand && titleFieldOf(hand.place) === field) session.changeDraft(value);
    else session.beginEdit(titlePlace(field), value);
  }

  #key({ key, isComposing }: KeyboardEvent): void {
    if (isComposing) return;
    if (key === 'Enter') this.session.endEdit('enter');
    else if (key === 'Escape') this.session.endEdit('escape');
  }

  #blur({ target }: Event): void {
    if (target instanceof Element) onLeave(target, () => this.session.endEdit('elsewhere'));
  }

  protected override firstUpdated(): void {
    const { hand } = this.session;
    const field = hand && titleFieldOf(hand.place);
    if (field) this.renderRoot.querySelector<HTMLElement>(`input[name="${field}"]`)?.focus();
  }
}
