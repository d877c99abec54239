import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { type Book, createHasher, hashBook } from '../../document/index.ts';
import { type Marks, marksOfBook, pageRules } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { type PageRun, pageRuns } from './page-runs.ts';
import { PAPER_WIDTH, type Paper, papers, usualPaper } from './paper.ts';
import { chosenPieces, type Piece, type PrintChoice } from './pieces.ts';
import type { Working } from './working.ts';
import './quay-contents.ts';
import './quay-printed-sheet.ts';

/** What is laid out for paper. */
interface Print {
  readonly pieces: readonly Piece[];
  readonly runs: readonly PageRun[];
  readonly paper: Paper;
  readonly working: Working;
  /** The marks of references, where the page of sources is printed with the sheets. */
  readonly marks: Marks | undefined;
  readonly hash: string;
}

/** How many pieces are drawn, the last of them up to how many of its parts. */
interface Drawn {
  readonly pieces: number;
  readonly parts: number;
}

const whole: Drawn = { pieces: Number.POSITIVE_INFINITY, parts: Number.POSITIVE_INFINITY };

/** How long is laid out in one go, in ms: a person takes an answer within it for immediate. */
const SLICE = 60;

/** Lets the browser answer the person between two parts that are laid out. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/**
 * The book on its paper: what was chosen of it, one piece after the other, behind a page of contents where there are
 * several. It is laid out while it is printed, and nothing at all at other times. Its pages are counted before that in
 * columns of a page's size, which the browser breaks nearly as it does pages.
 */
export class PrintedBook extends LitElement {
  static override properties = {
    session: { attribute: false },
    print: { state: true },
    drawn: { state: true },
  };
  static override styles = css`
    :host {
      display: block;
    }
    /* What reaches beyond would have the browser print all pages smaller than they were counted, or one more. */
    .piece {
      overflow: clip;
    }
    @media screen {
      :host {
        position: fixed;
        z-index: -1;
        inset: 0;
        overflow: hidden;
        visibility: hidden;
        pointer-events: none;
      }
      .piece {
        width: ${PAPER_WIDTH}px;
        height: var(--height);
        column-width: ${PAPER_WIDTH}px;
        column-gap: 0;
        column-fill: auto;
      }
    }
    @media print {
      .piece + .piece {
        break-before: page;
      }
    }
  `;

  declare session: Session;
  declare print: Print | undefined;
  declare drawn: Drawn;
  /** What the next print is of. */
  choice: PrintChoice = { which: 'in hand' };
  paper: Paper['size'] = usualPaper(navigator.language);
  working: Working = 'brief';
  readonly #hasher = createHasher();
  /** The texts are the book's, so the rules are written when the book is printed. */
  readonly #rules = new CSSStyleSheet();

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.#onBeforePrint);
    addEventListener('afterprint', this.clear);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.#onBeforePrint);
    removeEventListener('afterprint', this.clear);
    this.clear();
  }

  /** A browser takes the page as it stands when all that was begun here without waiting has ended. */
  readonly #onBeforePrint = (): void => {
    if (!this.print) void this.lay();
  };

  /**
   * Lays out what was chosen. Gives about how many pages that makes. With `counted`, which is told how many there are so
   * far, it is laid out part by part, and the browser answers the person in between; without, in one go.
   */
  async lay(counted?: (pages: number) => void): Promise<number> {
    const { notebook, sheet, overview } = this.session;
    // Paper is not drawn again when the person rests.
    notebook.judgeStated();
    const pieces = chosenPieces(notebook.book, this.choice, this.working, { sheet, overview });
    const paper = papers.find(({ size }) => size === this.paper) ?? papers[0];
    if (!paper) throw new Error('there is no paper');
    const hash = hashBook(notebook.book, this.#hasher);
    const runs = pageRuns(pieces, notebook.book);
    const listsAll = pieces.length > 1 && pieces.some((one) => one.kind === 'page' && one.page === 'sources');
    const marks = listsAll ? marksOfBook(notebook) : undefined;
    const laid = { pieces, runs, paper, hash, marks, working: this.working };
    this.print = laid;
    this.drawn = counted ? { pieces: 0, parts: 1 } : whole;
    await this.updateComplete;
    // It was taken away, or something else was laid out, meanwhile.
    let since = performance.now();
    while (counted && (await this.#drawMore(laid))) {
      if (performance.now() - since < SLICE) continue;
      await breath();
      if (this.print !== laid) return 0;
      // Counting has the browser lay out all that is drawn, so it is done once for each piece.
      if (this.drawn.parts === 1) counted(this.#count());
      since = performance.now();
    }
    await drawnBelow(this.renderRoot);
    if (this.print !== laid) return 0;
    this.#rules.replaceSync(`@page { size: ${paper.size}; }\n${pageRules(notebook.book, runs, hash)}`);
    if (!document.adoptedStyleSheets.includes(this.#rules)) document.adoptedStyleSheets.push(this.#rules);
    return this.#count();
  }

  /** Draws the next part of the sheet that is being drawn, or begins the next piece; false when all is drawn, or something else is. */
  async #drawMore(laid: Print): Promise<boolean> {
    if (this.print !== laid) return false;
    const { length } = laid.pieces;
    const { pieces, parts } = this.drawn;
    const sheet = [...this.renderRoot.querySelectorAll('quay-printed-sheet')].at(-1);
    if (sheet && !sheet.isWhole) this.drawn = { pieces, parts: parts + 1 };
    else if (pieces < length) this.drawn = { pieces: pieces + 1, parts: 1 };
    else return false;
    await this.updateComplete;
    await sheet?.updateComplete;
    return true;
  }

  /** Takes the paper away again. */
  readonly clear = (): void => {
    this.print = undefined;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== this.#rules);
  };

  /** About how many pages there are: a browser repeats heads of tables on paper, and in columns does not. */
  #count(): number {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('.piece')]
      .map(({ scrollWidth }) => Math.max(1, Math.round(scrollWidth / PAPER_WIDTH)))
      .reduce((sum, pages) => sum + pages, 0);
  }

  override render(): TemplateResult | typeof nothing {
    const { print, session, drawn } = this;
    if (!print) return nothing;
    const { pieces, runs, paper } = print;
    const { book } = session.notebook;
    const block = (words: string): TemplateResult =>
      html`<quay-title-block slot="title-block" paper .session=${session} .sheetWords=${words}></quay-title-block>`;
    const shown = runs.filter(
      ({ contents, pieces: [first] }) => contents || (first && first.at < drawn.pieces),
    );
    return html`${shown.map(
      (run) =>
        html`<div class="piece" .style=${`--height: ${Math.floor(paper.height)}px; page: ${run.name}`}>
          ${
            run.contents
              ? html`<quay-contents paper .session=${session} .pieces=${pieces} .hash=${print.hash}
                  >${block(`all ${book.sheets.length}`)}</quay-contents
                >`
              : nothing
          }
          ${run.pieces
            .filter(({ at }) => at < drawn.pieces)
            .map(({ piece, at }, index) => {
              const words = sheetWords(piece, book);
              const begins = index === 0 && !run.contents;
              const parts = at === drawn.pieces - 1 ? drawn.parts : whole.parts;
              return this.#piece(piece, print, parts, begins ? block(words) : nothing, words);
            })}
        </div>`,
    )}`;
  }

  /** A piece below its title block; one that runs on from another has none, and says which sheet it is. */
  #piece(
    piece: Piece,
    { pieces, working, marks }: Print,
    parts: number,
    block: TemplateResult | typeof nothing,
    words: string,
  ): TemplateResult {
    const { session } = this;
    if (piece.kind === 'sheet')
      return html`<quay-printed-sheet
        .session=${session}
        .sheet=${piece.sheet}
        .working=${working}
        .marks=${marks}
        .checksListed=${pieces.some((one) => one.kind === 'page' && one.page === 'checks')}
        .upTo=${parts}
        .runsOn=${block === nothing ? `sheet ${words}` : ''}
        >${block}</quay-printed-sheet
      >`;
    switch (piece.page) {
      case 'about':
        return html`<quay-about-page paper .session=${session}>${block}</quay-about-page>`;
      case 'origin':
        return html`<quay-origin-page paper .session=${session}>${block}</quay-origin-page>`;
      case 'sources':
        return html`<quay-sources-page paper .session=${session} .marks=${marks}>${block}</quay-sources-page>`;
      case 'signing':
        return html`<quay-signing-page paper .session=${session}>${block}</quay-signing-page>`;
      case 'steps':
        return html`<quay-steps-page paper .session=${session}>${block}</quay-steps-page>`;
      case 'checks':
        return html`<quay-overview paper .session=${session}>${block}</quay-overview>`;
    }
  }
}

/** What the title block says of the sheet: its place in the book, as on the screen. */
function sheetWords(piece: Piece, { sheets }: Book): string {
  if (piece.kind === 'page') return `all ${sheets.length}`;
  return `${sheets.findIndex(({ key }) => key === piece.sheet) + 1} of ${sheets.length}`;
}

/** Resolves when all elements below a root are drawn, those within them included, without a turn of the browser's loop. */
async function drawnBelow(root: ParentNode): Promise<void> {
  const elements = [...root.querySelectorAll<Element & { updateComplete?: Promise<unknown> }>('*')];
  await Promise.all(elements.flatMap(({ updateComplete }) => updateComplete ?? []));
  for (const { shadowRoot } of elements) if (shadowRoot) await drawnBelow(shadowRoot);
}

customElements.define('quay-printed-book', PrintedBook);
