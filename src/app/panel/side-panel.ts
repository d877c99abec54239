import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Fix, Problem } from '../../diagnostics/index.ts';
import { aboutOf } from '../../document/index.ts';
import { type Item, waits } from '../../notebook/index.ts';
import {
  choiceWords,
  failsBy,
  labelOf,
  localName,
  math,
  problemInWords,
  quantityText,
  resultText,
  sourceOfLine,
  symbolMath,
} from '../../record/index.ts';
import { mendAt } from '../editing/cells/remedy.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { MATHS_SIZE } from '../sheet/paper/page-measure.ts';
import { flowStyles } from '../style/flow-styles.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { OwnWidth } from '../style/own-width.ts';
import { dependsOn, feedsOf, itemAt, placeOfId } from '../view-model/places.ts';
import { drawNumbers, drawSymbols } from './formula-part.ts';
import { drawHand } from './hand-view.ts';
import { drawLink } from './link-view.ts';
import { drawOptionsLeft } from './methods/options-left.ts';
import type { QuayMethods } from './methods/quay-methods.ts';
import { drawOrigin } from './origin-view.ts';
import { panelStyles } from './panel-styles.ts';
import { drawStated } from './stated-view.ts';
import { TrialController } from './trial-controller.ts';
import { drawTrial } from './trial-view.ts';

/** So many rows of a column in which the second engine has something else are told. */
const MOST_FINDINGS = 5;

/** Explains the one value in hand: formula, numbers, what it depends on, what it feeds, its source, its problems. */
export class SidePanel extends LitElement {
  static override properties = { session: { attribute: false }, room: { state: true } };
  declare session: Session;
  /** How many em of formula fit. */
  declare room: number;
  readonly #trials: TrialController;

  static override styles = [mathsStyles, flowStyles, panelStyles];

  constructor() {
    super();
    this.room = 15;
    new OwnWidth(this, (width) => {
      // A folded panel has no width.
      if (width === 0) return;
      // Less what the "=" before the numbers takes.
      this.room = Math.floor(width / MATHS_SIZE - 1);
    });
    new SessionController(this, ({ kind }) => kind !== 'kept', 'after');
    this.#trials = new TrialController(this);
  }

  /** What to say of a value that is tried, when the book is left; undefined while none is. */
  farewell(): string | undefined {
    return this.#trials.farewell('you left the book');
  }

  /** Gives the focus to the methods of the line in hand; a line of one formula is asked what they are to go by. */
  async goToMethods(): Promise<void> {
    this.requestUpdate();
    await this.updateComplete;
    this.renderRoot.querySelector<QuayMethods>('quay-methods')?.enter();
  }

  override render() {
    const item = itemAt(this.session.notebook, this.session.place);
    return html`<div class="told" role="status">${this.#trials.words ?? nothing}</div>
      ${item ? this.#item(item) : this.#empty()}`;
  }

  #item(item: Item): TemplateResult {
    const source = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
    const shown = resultText(this.session.notebook, item, this.session.units);
    return html`
      <h2 aria-label=${localName(item)}>${drawMarkup(math(symbolMath(localName(item))))}</h2>
      <p class="label">${labelOf(item)}</p>
      <p class="value"><b>${shown.number}</b>${shown.unit === '°' ? '' : ' '}${shown.unit} ${this.#sight(item)}</p>
      ${this.#readAs(item)} ${this.#excess(item)} ${this.#computedTwice(item)}
      ${this.#problems(item)} ${item.kind === 'input' ? drawOptionsLeft(this.session, item) : nothing}
      ${item.kind === 'input' ? drawTrial(this.session, item, this.#trials) : nothing}
      ${'checked' in item && this.session.place ? drawStated(this.session, item, this.session.place) : nothing}
      ${drawLink(this.session, item)} ${drawOrigin(this.session, item, this.room)} ${drawHand(this.session, item)} ${this.#computing(item)}
      ${this.#list('Depends on', 'source', dependsOn(this.session.notebook, item))}
      ${this.#list('Feeds', 'fed', feedsOf(this.session.notebook, item.id))}
      ${this.#source('methods' in item && item.methods ? '' : sourceOfLine(this.session.notebook, source, item))}
      ${source.note ? html`<h3>Note</h3><p>${source.note}</p>` : nothing} ${this.#cautions()}
    `;
  }

  /** Keeps the value in sight at the foot of the page, or no longer. */
  #sight({ id }: Item): TemplateResult {
    const { inSight } = this.session;
    const isKept = inSight === id;
    return html`<button
      type="button"
      class="sight"
      aria-pressed=${isKept}
      title="Shows this value at the foot of the page, whatever is edited"
      @click=${() => this.session.keepInSight(isKept ? undefined : id)}
    >${isKept ? 'followed below' : 'follow below'}</button>`;
  }

  /** What formulas compare a choice with, where a person reads other words. */
  #readAs(item: Item) {
    if (item.kind !== 'input' || item.row.kind !== 'choice') return nothing;
    const { entry } = item.row;
    return choiceWords(item.row) === entry
      ? nothing
      : html`<p class="quiet">formulas read it as “${entry}”</p>`;
  }

  /** How far a check is from holding, on which values beyond their ranges it rests, and which stated ones ease it. */
  #excess({ id, sheet }: Item) {
    const { notebook, units } = this.session;
    const verdict = notebook.verdict(id);
    const by = verdict && failsBy(verdict, units, notebook.model.registry);
    const remarks = [verdict?.outOfRange, verdict && notebook.easedBy(id)].flatMap((one) => one ?? []);
    return html`${by === undefined ? nothing : html`<p class="excess">fails by ${by}</p>`}
      ${remarks.map((one) => html`<p class="problem warning" role="note">${problemInWords(one, notebook, sheet).message}</p>`)}`;
  }

  /** What the second engine has of a line that the first one has otherwise. */
  #computedTwice({ id }: Item) {
    const { recheck } = this.session;
    if (recheck.kind !== 'done') return nothing;
    return recheck.report.findings
      .filter((finding) => finding.id === id)
      .slice(0, MOST_FINDINGS)
      .map(({ message }) => html`<p class="problem" role="note">${message}</p>`);
  }

  #empty() {
    return html`<p class="quiet">Choose a line to see where its number comes from and where it goes.</p>
      ${this.#cautions()}`;
  }

  /** The formula of a line of one, and the methods of a line that has them or may. */
  #computing(item: Item) {
    if (!('checked' in item)) return nothing;
    const one = !item.methods && item.checked.text.trim() !== '';
    return html`${one ? this.#formula(item) : nothing}
      <quay-methods .session=${this.session} .room=${this.room}></quay-methods>`;
  }

  #source(reference: string) {
    return reference !== '' ? html`<h3>Source</h3><p>${reference}</p>` : nothing;
  }

  #formula(item: Extract<Item, { checked: unknown }>) {
    const { session, room } = this;
    return html`<h3>Formula</h3>
      ${drawSymbols(item.checked, room)}
      <pre tabindex="0" aria-label="Formula as written">${item.checked.text}</pre>
      ${drawNumbers(session, item, room)}`;
  }

  #list(title: string, flow: 'source' | 'fed', items: readonly Item[]) {
    if (items.length === 0) return nothing;
    return html`<h3 class="flow" data-flow=${flow}>${title}</h3>
      <ul>
        ${items.map((item) => {
          const shown = resultText(this.session.notebook, item, this.session.units);
          const other = item.sheet === this.session.sheet ? undefined : this.#titleOf(item.sheet);
          return html`<li>
            <button
              @click=${() => this.#go(item)}
              title=${labelOf(item)}
            >
              <span>
                ${drawMarkup(math(symbolMath(localName(item))))}
                <span class="unseen">${labelOf(item)}</span>
                ${other === undefined ? nothing : html`<span class="sheet">${other}</span>`}
              </span>
              <span class="number">${quantityText(shown)}</span>
            </button>
          </li>`;
        })}
      </ul>`;
  }

  #titleOf(key: string): string {
    return this.session.notebook.book.sheets.find((sheet) => sheet.key === key)?.title ?? key;
  }

  #go(item: Item): void {
    const place = placeOfId(this.session.notebook, item.id);
    if (place) this.session.jumpTo(place);
  }

  #problems(item: Item) {
    const all = this.session.notebook.problems().filter((found) => found.cell === item.id);
    if (all.length === 0) return nothing;
    return all.map((found) => this.#problem(item, found));
  }

  #problem(item: Item, told: Problem): TemplateResult {
    const found = problemInWords(told, this.session.notebook, item.sheet);
    const mends = item.kind === 'formula' || (item.kind === 'input' && item.row.kind === 'given');
    const kind =
      found.severity === 'warning' ? 'warning' : waits(found, this.session.notebook) ? 'waits' : '';
    return html`<div class="problem ${kind}" role="note">
      <p>${found.message}</p>
      ${found.hints.map((hint) => html`<p class="hint">${hint}</p>`)}
      ${
        mends
          ? found.fixes.map(
              (fix) => html`<button class="fix" @click=${() => this.#mend(item, fix)}>
              ${fix.label}
            </button>`,
            )
          : nothing
      }
    </div>`;
  }

  #mend(item: Item, fix: Fix): void {
    const place = placeOfId(this.session.notebook, item.id);
    const edit = place && mendAt(this.session.notebook, place, fix);
    if (edit?.ok) this.session.apply(edit.value);
  }

  #cautions() {
    const { notebook, sheet, overview } = this.session;
    const about = overview ? undefined : aboutOf(notebook.book, sheet);
    if (!about || about.cautions.length === 0) return nothing;
    return html`<h3>Cautions</h3>
      ${about.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}`;
  }
}
