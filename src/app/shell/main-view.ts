import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { stopAllCases } from '../overview/case-runs.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import type { OverviewPart } from '../view-model/page-view.ts';
import { HandGuard } from './hand-guard.ts';

/** The main view: the sheet in hand on its paper, the overview of all checks, what the book is about or rests on. */
export class MainView extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session;
  #overview: OverviewPart | undefined;

  static override styles = css`
    :host {
      display: contents;
    }
  `;

  constructor() {
    super();
    new HandGuard(this);
    new SessionController(this, ({ kind }) => kind === 'place' && this.session.overview !== this.#overview);
  }

  /** What runs for a book that is left ends with it. */
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    stopAllCases(this.session);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const left = changed.get('session');
    if (left) stopAllCases(left);
  }

  override render() {
    const { session } = this;
    this.#overview = session.overview;
    const title = html`<quay-title-block slot="title-block" .session=${session}></quay-title-block>`;
    return html`${this.#page(title)}<quay-strayed-draft .session=${session}></quay-strayed-draft>`;
  }

  #page(title: TemplateResult): TemplateResult {
    const { session } = this;
    if (!session.overview) return html`<quay-sheet .session=${session}>${title}</quay-sheet>`;
    switch (session.overview) {
      case 'about':
        return html`<quay-about-page .session=${session}>${title}</quay-about-page>`;
      case 'checking':
        return html`<quay-checking-page .session=${session}>${title}</quay-checking-page>`;
      case 'origin':
        return html`<quay-origin-page .session=${session}>${title}</quay-origin-page>`;
      case 'signing':
        return html`<quay-signing-page .session=${session}>${title}</quay-signing-page>`;
      case 'recheck':
        return html`<quay-recheck-page .session=${session}>${title}</quay-recheck-page>`;
      case 'steps':
        return html`<quay-steps-page .session=${session}>${title}</quay-steps-page>`;
      case 'sources':
        return html`<quay-sources-page .session=${session}>${title}</quay-sources-page>`;
      default:
        return html`<quay-overview .session=${session}>${title}</quay-overview>`;
    }
  }
}
