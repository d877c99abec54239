import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import {
  countWords,
  labelOf,
  math,
  SOURCE_ADVICE,
  SOURCE_KINDS,
  type Source,
  type SourceKind,
  sourcesOf,
  symbolMath,
} from '../../record/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { placeOfId } from '../view-model/places.ts';
import { AskedHeading } from './asked-heading.ts';
import { overviewStyles } from './overview-styles.ts';

/** The kinds that somebody has to look after: on paper each of these references has a paragraph of its own. */
const weak: ReadonlySet<SourceKind> = new Set(
  SOURCE_KINDS.filter((kind) => kind !== 'own working' && kind !== 'no work cited'),
);

/** How many lines of a reference are named on the screen before more are asked for; on paper all are. */
const NAMED = 4;

/** A page of the book: every reference by its kind, the weakest first, and how many results rest on each. */
export class SourcesPage extends LitElement {
  static override properties = { session: { attribute: false }, marks: { attribute: false } };
  static override styles = [
    mathsStyles,
    overviewStyles,
    css`
      .lines button {
        color: var(--accent);
      }
      .lines > * {
        display: block;
      }
      .lines math {
        font-size: 1em;
      }
      .lines .beyond {
        display: none;
      }
      :host([paper]) {
        --margin: 0px;

        p.quiet {
          break-after: avoid;
        }
        /* In three columns, each reference a short paragraph: its mark, its words, how many results, the symbols it stands beside. */
        table,
        tbody {
          display: block;
          width: auto;
        }
        thead {
          display: none;
        }
        table {
          font-size: var(--type-small);
        }
        .run-on {
          font-size: var(--type-small);
          line-height: 1.25;
        }
        :is(tbody, .run-on) {
          columns: 3;
          column-gap: 20px;
        }
        tr {
          display: block;
          padding-block: 1px;
          border-block-end: 1px solid var(--rule);
          break-inside: avoid;
        }
        td {
          display: block;
          padding: 0;
          border: 0;
          overflow-wrap: anywhere;
        }
        .lines {
          color: var(--ink-soft);
        }
        .lines > :not(.beyond) {
          display: inline;
        }
        .lines > span:not(.beyond, :last-of-type)::after {
          content: ', ';
        }
        .lines button {
          color: inherit;
        }
      }
      .reference {
        width: 44%;
        overflow-wrap: anywhere;
      }
      @media (width < 48rem) {
        :host(:not([paper])) {
          .sheet {
            display: none;
          }
          .reference {
            padding-inline-start: 16px;
          }
        }
      }
    `,
  ];
  declare session: Session;
  /** On paper, the marks by which lines name their references, if they do. */
  declare marks: ReadonlyMap<string, number> | undefined;
  /** The references whose lines are all named on the screen. */
  readonly #whole = new Set<string>();

  constructor() {
    super();
    new AskedHeading(this, ({ kind }) => kind === 'book' || kind === 'values');
  }

  override render(): TemplateResult {
    const sources = sourcesOf(this.session.notebook);
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.sources}</h2>
      <p class="words quiet">
        A reference as it stands beside its lines, and how many results rest on it: those that have it, and all that is
        computed from them.
      </p>
      ${SOURCE_KINDS.map((kind) =>
        this.#kind(
          kind,
          sources.filter((one) => one.kind === kind),
        ),
      )}
    </div>`;
  }

  #kind(kind: SourceKind, sources: readonly Source[]): TemplateResult | typeof nothing {
    if (sources.length === 0) return nothing;
    return html`<h3>${kind[0]?.toUpperCase()}${kind.slice(1)}</h3>
      <p class="words quiet">${SOURCE_ADVICE[kind]}</p>
      ${this.hasAttribute('paper') && !weak.has(kind) ? this.#runOn(sources) : this.#table(kind, sources)}`;
  }

  /** References that need nobody's care, one behind the other: each stands beside its lines too, or its mark does. */
  #runOn(sources: readonly Source[]): TemplateResult {
    return html`<p class="words run-on">
      ${sources.map(({ reference, results }, at) => html`${at === 0 ? nothing : '; '}${this.#mark(reference)}${reference} <span class="quiet">(${writeNumber(results)})</span>`)}
    </p>`;
  }

  #mark(reference: string): string {
    const mark = this.marks?.get(reference);
    return mark === undefined ? '' : `[${mark}] `;
  }

  #table(kind: SourceKind, sources: readonly Source[]): TemplateResult {
    return html`<table aria-label=${`References: ${kind}`}>
        <thead>
          <tr>
            <td class="sheet"></td>
            <th scope="col" class="reference">Reference</th>
            <th scope="col" class="number">Results</th>
            <th scope="col">Beside</th>
          </tr>
        </thead>
        <tbody>
          ${sources.map((source) => this.#source(source))}
        </tbody>
      </table>`;
  }

  #source({ reference, kind, results, lines }: Source): TemplateResult {
    const key = `${kind}: ${reference}`;
    const none = kind === 'stated' ? 'reason open' : 'none';
    const words = reference === '' ? html`<span class="quiet">${none}</span>` : reference;
    if (this.hasAttribute('paper'))
      return html`<tr>
        <td>${this.#mark(reference)}${words} <span class="lines">(${countWords(results, 'result')}: ${this.#lines(lines, key)})</span></td>
      </tr>`;
    return html`<tr>
      <td class="sheet"></td>
      <td class="reference">${words}</td>
      <td class="number">${writeNumber(results)}</td>
      <td class="lines">${this.#lines(lines, key)}</td>
    </tr>`;
  }

  #lines(lines: readonly string[], key: string): TemplateResult {
    const isWhole = this.hasAttribute('paper') || this.#whole.has(key);
    const more = isWhole ? 0 : lines.length - NAMED;
    return html`${lines.map((id, at) => this.#line(id, more > 0 && at >= NAMED))}
    ${
      more > 0
        ? html`<button type="button" class="more" @click=${() => this.#showWhole(key)}>
            and ${writeNumber(more)} more
          </button>`
        : nothing
    }`;
  }

  #showWhole(key: string): void {
    this.#whole.add(key);
    this.requestUpdate();
  }

  /** A line by its name on its sheet and its description, which several lines may share. */
  #line(id: string, isMore: boolean): TemplateResult {
    const { notebook } = this.session;
    const item = notebook.model.items.get(id);
    const place = placeOfId(notebook, id);
    const label = item ? labelOf(item) : '';
    const words = html`${drawMarkup(math(symbolMath(id)))}${label === '' || label === id || this.hasAttribute('paper') ? nothing : ` ${label}`}`;
    return html`<span class=${isMore ? 'beyond' : ''}>
      ${place ? html`<button type="button" @click=${() => this.session.jumpTo(place)}>${words}</button>` : words}
    </span>`;
  }
}
