import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { countWords } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { showModal } from '../style/modal-dialog.ts';
import { type Paper, papers, usualPaper } from './paper.ts';
import { idOf, type PrintChoice, pieceInHand, piecesOf, titleOf } from './pieces.ts';
import type { PrintedBook } from './quay-printed-book.ts';
import type { Working } from './working.ts';
import './quay-printed-book.ts';

/** How much working there may be, and what each way prints. */
const workings: readonly { readonly working: Working; readonly words: string; readonly sentence: string }[] =
  [
    {
      working: 'review',
      words: 'for review',
      sentence:
        'What is entered, the results, the checks that apply, and the working of those that govern. Each sheet says how much it leaves out.',
    },
    {
      working: 'brief',
      words: 'brief',
      sentence:
        'Each line has its formula, value and reference; numbers are put in for the checks that govern, and for what their sides are computed from.',
    },
    {
      working: 'full',
      words: 'in full',
      sentence: 'Each line has its formula with the numbers put in, for a check by hand line by line.',
    },
  ];

/** Asks what of the book is to be printed and on which paper, and tells about how many pages that takes. */
export class PrintDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    which: { state: true },
    ids: { state: true },
    paper: { state: true },
    working: { state: true },
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
  declare working: Working;
  /** About how many pages are printed, or are so far while they are counted. */
  declare pages: { readonly number: number; readonly counted: boolean };
  declare open: boolean;
  /** Counts countings: one that ends after the next began is given up. */
  #counting = 0;

  constructor() {
    super();
    this.which = 'in hand';
    this.ids = new Set();
    this.paper = usualPaper(navigator.language);
    this.working = 'brief';
    this.pages = { number: 0, counted: false };
    this.open = false;
  }

  show(): void {
    if (!this.session.endEdit('file')) return;
    this.open = true;
    this.which = 'in hand';
    const inHand = idOf(pieceInHand(this.session));
    if (this.ids.size === 0)
      this.ids = new Set(
        piecesOf(this.session.notebook.book)
          .map(idOf)
          .filter((id) => id === inHand),
      );
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
              <fieldset class="choices">
                <legend>Working</legend>
                ${workings.map(
                  ({ working, words }) => html`<label>
                    <input type="radio" name="working" .checked=${this.working === working} @change=${() => this.#choose({ working })} />${words}
                  </label>`,
                )}
              </fieldset>
              <p class="quiet">${workings.find(({ working }) => working === this.working)?.sentence}</p>
              <p class="quiet">${this.#howMany(none)}
                ${book.settings.printedTables === 'whole' ? 'Long calculated tables are printed whole, as set under Book.' : `Of a calculated table of more than ${this.working === 'full' ? 48 : 16} rows the first, the last and the governing ones are printed; Book in the top bar has it whole.`}</p>
              <form method="dialog" class="buttons">
                <button>Cancel</button>
                <button type="button" class="main" ?disabled=${none} @click=${this.#print}>Print</button>
              </form>`
            : nothing
        }
      </dialog>
      <quay-printed-book .session=${session}></quay-printed-book>`;
  }

  #howMany(none: boolean): TemplateResult {
    const { number, counted } = this.pages;
    const words = none
      ? 'Nothing is chosen.'
      : counted
        ? `About ${countWords(number, 'page')}.`
        : 'Counting the pages…';
    const soFar =
      none || counted || number === 0 ? nothing : html`<span aria-hidden="true">${number} so far.</span>`;
    return html`<span role="status">${words}</span> ${soFar}`;
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

  #choose(chosen: Partial<Pick<PrintDialog, 'which' | 'ids' | 'paper' | 'working'>>): void {
    Object.assign(this, chosen);
    this.#countSoon();
  }

  /** Lays out what is chosen and counts its pages, once the dialog has answered. */
  #countSoon(): void {
    this.pages = { number: 0, counted: false };
    this.#counting += 1;
    const turn = this.#counting;
    setTimeout(() => void this.#count(turn), 50);
  }

  async #count(turn: number): Promise<void> {
    const isCurrent = (): boolean => turn === this.#counting && this.open;
    const printed = this.#book;
    if (!printed || !isCurrent()) return;
    this.#tell(printed);
    const number = await printed.lay((soFar) => {
      if (isCurrent()) this.pages = { number: soFar, counted: false };
    });
    if (isCurrent()) this.pages = { number, counted: true };
  }

  /** Tells the book on its paper what is chosen here. */
  #tell(printed: PrintedBook): void {
    printed.choice = this.#choice;
    printed.paper = this.paper;
    printed.working = this.working;
  }

  readonly #print = async (): Promise<void> => {
    const printed = this.#book;
    if (!printed) return;
    // Who has decided waits for the paper alone: what is not laid out yet is so in one go.
    if (!this.pages.counted) {
      this.#counting += 1;
      this.#tell(printed);
      await printed.lay();
    }
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
    const printed = this.#book;
    if (!printed) return;
    printed.clear();
    // The browser's own print is of the page in hand, whatever was chosen here.
    printed.choice = { which: 'in hand' };
  };
}
