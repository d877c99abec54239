import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { type ChoiceOption, choiceOptions } from '../editing/choices/choice-options.ts';
import type { Session } from '../session/session.ts';
import type { ContentKind, EditInHand, SelectedText } from '../view-model/edit-in-hand.ts';
import { samePlace } from '../view-model/place.ts';
import type { Commit, Typed } from './cell-edit.ts';
import { formulaServiceAt } from './formula/formula-service.ts';
import { loadFormulaField } from './formula/load-formula-field.ts';
import type { FormulaService } from './formula/quay-formula-field.ts';
import { entryReader, reasonReader } from './readers/entry-reader.ts';
import { nameReader } from './readers/name-reader.ts';
import { itemOfPlace } from './readers/place-item.ts';
import './fields/quay-choice-field.ts';
import './fields/quay-input-field.ts';
import type { QuayInputField } from './fields/quay-input-field.ts';
import type { Reader } from './readers/reader.ts';
import { unitReader } from './readers/unit-reader.ts';

type Kind = Exclude<ContentKind, 'prose'>;

const silent: Reader = { note: () => undefined };

const words: Readonly<Record<Kind, string>> = {
  formula: 'formula',
  entry: 'value',
  unit: 'unit',
  name: 'symbol',
  text: 'text',
  choice: 'choice',
  reason: 'reason',
};

/**
 * The editor of a cell, for each kind of cell its field. It passes on what the fields say: `typed` with each change,
 * `commit` with where the person goes on, `cancel`, and `leave` when the focus went elsewhere. A first formula is typed
 * into a plain field until its editor has come.
 */
export class QuayCellEditor extends LitElement {
  static override properties = {
    session: { attribute: false },
    hand: { attribute: false },
    formulas: { state: true },
  };

  /** A block: inline, it would leave an empty line above the field it holds. */
  static override styles = css`
    :host {
      display: block;
    }
  `;

  declare session: Session;
  declare hand: EditInHand;
  /** Whether the formula editor has come. */
  declare formulas: boolean;
  #reader: Reader = silent;
  #service: FormulaService | undefined;
  #options: readonly ChoiceOption[] = [];
  #selected: SelectedText | undefined;

  constructor() {
    super();
    this.formulas = customElements.get('quay-formula-field') !== undefined;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('formulas') && changed.size === 1) {
      this.#takeOver();
      return;
    }
    const before = changed.get('hand');
    const { session, hand } = this;
    if (before && samePlace(before.place, hand.place) && before.kind === hand.kind) return;
    this.#selected = hand.selected;
    this.#service = hand.kind === 'formula' ? formulaServiceAt(session, hand.place, hand) : undefined;
    this.#reader = this.#readerOf(hand.kind as Kind);
    this.#options = hand.kind === 'choice' ? choiceOptions(session.notebook, hand.place) : [];
    if (hand.kind === 'formula' && !this.formulas)
      void loadFormulaField().then(() => {
        this.formulas = true;
      });
  }

  override render(): TemplateResult {
    const { hand } = this;
    const { kind, draft, held, letters, typedOver } = hand;
    const item = itemOfPlace(this.session.notebook, hand.place);
    const of = item ? ` of ${item.id.slice(item.sheet.length + 1)}` : '';
    const label = `${words[kind as Kind]}${of}`;
    if (this.#service && this.formulas)
      return html`<quay-formula-field
        .label=${label}
        .text=${draft}
        .selected=${this.#selected}
        .service=${this.#service}
        .remarks=${hand.remarks}
        @typed=${this.#pass}
        @commit=${this.#pass}
        @cancel=${this.#pass}
        @leave=${this.#pass}
      ></quay-formula-field>`;
    if (kind === 'choice')
      return html`<quay-choice-field
        .label=${label}
        .text=${draft}
        .held=${held}
        .letters=${letters ?? ''}
        .options=${this.#options}
        @typed=${this.#pass}
        @commit=${this.#pass}
        @cancel=${this.#pass}
        @leave=${this.#pass}
      ></quay-choice-field>`;
    return html`<quay-input-field
      .label=${label}
      .text=${draft}
      .held=${held}
      .typedOver=${typedOver}
      .reader=${this.#reader}
      .remarks=${hand.remarks}
      @typed=${this.#pass}
      @commit=${this.#pass}
      @cancel=${this.#pass}
      @leave=${this.#pass}
    ></quay-input-field>`;
  }

  /** Gives the focus back to the field. */
  override focus(): void {
    const [field] = this.renderRoot.children;
    if (field instanceof HTMLElement) field.focus();
  }

  /** Whether the line below the field says already why what is typed was refused. */
  get isRefusalSaid(): boolean {
    const [field] = this.renderRoot.children;
    return field !== undefined && 'isRefusalSaid' in field && field.isRefusalSaid === true;
  }

  #readerOf(kind: Kind): Reader {
    const { session } = this;
    const { place } = this.hand;
    switch (kind) {
      case 'entry':
        return entryReader(session, place, this.hand);
      case 'reason':
        return reasonReader(session, this.hand);
      case 'unit':
        return unitReader(session, place);
      case 'name':
        return nameReader(session, place);
      case 'formula':
      case 'text':
      case 'choice':
        return silent;
    }
  }

  /** Takes over what was typed into the plain field when the formula editor takes its place. */
  #takeOver(): void {
    const plain = this.renderRoot.querySelector<QuayInputField>('quay-input-field');
    if (!plain) return;
    const { text, selected } = plain.handOver();
    this.hand = { ...this.hand, draft: text };
    this.#selected = selected;
  }

  readonly #pass = ({ type, detail }: CustomEvent<Commit | Typed | null>): void => {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  };
}

customElements.define('quay-cell-editor', QuayCellEditor);
