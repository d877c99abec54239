import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import { type Draft, type DraftUnit, draftOf, settingsEdit, troublesOf } from './book-settings-draft.ts';

const systems = [
  { system: 'SI', label: 'SI' },
  { system: 'US', label: 'US customary' },
] as const;

const printings = [
  { printedTables: 'short', label: 'the rows that matter' },
  { printedTables: 'whole', label: 'all rows' },
] as const;

/** What holds for the whole book: system of units, currency, units of its own, datums. Nothing changes until it is kept. */
export class BookSettings extends LitElement {
  static override properties = {
    session: { attribute: false },
    draft: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      .units {
        display: grid;
        grid-template-columns: 7rem 9rem minmax(0, 1fr) auto;
        gap: 6px 10px;
        align-items: center;
      }
      .units .trouble {
        grid-column: 1 / -1;
      }
      /* Without room for four columns the note stands below what it is a note on. */
      @media (width < 40rem) {
        .units {
          grid-template-columns: 6rem minmax(0, 1fr) auto;
        }
        .units :is(.definition, .note) {
          grid-column: span 2;
        }
      }
    `,
  ];
  declare session: Session;
  declare draft: Draft | undefined;
  declare refusal: string;

  constructor() {
    super();
    this.draft = undefined;
    this.refusal = '';
  }

  show(): void {
    this.draft = draftOf(this.session.notebook.book.settings);
    this.refusal = '';
    void this.updateComplete.then(() => showModal(this.renderRoot.querySelector('dialog')));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // What was refused stands there no more once anything is changed.
    if (changed.size > 0 && !changed.has('refusal')) this.refusal = '';
  }

  override render(): TemplateResult {
    const { draft } = this;
    return html`<dialog aria-labelledby="title" @close=${this.#closed}>
      <h2 id="title">Book</h2>
      ${draft ? this.#fields(draft) : nothing}
    </dialog>`;
  }

  #fields(draft: Draft): TemplateResult {
    const troubles = troublesOf(draft);
    const sound = [troubles.currency, troubles.datums, ...troubles.units].every((words) => words === '');
    return html`<fieldset class="choices">
        <legend>Units of results that name none</legend>
        ${systems.map(
          ({ system, label }) => html`<label>
            <input
              type="radio"
              name="system"
              ?autofocus=${draft.system === system}
              .checked=${draft.system === system}
              @change=${() => this.#change({ system })}
            />${label}
          </label>`,
        )}
      </fieldset>
      <label class="field short">
        Currency of $
        <input
          .value=${draft.currency}
          maxlength="3"
          autocomplete="off"
          aria-invalid=${troubles.currency !== ''}
          @input=${(event: Event) => this.#change({ currency: typedIn(event) })}
        />
      </label>
      ${trouble(troubles.currency)}
      <h3>Units of this book</h3>
      <div class="units">
        ${draft.units.length > 0 ? html`<span class="head">Symbol</span><span class="head definition">Is</span><span class="head note">Note</span><span></span>` : nothing}
        ${draft.units.map((unit, at) => this.#unit(unit, at, troubles.units[at] ?? ''))}
      </div>
      <p class="quiet">
        “Is” names a quantity, as in “10 h”; “base” makes a kind of quantity of its own, as bank cubic yards are.
      </p>
      <button type="button" class="add" @click=${this.#add}>Add a unit</button>
      <label class="field">
        Datums of elevations, apart by commas
        <input
          .value=${draft.datums}
          aria-invalid=${troubles.datums !== ''}
          @input=${(event: Event) => this.#change({ datums: typedIn(event) })}
        />
      </label>
      ${trouble(troubles.datums)}
      <fieldset class="choices">
        <legend>Long calculated tables on paper</legend>
        ${printings.map(
          ({ printedTables, label }) => html`<label>
            <input
              type="radio"
              name="printing"
              .checked=${draft.printedTables === printedTables}
              @change=${() => this.#change({ printedTables })}
            />${label}
          </label>`,
        )}
      </fieldset>
      ${trouble(this.refusal)}
      <form method="dialog" class="buttons">
        <button>Cancel</button>
        <button type="button" class="main" ?disabled=${!sound} @click=${this.#keep}>Keep</button>
      </form>`;
  }

  #unit(unit: DraftUnit, at: number, words: string): TemplateResult {
    const field = (name: keyof DraftUnit, label: string) => html`<input
      class=${name}
      .value=${unit[name]}
      aria-label=${`${label} of unit ${at + 1}`}
      aria-invalid=${name !== 'note' && words !== ''}
      @input=${(event: Event) => this.#changeUnit(at, { [name]: typedIn(event) })}
    />`;
    return html`${field('symbol', 'symbol')} ${field('definition', 'definition')} ${field('note', 'note')}
      <button type="button" class="small" aria-label=${`take out unit ${at + 1}`} @click=${() => this.#remove(at)}>
        take out
      </button>
      ${trouble(words)}`;
  }

  #change(changed: Partial<Draft>): void {
    if (this.draft) this.draft = { ...this.draft, ...changed };
  }

  #changeUnit(at: number, changed: Partial<DraftUnit>): void {
    const units = this.draft?.units ?? [];
    this.#change({ units: units.map((unit, index) => (index === at ? { ...unit, ...changed } : unit)) });
  }

  #remove(at: number): void {
    this.#change({ units: (this.draft?.units ?? []).filter((_, index) => index !== at) });
    this.renderRoot.querySelector<HTMLElement>('.add')?.focus();
  }

  readonly #add = (): void => {
    this.#change({ units: [...(this.draft?.units ?? []), { symbol: '', definition: '', note: '' }] });
    void this.updateComplete.then(() =>
      [...this.renderRoot.querySelectorAll<HTMLElement>('.units input')].at(-3)?.focus(),
    );
  };

  readonly #keep = (): void => {
    if (!this.draft) return;
    const edit = settingsEdit(this.session.notebook.book, this.draft);
    const applied = edit && this.session.apply(edit);
    if (applied && !applied.ok)
      this.refusal = applied.problems.map(({ message, hints }) => [message, ...hints].join('; ')).join('. ');
    else this.renderRoot.querySelector('dialog')?.close();
  };

  readonly #closed = (): void => {
    this.draft = undefined;
  };
}

function typedIn(event: Event): string {
  return (event.target as HTMLInputElement).value;
}

function trouble(words: string): TemplateResult | typeof nothing {
  return words === '' ? nothing : html`<p class="trouble" role="status">${words}</p>`;
}
