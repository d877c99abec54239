import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { CellPlace } from '../session/place.ts';
import type { Session } from '../session/session.ts';
import type { CellKind, Commit } from '../sheet/editing/cell-edit.ts';
import { choiceOptions } from './choice-options.ts';
import { entryReader } from './entry-reader.ts';
import { formulaDesk } from './formula-desk.ts';
import { loadFormulaField } from './load-formula-field.ts';
import { nameReader } from './name-reader.ts';
import { itemOfPlace } from './place-item.ts';
import type { FormulaDesk } from './quay-formula-field.ts';
import './quay-choice-field.ts';
import './quay-input-field.ts';
import type { QuayInputField, SelectedText } from './quay-input-field.ts';
import type { Reader } from './reader.ts';
import { unitReader } from './unit-reader.ts';

type Kind = Exclude<CellKind, 'prose'>;

const silent: Reader = { note: () => undefined };

const words: Readonly<Record<Kind, string>> = {
  formula: 'formula',
  entry: 'value',
  unit: 'unit',
  name: 'symbol',
  text: 'text',
  choice: 'choice',
};

/**
 * The editor of a cell, for each kind of cell its field. Says `commit` with what was typed and where the person goes
 * on, or `cancel`. A first formula is typed into a plain field until its editor has come.
 */
export class QuayCellEditor extends LitElement {
  static override properties = {
    session: { attribute: false },
    kind: { attribute: false },
    value: { attribute: false },
    place: { attribute: false },
    seed: { attribute: false },
    formulas: { state: true },
  };

  declare session: Session;
  declare kind: Kind;
  declare value: string;
  declare place: CellPlace;
  /** The character that began the edit by typing over. */
  declare seed: string | undefined;
  /** Whether the formula editor has come. */
  declare formulas: boolean;
  #reader: Reader = silent;
  #desk: FormulaDesk | undefined;
  #text = '';
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
    const { session, place, kind } = this;
    this.#text = this.seed ?? this.value;
    this.#selected = undefined;
    this.#desk = kind === 'formula' ? formulaDesk(session, place) : undefined;
    this.#reader = this.#readerOf(kind);
    if (kind === 'formula' && !this.formulas)
      void loadFormulaField().then(() => {
        this.formulas = true;
      });
  }

  override render(): TemplateResult {
    const { kind, value, seed } = this;
    const item = itemOfPlace(this.session.notebook, this.place);
    const of = item ? ` of ${item.id.slice(item.sheet.length + 1)}` : '';
    const label = `${words[kind]}${of}`;
    if (this.#desk && this.formulas)
      return html`<quay-formula-field
        .label=${label}
        .value=${this.#text}
        .selected=${this.#selected}
        .desk=${this.#desk}
        @commit=${this.#commit}
        @cancel=${this.#cancel}
      ></quay-formula-field>`;
    if (kind === 'choice')
      return html`<quay-choice-field
        .label=${label}
        .value=${value}
        .seed=${seed}
        .options=${choiceOptions(this.session.notebook, this.place)}
        @commit=${this.#commit}
        @cancel=${this.#cancel}
      ></quay-choice-field>`;
    return html`<quay-input-field
      .label=${label}
      .value=${value}
      .seed=${seed}
      .reader=${this.#reader}
      @commit=${this.#commit}
      @cancel=${this.#cancel}
    ></quay-input-field>`;
  }

  #readerOf(kind: Kind): Reader {
    const { session, place } = this;
    switch (kind) {
      case 'entry':
        return entryReader(session, place);
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

  /** Keeps what was typed into the plain field when the formula editor takes its place. */
  #takeOver(): void {
    const plain = this.renderRoot.querySelector<QuayInputField>('quay-input-field');
    if (plain) ({ text: this.#text, selected: this.#selected } = plain.handOver());
  }

  readonly #commit = (event: CustomEvent<Commit>): void => {
    this.dispatchEvent(new CustomEvent<Commit>('commit', { detail: event.detail }));
  };

  readonly #cancel = (): void => {
    this.dispatchEvent(new CustomEvent('cancel'));
  };
}

customElements.define('quay-cell-editor', QuayCellEditor);
