import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { type AboutSheets, aboutsOf } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { AskedHeading } from './asked-heading.ts';
import { overviewStyles } from './overview-styles.ts';

/** A page of the book: what it is for and how far it may be trusted, by the books that its sheets come from. */
export class AboutPage extends LitElement {
  static override properties = { session: { attribute: false } };
  static override styles = [
    overviewStyles,
    css`
      .of {
        padding-block: 0 6px;
      }
      dl {
        display: grid;
        grid-template-columns: var(--margin) 1fr;
        margin: 0;
      }
      :is(dt, dd) {
        margin: 0;
        padding-block: 7px;
        line-height: 20px;
      }
      dt {
        padding-inline: 14px 12px;
        color: var(--ink-soft);
        font-size: var(--type-small);
      }
      dd {
        max-width: 72ch;
        padding-inline: var(--lead) 40px;
      }
      dt.caution {
        color: var(--warn);
        font-weight: 600;
      }
      ul {
        margin: 0;
        padding-inline-start: 16px;
      }
      li + li {
        margin-block-start: 4px;
      }
      .of button {
        color: var(--accent);
      }
      @media (width < 48rem) {
        :host(:not([paper])) {
          dl {
            display: block;
          }
          dt {
            padding-block-end: 0;
          }
          :is(dt, dd) {
            padding-inline: 16px;
          }
        }
      }
      :host([paper]) {
        :is(dt, dd) {
          padding-block: 2px;
          line-height: 1.25;
        }
        dd {
          max-width: none;
        }
        li + li {
          margin-block-start: 1px;
        }
        :is(dt, li) {
          break-inside: avoid;
        }
        dt {
          break-after: avoid;
        }
      }
    `,
  ];
  declare session: Session;

  constructor() {
    super();
    new AskedHeading(this, ({ kind }) => kind === 'book');
  }

  override render(): TemplateResult {
    const abouts = aboutsOf(this.session.notebook.book);
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.about}</h2>
      ${abouts.map((one) => this.#about(one, abouts.length > 1))}
    </div>`;
  }

  #about({ title, about, sheets }: AboutSheets, several: boolean): TemplateResult {
    const heading = title === undefined ? 'Sheets of this book itself' : `Sheets from “${title}”`;
    return html`${
      several
        ? html`<h3>${heading}</h3>
            <p class="words quiet of">
              ${sheets.map(
                ({ key, title: words }, at) =>
                  html`${at === 0 ? nothing : ', '}<button type="button" @click=${() => this.session.showSheet(key)}>
                      ${words || key}
                    </button>`,
              )}
            </p>`
        : nothing
    }
      ${
        about
          ? html`<dl>
              ${sentence('Purpose', about.purpose)} ${sentence('Standard', about.standard)}
              ${sentence('Scope', about.scope)} ${list('Limits', about.limits)}
              ${list('Assumptions', about.assumptions)} ${list('Cautions', about.cautions)}
            </dl>`
          : html`<p class="words quiet">Nothing is said of these sheets.</p>`
      }`;
  }
}

function sentence(term: string, words: string): TemplateResult | typeof nothing {
  return words.trim() === '' ? nothing : html`<dt>${term}</dt><dd>${words}</dd>`;
}

function list(term: string, items: readonly string[]): TemplateResult | typeof nothing {
  if (items.length === 0) return nothing;
  return html`<dt class=${term === 'Cautions' ? 'caution' : ''}>${term}</dt>
    <dd>
      <ul>
        ${items.map((item) => html`<li>${item}</li>`)}
      </ul>
    </dd>`;
}
