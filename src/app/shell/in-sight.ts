import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { byNearness, type Item, shareOf, writeUtilisation } from '../../notebook/index.ts';
import {
  type FoundCheck,
  findingsOf,
  labelOf,
  localName,
  math,
  quantityText,
  resultText,
  symbolMath,
} from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { placeOfId } from '../view-model/places.ts';
import { footButtonStyles } from './foot-button-styles.ts';

/** What stays in sight whatever is edited: the check that governs the book where one fails, or else the sheet in hand, and one line by choice. */
export class InSight extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  static override styles = [
    mathsStyles,
    footButtonStyles,
    css`
      :host {
        --maths-size: 14px;
        display: flex;
        flex-wrap: wrap;
        gap: 0 4px;
      }
      button {
        display: inline-flex;
        gap: 6px;
        align-items: center;
        padding: 0 8px;
        color: inherit;
      }
      b {
        color: var(--ink);
        font-weight: 600;
      }
      .bad b {
        color: var(--bad);
      }
    `,
  ];

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind !== 'kept' && kind !== 'hand', 'after');
  }

  override render(): TemplateResult {
    const { inSight, notebook } = this.session;
    const kept = inSight === undefined ? undefined : notebook.model.items.get(inSight);
    return html`${this.#governing()} ${kept ? this.#kept(kept) : nothing}`;
  }

  #governing(): TemplateResult | typeof nothing {
    const { notebook, sheet } = this.session;
    const judged = findingsOf(notebook).checks.filter(
      ({ verdict }) => verdict && (!verdict.holds || shareOf(verdict) !== undefined),
    );
    const here = judged.filter(({ item }) => item.sheet === sheet);
    // What an edit here makes fail elsewhere goes before all that holds here.
    const isOfSheet = here.length > 0 && judged.every(({ verdict }) => verdict?.holds);
    const [first] = (isOfSheet ? here : judged).toSorted((a, b) => byNearness(a.verdict, b.verdict));
    return first ? this.#check(first, isOfSheet ? 'this sheet' : 'the book') : nothing;
  }

  #check({ item, verdict }: FoundCheck, of: string): TemplateResult | typeof nothing {
    if (!verdict) return nothing;
    const share = shareOf(verdict);
    const used = share === undefined ? '' : `${writeUtilisation(share, verdict.holds)} `;
    return this.#way(
      item,
      `governs ${of}: ${labelOf(item)}`,
      verdict.holds ? '' : 'bad',
      html`governs <span>${drawMarkup(math(symbolMath(localName(item))))}</span> <b>${used}${verdict.holds ? 'holds' : 'fails'}</b>`,
    );
  }

  #kept(item: Item): TemplateResult {
    const shown = resultText(this.session.notebook, item, this.session.units);
    return this.#way(
      item,
      `followed: ${labelOf(item)}`,
      '',
      html`<span>${drawMarkup(math(symbolMath(localName(item))))}</span> = <b>${quantityText(shown)}</b>`,
    );
  }

  #way(item: Item, title: string, kind: string, words: TemplateResult): TemplateResult {
    const go = (): void => {
      const place = placeOfId(this.session.notebook, item.id);
      if (place) this.session.jumpTo(place);
    };
    return html`<button type="button" class=${kind} title=${title} @click=${go}>${words}</button>`;
  }
}

customElements.define('quay-in-sight', InSight);

declare global {
  interface HTMLElementTagNameMap {
    'quay-in-sight': InSight;
  }
}
