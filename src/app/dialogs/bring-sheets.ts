import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Outcome } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import { type BroughtSheets, bringSheets, type Notebook, openNotebook } from '../../notebook/index.ts';
import { groupedSheets } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import type { BookStore } from '../storage/book-store.ts';
import { reasonOf } from '../storage/storage-error.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { type OfferedBook, offeredTemplates, offerStoredBooks, type SheetSource } from './bring-source.ts';

/** So many of the values that do not come along are named. */
const NAMED = 6;

/** Asks which sheets of a template, of another book kept here or of a file are brought into the book, and brings them. */
export class BringSheets extends LitElement {
  static override properties = {
    session: { attribute: false },
    store: { attribute: false },
    from: { attribute: false },
    behind: { attribute: false },
    offered: { state: true },
    source: { state: true },
    wanted: { state: true },
    trouble: { state: true },
    busy: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      :host {
        display: block;
      }
      .sheets {
        max-height: min(21rem, 42vh);
        margin-block-start: 6px;
        /* Room for the ring of what has the focus, which the scrolling would cut off. */
        margin-inline-start: -5px;
        padding-inline-start: 5px;
        overflow: auto;
      }
      .sheets label {
        display: block;
        min-height: 24px;
      }
      h3 {
        margin: 10px 0 2px;
        color: var(--ink-soft);
        font-size: 13px;
      }
      .all {
        display: flex;
        gap: 16px;
        margin-block-start: 14px;
        align-items: baseline;
        color: var(--ink-soft);
        font-size: 13px;
      }
      .all button {
        min-height: 24px;
      }
      .account {
        min-height: 2.8em;
        margin-block-start: 12px;
      }
    `,
  ];
  declare session: Session;
  declare store: BookStore;
  declare from: Exclude<SheetSource, 'blank'>;
  /** The key of the sheet behind which they go; at the end without one. */
  declare behind: string | undefined;
  declare offered: readonly OfferedBook[];
  /** The book that is chosen, computed for the values that its sheets take from one another. */
  declare source: Notebook | undefined;
  declare wanted: ReadonlySet<string>;
  declare trouble: string;
  declare busy: boolean;
  /** Counts choices: a book that comes after another was chosen is let go of. */
  #turn = 0;

  constructor() {
    super();
    this.behind = undefined;
    this.#forget();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('from')) void this.#offer();
  }

  override render(): TemplateResult {
    const plan = this.#plan();
    const refused =
      plan?.ok === false ? plan.problems.map(({ message, hints }) => [message, ...hints].join('; ')) : [];
    const trouble = this.trouble === '' ? refused.join('. ') : this.trouble;
    const count = this.wanted.size;
    return html`${this.#chooser()} ${this.source ? this.#sheets(this.source.book) : nothing}
      <p class="quiet account" role="status">${this.busy ? 'reading the book …' : plan?.ok ? this.#account(plan.value) : nothing}</p>
      ${trouble === '' ? nothing : html`<p class="trouble" role="alert">${trouble}</p>`}
      <div class="buttons">
        <button type="button" @click=${() => this.#end(false)}>Cancel</button>
        <button type="button" class="main" ?disabled=${!plan?.ok} @click=${() => plan?.ok && this.#add(plan.value)}>
          ${count > 1 ? `Add ${count} sheets` : 'Add'}
        </button>
      </div>`;
  }

  #chooser(): TemplateResult {
    if (this.from === 'file')
      return html`<p class="field"><button type="button" autofocus @click=${this.#file}>Choose a file …</button></p>`;
    const words = this.from === 'template' ? 'Template' : 'Book';
    if (this.offered.length === 0)
      return html`<p class="quiet">${this.busy ? '' : 'No other book is kept in this browser.'}</p>`;
    return html`<label class="field"
      >${words}<select @change=${this.#chosen}>
        <option value="">choose …</option>
        ${this.offered.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}
      </select>
    </label>`;
  }

  #sheets(book: Book): TemplateResult {
    const all = book.sheets.map(({ key }) => key);
    return html`<div class="all">
        <span>Sheets of “${book.title.subject || book.title.project || 'Untitled book'}”</span>
        <button type="button" class="small" @click=${() => this.#want(all)}>all</button>
        <button type="button" class="small" @click=${() => this.#want([])}>none</button>
      </div>
      <div class="choices sheets" role="group" aria-label="Sheets to bring">
        ${[...groupedSheets(book)].map(
          ([group, sheets]) => html`${group === '' ? nothing : html`<h3>${group}</h3>`}
            ${sheets.map(
              ({ key, title }) => html`<label>
                <input
                  type="checkbox"
                  .checked=${this.wanted.has(key)}
                  @change=${({ target }: Event) => this.#toggle(key, (target as HTMLInputElement).checked)}
                />${title || key}
              </label>`,
            )}`,
        )}
      </div>`;
  }

  /** What comes along with the sheets and what does not, in a sentence. */
  #account({ keys, held }: BroughtSheets): string {
    const renamed = [...keys].filter(([was, key]) => was !== key).map(([was, key]) => `${was} as ${key}`);
    const called = renamed.length === 0 ? '' : ` Formulas call ${renamed.join(', ')}.`;
    if (held.length === 0) return `All that they take from one another comes along.${called}`;
    const more = held.length - NAMED;
    const names = `${held.slice(0, NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    const values = held.length === 1 ? 'One value that they take' : `${held.length} values that they take`;
    const kept =
      held.length === 1 ? 'it stays as it is, to be linked' : 'they stay as they are, to be linked';
    return `${values} from sheets that do not come along: ${kept} (${names}).${called}`;
  }

  #plan(): Outcome<BroughtSheets> | undefined {
    if (!this.source || this.wanted.size === 0) return undefined;
    const { book } = this.session.notebook;
    const at = book.sheets.findIndex(({ key }) => key === this.behind);
    return bringSheets(book, this.source, [...this.wanted], at < 0 ? book.sheets.length : at + 1);
  }

  #want(keys: readonly string[]): void {
    this.trouble = '';
    this.wanted = new Set(keys);
  }

  #toggle(key: string, on: boolean): void {
    this.#want(on ? [...this.wanted, key] : [...this.wanted].filter((one) => one !== key));
  }

  #forget(): void {
    this.#turn += 1;
    this.offered = [];
    this.source = undefined;
    this.wanted = new Set();
    this.trouble = '';
    this.busy = false;
  }

  async #offer(): Promise<void> {
    this.#forget();
    const turn = this.#turn;
    if (this.from === 'file') return;
    this.busy = this.from === 'kept';
    try {
      const offered =
        this.from === 'template' ? offeredTemplates() : await offerStoredBooks(this.store, this.session.id);
      if (turn === this.#turn) this.offered = offered;
    } catch (error) {
      this.trouble = `the books kept here cannot be listed: ${reasonOf(error)}`;
    }
    if (turn === this.#turn) this.busy = false;
  }

  readonly #chosen = ({ target }: Event): void => {
    const chosen = this.offered.find(({ id }) => id === (target as HTMLSelectElement).value);
    void this.#take(chosen?.open);
  };

  readonly #file = async (): Promise<void> => {
    const { chooseBookFile } = await import('../storage/book-file.ts');
    await this.#take(async () => {
      const opened = await chooseBookFile();
      if (opened?.ok === false) throw new Error(opened.problems[0]?.message);
      return opened?.value;
    });
  };

  /** Opens a book and offers all its sheets. */
  async #take(open: (() => Promise<Book | undefined>) | undefined): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    this.source = undefined;
    this.#want([]);
    if (!open) return;
    this.busy = true;
    try {
      const book = await open();
      if (turn !== this.#turn) return;
      if (book) {
        this.source = openNotebook(book);
        this.#want(book.sheets.map(({ key }) => key));
      }
    } catch (error) {
      if (turn === this.#turn) this.trouble = `that book cannot be opened: ${reasonOf(error)}`;
    }
    if (turn === this.#turn) this.busy = false;
  }

  #add({ edit, keys }: BroughtSheets): void {
    const done = this.session.apply(edit);
    if (!done.ok) {
      this.trouble = done.problems.map(({ message, hints }) => [message, ...hints].join('; ')).join('. ');
      return;
    }
    const [first] = keys.values();
    if (first !== undefined) this.session.showSheet(first);
    this.#end(true);
  }

  #end(added: boolean): void {
    this.#forget();
    this.dispatchEvent(new CustomEvent('brought', { detail: added }));
  }
}
