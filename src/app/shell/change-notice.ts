import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Edit } from '../../document/index.ts';
import type { Dangling } from '../../notebook/index.ts';
import { countWords, labelOf } from '../../record/index.ts';
import { describeDeletion } from '../editing/lines/describe-deletion.ts';
import { describeInsertion } from '../editing/lines/describe-insertion.ts';
import { describeMove } from '../editing/sheets/describe-move.ts';
import type { Session, SessionEvent } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';
import { footButtonStyles } from './foot-button-styles.ts';

/** So many of those that lost something are named; the others are in the list of problems. */
const NAMED = 3;

/**
 * Tells what was just deleted, put into a table or moved to another group, and how that is undone, until the next change or
 * another sheet; and
 * which lines lost what they used by it, each the way there, until the next change.
 */
export class ChangeNotice extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  #words: string | undefined;
  /** The sheet it happened on. */
  #sheet = '';
  #dangling: Dangling = { lines: [], pictures: [] };

  static override styles = [
    footButtonStyles,
    css`
      :host {
        color: var(--ink);
      }
      .lost {
        color: var(--bad);
        font-weight: 600;
      }
      button {
        min-width: 24px;
        max-width: 18rem;
        padding: 0 6px;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
        vertical-align: middle;
        color: var(--accent);
      }
    `,
  ];

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
      const lost = this.#dangling;
      // A step of undo or redo says nothing of what it did; what it leaves dangling is in the list of problems.
      this.#dangling = event.back ? event.dangling : { lines: [], pictures: [] };
      return this.#words !== before || this.#dangling !== lost;
    }
    if (event.kind === 'place' && (overview || sheet !== this.#sheet)) this.#words = undefined;
    return this.#words !== before;
  }

  override render() {
    const lost = this.#lost();
    return html`<div role="status">
      ${this.#words === undefined ? '' : html`${this.#words}; <kbd>Ctrl+Z</kbd> undoes it${lost === nothing ? '' : ' · '}`}
      ${lost}
    </div>`;
  }

  /** How many lines and pictures lost what they used, and the first of them. */
  #lost(): TemplateResult | typeof nothing {
    const { lines, pictures } = this.#dangling;
    const count = lines.length + pictures.length;
    if (count === 0) return nothing;
    const { notebook } = this.session;
    const named = lines.slice(0, NAMED).flatMap((id) => {
      const item = notebook.model.items.get(id);
      const place = placeOfId(notebook, id);
      return item && place ? [{ item, place }] : [];
    });
    const pictured = pictures.slice(0, NAMED - named.length);
    const more = count - named.length - pictured.length;
    const what = [
      ...(lines.length > 0 ? [countWords(lines.length, 'line')] : []),
      ...(pictures.length > 0 ? [countWords(pictures.length, 'picture')] : []),
    ].join(' and ');
    return html`<span class="lost">${what} lost what ${count === 1 ? 'it' : 'they'} used:</span>
      ${named.map(({ item, place }) => this.#way(labelOf(item), place))}
      ${pictured.map(({ sheet, part }) => this.#way('a picture', { sheet, part, item: '', field: 'title' }))}
      ${
        more === 0
          ? nothing
          : html`<button type="button" @click=${() => this.session.showOverview('problems')}>${more} more</button>`
      }`;
  }

  #way(words: string, place: CellPlace): TemplateResult {
    return html`<button type="button" title=${`Go to ${words}`} @click=${() => this.session.jumpTo(place)}>${words}</button>`;
  }
}

function wordsOf(back: Edit): string | undefined {
  const gone = describeDeletion(back);
  return gone === undefined ? (describeInsertion(back) ?? describeMove(back)) : `${gone} deleted`;
}
