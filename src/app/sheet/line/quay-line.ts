import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Item } from '../../../notebook/index.ts';
import { sourceOfLine } from '../../../record/index.ts';
import type { Session } from '../../session/session.ts';
import { drawSign } from '../../style/signs.ts';
import type { EditInHand } from '../../view-model/edit-in-hand.ts';
import { cellEditor } from '../editing/cell-editor.ts';
import type { OnPaper } from '../paper/on-paper.ts';
import { lineFields } from '../place/grid-map.ts';
import type { SheetHost } from '../sheet-host.ts';
import { drawCheckMark } from './check-mark.ts';
import { drawSymbol } from './formula-view.ts';
import { lineBody } from './line-body.ts';
import type { LineSource, Room } from './line-source.ts';
import { lineMargin } from './link-note.ts';
import { drawOriginMark } from './origin-mark.ts';

/**
 * One line of the page, a row of the grid: reference, symbol, description, calculation, result, unit, mark. It draws
 * into the sheet's own tree, whose styles and events it shares, and again only when the sheet tells it to.
 */
export class QuayLine extends LitElement {
  static override properties = {
    host: { attribute: false },
    session: { attribute: false },
    sheet: { attribute: false },
    block: { attribute: false },
    source: { attribute: false },
    table: { attribute: false },
    active: { attribute: false },
    expanded: { attribute: false },
    stop: { attribute: false },
    selected: { attribute: false },
    edit: { attribute: false },
    room: { attribute: false },
    paper: { attribute: false },
  };

  declare host: SheetHost;
  declare session: Session;
  declare sheet: string;
  declare block: string;
  declare source: LineSource;
  /** The name of the table whose column this line explains; empty for a line of a block. */
  declare table: string;
  /** The field the person is on; empty while the person is elsewhere. */
  declare active: string;
  /** Whether the line shows what it hides elsewhere, because the person rests on it. */
  declare expanded: boolean;
  /** The field that the Tab key reaches; empty if it passes this line by. */
  declare stop: string;
  /** The fields within the selected range. */
  declare selected: readonly string[];
  declare edit: EditInHand | undefined;
  declare room: Room;
  /** Given where the page is laid out for paper. */
  declare paper: OnPaper | undefined;

  /** The item of the model that was drawn last; another one asks for another drawing. */
  drawnItem: Item | undefined;

  constructor() {
    super();
    this.table = '';
    this.active = '';
    this.expanded = false;
    this.stop = '';
    this.selected = [];
    this.edit = undefined;
    this.paper = undefined;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  /** The id the model knows this line by. */
  get modelId(): string {
    return `${this.sheet}.${this.table === '' ? '' : `${this.table}.`}${this.source.name}`;
  }

  get fields(): readonly string[] {
    return lineFields[this.source.kind === 'series' ? 'calc' : this.source.kind];
  }

  override render(): TemplateResult {
    const { session, sheet, source, room, paper } = this;
    const item = session.notebook.model.items.get(this.modelId);
    const active = this.active !== '';
    this.drawnItem = item;
    const full = paper !== undefined || this.expanded;
    const numbers = paper ? paper.works(this.modelId) : this.expanded;
    const body = lineBody({ session, sheet, source, item, full, numbers, paper, room });
    const edited = this.edit?.place.field === 'value' ? this.edit : undefined;
    const wide = edited?.kind === 'formula';
    const margin = lineMargin({ session, item, paper }, this.#reference(item));
    // Paper has no margin: what would stand there stands behind the description, and so does the unit of a column.
    const [unit, unitBehind] = paper && this.table !== '' ? ['', body.unit] : [body.unit, ''];
    this.className = `line ${source.kind}${this.table === '' ? '' : ' column'} ${wide ? 'under' : body.layout}${body.told ? ' told' : ''}${active ? ' active' : ''}`;
    return html`
      ${paper ? nothing : this.#cell('reference', 'reference', margin)}
      ${this.#cell('name', 'symbol', drawSymbol(source.name))}
      ${this.#cell('label', 'description', paper ? html`<span>${source.label ?? ''}</span> ${drawOriginMark(session, this.modelId)}${unitBehind === '' ? nothing : html`<span class="unit-behind">${unitBehind}</span>`} <span class="cited">${margin}</span>` : html`${source.label ?? ''}`)}
      ${this.#cell('value', 'value', body.value)}
      ${
        this.fields.includes('unit')
          ? this.#cell('unit', 'unit', html`${unit}`)
          : html`<div class="cell unit" role="gridcell" aria-colindex="5" aria-readonly="true">${unit}</div>`
      }
      <div class="cell mark" role="gridcell" aria-colindex="6" aria-readonly="true">
        ${body.sign ? drawSign(body.sign.sign, body.sign.words) : nothing} ${drawCheckMark(session, this.modelId)} ${drawOriginMark(session, this.modelId)}
        <button class="menu-button" type="button" tabindex="-1" data-menu aria-label=${`menu of ${source.name}`} aria-haspopup="menu">
          ${drawSign('menu')}
        </button>
      </div>
    `;
  }

  /** What stands in the margin; paper has the references of a column's methods beside each of them. */
  #reference(item: Item | undefined): string {
    const { session, source, paper } = this;
    if (paper && item?.kind === 'formula column' && item.methods) return '';
    const reference = sourceOfLine(session.notebook, source, item);
    return paper ? paper.cite(reference) : reference;
  }

  #cell(field: string, kind: string, content: TemplateResult): TemplateResult {
    const own = this.edit?.place.field === field ? this.edit : undefined;
    // The reason is asked for below the value that it is for.
    const reason = own?.kind === 'reason' ? own : undefined;
    const edit = reason ? undefined : own;
    const chosen = this.selected.includes(field);
    return html`<div
      class="cell ${kind}${edit ? ' edited' : ''}"
      role="gridcell"
      data-field=${field}
      aria-colindex=${this.fields.indexOf(field) + 1}
      aria-selected=${chosen || this.active === field ? 'true' : 'false'}
      tabindex=${this.stop === field ? '0' : '-1'}
    >
      ${edit ? cellEditor(this.session, this.host, edit) : content}
      ${reason ? html`<div class="reason-field edited">${cellEditor(this.session, this.host, reason)}</div>` : nothing}
    </div>`;
  }
}

customElements.define('quay-line', QuayLine);
