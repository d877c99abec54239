import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { type Book, createHasher, hashBook } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { pageRules } from './page-rules.ts';
import { PAPER_WIDTH, type Paper, papers, usualPaper } from './paper.ts';
import { chosenPieces, type Piece, type PrintChoice, titleOf } from './pieces.ts';
import './quay-contents.ts';
import './quay-printed-sheet.ts';

/** What is laid out for paper. */
interface Print {
  readonly pieces: readonly Piece[];
  readonly paper: Paper;
  readonly hash: string;
}

/**
 * The book on its paper: what was chosen of it, one piece after the other, behind a page of contents where there are
 * several. It is laid out while it is printed, and nothing at all at other times. Its pages are counted before that in
 * columns of a page's size, which the browser breaks nearly as it does pages.
 */
export class PrintedBook extends LitElement {
  static override properties = { session: { attribute: false }, print: { state: true } };
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
  /** What the next print is of. */
  choice: PrintChoice = { which: 'in hand' };
  paper: Paper['size'] = usualPaper(navigator.language);
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

  /** Lays out what was chosen. Gives about how many pages that makes. */
  async lay(): Promise<number> {
    const { notebook, sheet, overview } = this.session;
    const pieces = chosenPieces(notebook.book, this.choice, { sheet, overview });
    const paper = papers.find(({ size }) => size === this.paper) ?? papers[0];
    if (!paper) throw new Error('there is no paper');
    const hash = hashBook(notebook.book, this.#hasher);
    const laid = { pieces, paper, hash };
    this.print = laid;
    await this.updateComplete;
    await drawnBelow(this.renderRoot);
    // It was taken away, or something else was laid out, meanwhile.
    if (this.print !== laid) return 0;
    const runs = [
      ...(pieces.length > 1 ? [{ name: 'contents', title: 'Contents' }] : []),
      ...pieces.map((piece, at) => ({
        name: pageName(at),
        title: partTitle(piece, at, pieces, notebook.book),
      })),
    ];
    this.#rules.replaceSync(pageRules(notebook.book, runs, paper.size, hash));
    if (!document.adoptedStyleSheets.includes(this.#rules)) document.adoptedStyleSheets.push(this.#rules);
    return this.#count();
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
    const { print, session } = this;
    if (!print) return nothing;
    const { pieces, paper } = print;
    const { book } = session.notebook;
    const piece = (
      name: string,
      title: string,
      of: (block: TemplateResult) => TemplateResult,
    ): TemplateResult => html`<div
      class="piece"
      .style=${`--height: ${Math.floor(paper.height)}px; page: ${name}`}
    >
      ${of(html`<quay-title-block slot="title-block" paper .session=${session} .sheetWords=${title}></quay-title-block>`)}
    </div>`;
    const all = pieces.map((one, at) =>
      piece(pageName(at), sheetWords(one, book), (block) => this.#piece(one, block)),
    );
    if (pieces.length < 2) return html`${all}`;
    const contents = (block: TemplateResult) =>
      html`<quay-contents paper .session=${session} .pieces=${pieces} .hash=${print.hash}>${block}</quay-contents>`;
    return html`${piece('contents', `all ${book.sheets.length}`, contents)}${all}`;
  }

  #piece(piece: Piece, block: TemplateResult): TemplateResult {
    const { session } = this;
    if (piece.kind === 'sheet')
      return html`<quay-printed-sheet .session=${session} .sheet=${piece.sheet}>${block}</quay-printed-sheet>`;
    switch (piece.page) {
      case 'about':
        return html`<quay-about-page paper .session=${session}>${block}</quay-about-page>`;
      case 'sources':
        return html`<quay-sources-page paper .session=${session}>${block}</quay-sources-page>`;
      case 'checks':
        return html`<quay-overview paper .session=${session}>${block}</quay-overview>`;
    }
  }
}

/** The name of the pages of a piece, for the rules of their foot. */
function pageName(at: number): string {
  return `piece-${at + 1}`;
}

/** The title at the foot of a piece's pages, with the number that it has in the contents. */
function partTitle(piece: Piece, at: number, pieces: readonly Piece[], book: Book): string {
  const title = titleOf(piece, book);
  return pieces.length > 1 ? `part ${at + 1} of ${pieces.length}: ${title}` : title;
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
