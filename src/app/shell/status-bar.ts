import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { brokenLinks, linkedLines, openLinks } from '../../notebook/index.ts';
import { countStated, countWords, findingsOf, isByStated } from '../../record/index.ts';
import { nextFinding } from '../findings/finding-places.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import type { OverviewPart } from '../view-model/page-view.ts';
import { footButtonStyles } from './foot-button-styles.ts';
import './in-sight.ts';
import { RecheckController } from './recheck-controller.ts';
import { recheckWords } from './second-engine-words.ts';
import { checkWords, computingWords, linkCounts } from './status-words.ts';

/**
 * What fails and what has a problem in the whole book, each the way to its list; what the second engine makes of it;
 * and the keys to begin with.
 */
export class StatusBar extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  static override styles = [
    footButtonStyles,
    css`
    :host {
      display: flex;
      flex-wrap: wrap;
      gap: 0 24px;
      align-items: center;
      padding: 1px 18px 1px 10px;
      border-block-start: 1px solid var(--rule);
      background: var(--paper);
      font-size: 13px;
      color: var(--ink-soft);
    }
    [role='status'] {
      display: flex;
      flex-wrap: wrap;
      gap: 0 4px;
    }
    .hint {
      margin-inline-start: auto;
    }
    /* The keys stand in the sheet of keys too, which a window without room for them has in its menu. */
    @media (width < 640px) {
      .hint {
        display: none;
      }
    }
    button {
      padding: 0 8px;
      color: inherit;
    }
    .bad {
      color: var(--bad);
      font-weight: 600;
    }
  `,
  ];

  constructor() {
    super();
    new RecheckController(this);
    new SessionController(
      this,
      ({ kind }) => kind === 'book' || kind === 'values' || kind === 'computing' || kind === 'recheck',
      'after',
    );
  }

  /** Goes to the next problem or failing check, or the one before; a book without any says so in its list. */
  goToNext(step: 1 | -1): void {
    const place = nextFinding(this.session, step);
    if (place) this.session.jumpTo(place);
    else this.session.showOverview('problems');
  }

  override render(): TemplateResult {
    const { problems, remarks, checks } = findingsOf(this.session.notebook);
    const stated = countStated(this.session.notebook);
    const byStated = checks.filter((check) => isByStated(this.session.notebook, check)).length;
    const fails = checks.some(({ verdict }) => verdict?.holds === false);
    const next = html`<kbd>F8</kbd> ${problems.length > 0 ? 'next problem' : 'next failing check'} · `;
    return html`<div role="status">
        ${this.#count('checks', checkWords(checks, this.session.computing ? 'left over' : 'done', byStated), fails)}
        ${this.#count('problems', countWords(problems.length, 'problem'), problems.length > 0)}
        ${remarks.length > 0 ? this.#count('remarks', countWords(remarks.length, 'remark'), false) : nothing}
        ${stated > 0 ? this.#count('stated', `${stated} stated`, false) : nothing}
        ${this.#links()}
      </div>
      <quay-in-sight .session=${this.session}></quay-in-sight>
      ${this.#second()}
      ${this.#computing()}
      <quay-change-notice .session=${this.session}></quay-change-notice>
      <div class="hint">
        ${fails || problems.length > 0 ? next : nothing}<kbd>F2</kbd> edit · <kbd>Ctrl+G</kbd> go to · <kbd>?</kbd> keys
      </div>`;
  }

  /** Busy until it has come to something, so that only that is announced, and nothing while the person goes on. */
  #second(): TemplateResult {
    const { words, title, isBad, isBusy } = recheckWords(this.session.recheck);
    return html`<span
      class="second ${isBad ? 'bad' : ''}"
      role="status"
      aria-busy=${isBusy}
      ><button type="button" title=${title ?? words} @click=${() => this.session.showOverview('recheck')}>${words}</button></span
    >`;
  }

  /** What links are broken and what is to be linked, both; or where there is none of these, how much is linked. */
  #links(): TemplateResult {
    const { notebook } = this.session;
    const counts = linkCounts({
      broken: brokenLinks(notebook).length,
      open: openLinks(notebook).length,
      linked: linkedLines(notebook).length,
    });
    return html`${counts.map(({ words, isBad }) => this.#count('links', words, isBad))}`;
  }

  /** How far work is that takes longer than an edit may, and how to stop it or go on. */
  #computing(): TemplateResult | typeof nothing {
    const { computing } = this.session;
    if (!computing) return nothing;
    const { isStopped } = computing;
    return html`<div role="group" aria-label="Computing">
      <span>${computingWords(computing)}</span>
      <button
        type="button"
        @click=${() => (isStopped ? this.session.resumeComputing() : this.session.stopComputing())}
      >
        ${isStopped ? 'Compute' : 'Stop'}
      </button>
    </div>`;
  }

  #count(part: OverviewPart, words: string, bad: boolean): TemplateResult {
    return html`<button
      type="button"
      class=${bad ? 'bad' : ''}
      title=${`List the ${part === 'stated' ? 'stated values' : part === 'links' ? 'linked values' : part} of the book`}
      @click=${() => this.session.showOverview(part)}
    >
      ${words}
    </button>`;
  }
}
