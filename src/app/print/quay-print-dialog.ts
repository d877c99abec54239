import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import { countWords } from '../view-model/count-words.ts';
import { type Paper, papers, usualPaper } from './paper.ts';
import { idOf, type PrintChoice, pieceInHand, piecesOf, titleOf } from './pieces.ts';
import type { PrintedBook } from './quay-printed-book.ts';
import './quay-printed-book.ts';

/** Asks what of the book is to be printed and on which paper, and tells about how many pages that takes. */
export class PrintDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    which: { state: true },
    ids: { state: true },
    paper: { state: true },
    pages: { state: true },
    open: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      .pieces {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr));
        gap: 2px 16px;
        margin: 0 0 4px;
        padding: 0;
        border: 0;
      }
      .pieces label {
        display: flex;
        gap: 8px;
        align-items: baseline;
        min-height: 24px;
      }
      .pieces input {
        accent-color: var(--accent);
      }
      @media print {
        dialog {
          display: none;
        }
      }
    `,
  ];
  declare session: Session;
  declare which: PrintChoice['which'];
  declare ids: ReadonlySet<string>;
  declare paper: Paper['size'];
  /** About how many pages are printed; undefined while they are counted. */
  declare pages: number | undefined;
  declare open: boolean;
  /** Counts countings: one that ends after the next began is given up. */
  #counting = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.which = 'in hand';
    this.ids = new Set();
    this.paper = usualPaper(navigator.language);
    this.open = false;
  }

  show(): void {
    if (!this.session.endEdit('file')) return;
    this.open = true;
    this.which = 'in hand';
    if (this.ids.size === 0) this.ids = new Set([idOf(pieceInHand(this.session))]);
    void this.updateComplete.then(() => showModal(this.#dialog));
    this.#countSoon();
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  get #book(): PrintedBook | null {
    return this.renderRoot.querySelector<PrintedBook>('quay-printed-book');
  }

  get #choice(): PrintChoice {
    return this.which === 'chosen' ? { which: this.which, ids: this.ids } : { which: this.which };
  }

  override render(): TemplateResult {
    const { session } = this;
    const { book } = session.notebook;
    const inHand = titleOf(pieceInHand(session), book);
    const ways = [
      { which: 'in hand', words: `this page: ${inHand}` },
      { which: 'all', words: 'the whole book' },
      { which: 'chosen', words: 'chosen pages' },
    ] as const;
    const none = this.which === 'chosen' && this.ids.size === 0;
    return html`<dialog aria-labelledby="title" @close=${this.#closed}>
        ${
          this.open
            ? html`<h2 id="title">Print</h2>
              <fieldset class="choices">
                <legend>What</legend>
                ${ways.map(
                  ({ which, words }) => html`<label>
                    <input type="radio" name="which" ?autofocus=${this.which === which} .checked=${this.which === which} @change=${() => this.#choose({ which })} />${words}
                  </label>`,
                )}
              </fieldset>
              ${this.which === 'chosen' ? this.#pieces() : nothing}
              <fieldset class="choices">
                <legend>Paper</legend>
                ${papers.map(
                  ({ size }) => html`<label>
                    <input type="radio" name="paper" .checked=${this.paper === size} @change=${() => this.#choose({ paper: size })} />${size}
                  </label>`,
                )}
              </fieldset>
              <p class="quiet" role="status">${none ? 'Nothing is chosen.' : this.pages === undefined ? 'Counting the pages…' : `About ${countWords(this.pages, 'page')}.`}
                ${book.settings.printedTables === 'whole' ? 'Long calculated tables are printed whole, as set under Book.' : 'Of a long calculated table the first, the last and the governing rows are printed; Book in the top bar has it whole.'}</p>
              <form method="dialog" class="buttons">
                <button>Cancel</button>
                <button type="button" class="main" ?disabled=${none} @click=${this.#print}>Print</button>
              </form>`
            : nothing
        }
      </dialog>
      <quay-printed-book .session=${session}></quay-printed-book>`;
  }

  #pieces(): TemplateResult {
    const { book } = this.session.notebook;
    return html`<fieldset class="pieces" aria-label="Pages to print">
      ${piecesOf(book).map((piece) => {
        const id = idOf(piece);
        return html`<label>
          <input type="checkbox" .checked=${this.ids.has(id)} @change=${() => this.#toggle(id)} />${titleOf(piece, book)}
        </label>`;
      })}
    </fieldset>`;
  }

  #toggle(id: string): void {
    const ids = new Set(this.ids);
    if (!ids.delete(id)) ids.add(id);
    this.#choose({ ids });
  }

  #choose(chosen: Partial<Pick<PrintDialog, 'which' | 'ids' | 'paper'>>): void {
    Object.assign(this, chosen);
    this.#countSoon();
  }

  /** Counts the pages once the dialog has answered. */
  #countSoon(): void {
    this.pages = undefined;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#lay(), 50);
  }

  /** Lays out what is chosen and counts its pages; false if something else was chosen meanwhile. */
  async #lay(): Promise<boolean> {
    this.#counting += 1;
    const turn = this.#counting;
    clearTimeout(this.#timer);
    const printed = this.#book;
    if (!printed || !this.open) return false;
    printed.choice = this.#choice;
    printed.paper = this.paper;
    const pages = await printed.lay();
    if (turn !== this.#counting) return false;
    this.pages = pages;
    return true;
  }

  readonly #print = async (): Promise<void> => {
    if (!(await this.#lay())) return;
    // What is laid out has a frame to stand before the browser takes it: a script's print gives it none.
    requestAnimationFrame(() =>
      setTimeout(() => {
        window.print();
        this.#dialog?.close();
      }),
    );
  };

  readonly #closed = (): void => {
    this.open = false;
    this.#counting += 1;
    clearTimeout(this.#timer);
    const printed = this.#book;
    if (!printed) return;
    printed.clear();
    // The browser's own print is of the page in hand, whatever was chosen here.
    printed.choice = { which: 'in hand' };
  };
}
