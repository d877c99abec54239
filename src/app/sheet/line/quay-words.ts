import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Part, Prose } from '../../../document/index.ts';
import type { Session } from '../../session/session.ts';
import { drawSign, type Sign } from '../../style/signs.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { cellEditor } from '../editing/cell-editor.ts';
import type { SheetHost } from '../sheet-host.ts';
import { drawPicture } from './picture.ts';

/** What stands in the margin beside prose of a role, and its sign. */
const roles: Readonly<
  Record<Prose['role'], { readonly margin: string; readonly sign?: Sign; readonly blank: string }>
> = {
  text: { margin: '', blank: 'text' },
  heading: { margin: '', blank: 'heading' },
  caution: { margin: 'Caution', sign: 'warning', blank: 'what can hurt someone, and what to do about it' },
  assumption: { margin: 'Assumed', blank: 'what is taken for granted here' },
  'open item': { margin: 'Open', sign: 'open', blank: 'what is still to be settled' },
  source: { margin: 'Source', blank: 'work, edition, clause, page' },
};

/** A row of the grid that is one cell of words: prose, the title of a block, a picture under its title. */
export class QuayWords extends LitElement {
  static override properties = {
    host: { attribute: false },
    session: { attribute: false },
    sheet: { attribute: false },
    source: { attribute: false },
    active: { attribute: false },
    stop: { attribute: false },
    selected: { attribute: false },
    edit: { attribute: false },
    stamp: { attribute: false },
  };

  declare host: SheetHost;
  declare session: Session;
  declare sheet: string;
  declare source: Exclude<Part, { kind: 'table' }>;
  declare active: string;
  declare stop: string;
  declare selected: readonly string[];
  declare edit: EditInHand | undefined;
  /** Grows when values that a picture shows may have changed. */
  declare stamp: number;

  constructor() {
    super();
    this.active = '';
    this.stop = '';
    this.selected = [];
    this.edit = undefined;
    this.stamp = 0;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override render(): TemplateResult {
    const { source } = this;
    const prose = source.kind === 'prose';
    const field = prose ? 'text' : 'title';
    const role = prose ? roles[source.role] : undefined;
    const classes = prose ? source.role.replace(' ', '-') : source.kind === 'rows' ? 'part-title' : 'picture';
    this.className = `${classes} words-row${this.active === '' ? '' : ' active'}`;
    return html`
      <div class="margin" aria-hidden="true">${role?.margin ?? ''}</div>
      <div
        class="cell ${field}${this.edit ? ' edited' : ''}"
        role="gridcell"
        data-field=${field}
        aria-colindex="1"
        aria-selected=${this.active !== '' || this.selected.length > 0 ? 'true' : 'false'}
        tabindex=${this.stop === field ? '0' : '-1'}
      >
        ${role?.sign ? drawSign(role.sign, role.margin) : nothing}
        ${this.edit ? cellEditor(this.session, this.host, this.edit) : this.#words(role?.blank ?? 'title')}
      </div>
      <div class="cell mark" role="gridcell" aria-colindex="2" aria-readonly="true">
        <button class="menu-button" type="button" tabindex="-1" data-menu aria-label=${`menu of ${this.#named}`} aria-haspopup="menu">
          ${drawSign('menu')}
        </button>
      </div>
      ${
        source.kind === 'figure' || source.kind === 'chart'
          ? drawPicture(this.session, this.sheet, source)
          : nothing
      }
    `;
  }

  /** What the menu calls this part: its title, or the first words. */
  get #named(): string {
    const { source } = this;
    const text = source.kind === 'prose' ? source.text : (source.title ?? '');
    return text.slice(0, 40) || (source.kind === 'prose' ? source.role : source.kind);
  }

  #words(blank: string): TemplateResult {
    const { source } = this;
    const text = source.kind === 'prose' ? source.text : (source.title ?? '');
    if (text === '') return html`<span class="quiet">${blank}</span>`;
    if (source.kind !== 'prose' || source.role === 'heading') return html`<h3>${text}</h3>`;
    return html`<div class="paragraphs">${text.split(/\n+/).map((paragraph) => html`<p>${paragraph}</p>`)}</div>`;
  }
}

customElements.define('quay-words', QuayWords);
