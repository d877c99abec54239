import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { findSheet, type Part, type Sheet } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import {
  countWords,
  governingLines,
  type Marks,
  type ReviewSheet,
  reviewSheet,
  sheetReferences,
} from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { lineStyles } from '../sheet/line/line-styles.ts';
import { drawPart, type Page } from '../sheet/page-parts.ts';
import { printedPageStyle, printedSymbol, roomOnPaper } from '../sheet/paper/page-measure.ts';
import { pageStyles } from '../sheet/paper/page-styles.ts';
import { printStyles } from '../sheet/paper/print-styles.ts';
import { gridMap } from '../sheet/place/grid-map.ts';
import type { SheetHost } from '../sheet/sheet-host.ts';
import { printedStatedStyles } from '../sheet/table/printed-stated.ts';
import { printedTableStyles } from '../sheet/table/printed-table.ts';
import { hasNoLine } from '../sheet/table/table-sources.ts';
import { tableStyles } from '../sheet/table/table-styles.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import type { Working } from './working.ts';

/** Nothing is edited on paper. */
const noHost: SheetHost = { commit: () => undefined, cancel: () => undefined };

/** A sheet of the book as it is printed: its lines with as much working as is wanted, the list of its references, and no cell to stand on. */
export class PrintedSheet extends LitElement {
  static override properties = {
    session: { attribute: false },
    sheet: { attribute: false },
    working: { attribute: false },
    marks: { attribute: false },
    upTo: { attribute: false },
    runsOn: { attribute: false },
    checksListed: { attribute: false },
  };
  static override styles = [
    pageStyles,
    lineStyles,
    mathsStyles,
    tableStyles,
    printStyles,
    printedTableStyles,
    printedStatedStyles,
    css`
      .runs-on {
        border-block-start: 1.5px solid var(--ink);
      }
      h2 .place {
        float: right;
        color: var(--ink-soft);
        font-size: var(--type-small);
        font-weight: 400;
      }
      .side-by-side {
        display: flex;
        flex-wrap: wrap;
        gap: 0 28px;
        align-items: start;
      }
      .side-by-side .part {
        max-width: 100%;
        break-inside: avoid;
      }
      /* What is written about a table is no wider than it. */
      .side-by-side :is(.part-title, p) {
        width: 0;
        min-width: 100%;
      }
      .references {
        margin: 14px 0 0;
        padding-block-start: 4px;
        border-block-start: 1.5px solid var(--ink);
        font-size: var(--type-small);
        line-height: 1.25;
      }
      .references h3 {
        font-weight: 600;
        break-after: avoid;
      }
      .references ol {
        margin: 0;
        padding: 0;
        columns: 3;
        column-gap: 20px;
        list-style: none;
      }
      .references li {
        display: grid;
        grid-template-columns: 2.6em minmax(0, 1fr);
        break-inside: avoid;
        overflow-wrap: anywhere;
      }
    `,
  ];

  declare session: Session;
  /** The key of the sheet. */
  declare sheet: string;
  declare working: Working;
  /** The marks of references where they are listed once for all sheets. */
  declare marks: Marks | undefined;
  /** How many of its parts are drawn so far; the list of references comes with the last. */
  declare upTo: number;
  /** What is said beside the title of a sheet that follows another without a title block of its own. */
  declare runsOn: string;
  /** Whether the page of all checks is printed with it. */
  declare checksListed: boolean;
  #drawing: Drawing | undefined;

  /** Whether all of the sheet is drawn. */
  get isWhole(): boolean {
    return this.upTo >= (this.#drawing?.groups.length ?? 0);
  }

  /** What all parts have in common is made once, so that none is drawn again for the next. */
  protected override willUpdate(changed: PropertyValues): void {
    if (
      changed.has('session') ||
      changed.has('sheet') ||
      changed.has('working') ||
      changed.has('marks') ||
      changed.has('checksListed')
    )
      this.#drawing = this.#prepare();
  }

  #prepare(): Drawing | undefined {
    const { session } = this;
    const { notebook } = session;
    const whole = findSheet(notebook.book, this.sheet);
    if (!whole) return undefined;
    const { sheet, leftOut } =
      this.working === 'review'
        ? reviewSheet(notebook, whole, this.checksListed)
        : { sheet: whole, leftOut: undefined };
    const symbol = printedSymbol(sheet);
    const { cite, listed } = sheetReferences(notebook, sheet, this.marks);
    const governing = this.working === 'full' ? undefined : governingLines(notebook, sheet);
    const page: Page = {
      host: noHost,
      session,
      sheet: sheet.key,
      map: gridMap(sheet, (table) => notebook.rowsOf(table)),
      room: roomOnPaper(symbol),
      paper: {
        works: (id) => governing?.has(id) ?? true,
        summarises: governing !== undefined,
        cite,
      },
    };
    return {
      page,
      title: sheet.title || sheet.key,
      symbol,
      groups: grouped(notebook, sheet),
      listed,
      leftOut,
    };
  }

  override render(): TemplateResult | typeof nothing {
    const drawing = this.#drawing;
    if (!drawing) return nothing;
    const { page, title, symbol, groups, listed, leftOut } = drawing;
    return html`<div class="page${this.runsOn === '' ? '' : ' runs-on'}" .style=${printedPageStyle(symbol)}>
      <slot name="title-block"></slot>
      <h2 class="sheet-title">
        ${title}${this.runsOn === '' ? nothing : html`<span class="place">${this.runsOn}</span>`}
      </h2>
      ${groups
        .slice(0, this.upTo)
        .map((parts) =>
          parts.length === 1
            ? parts.map((part) => drawPart(page, part))
            : html`<div class="side-by-side">${parts.map((part) => drawPart(page, part))}</div>`,
        )}
      ${this.isWhole ? leftOutWords(leftOut) : nothing}
      ${listed.length === 0 || !this.isWhole ? nothing : listOf(listed)}
    </div>`;
  }
}

/** What a printed sheet is drawn from. */
interface Drawing {
  readonly page: Page;
  readonly title: string;
  /** The width of its symbols in px. */
  readonly symbol: number;
  readonly groups: readonly (readonly Part[])[];
  /** The references that are listed at the end. */
  readonly listed: readonly string[];
  /** How much of the working is not printed; undefined where all of it is. */
  readonly leftOut: ReviewSheet['leftOut'] | undefined;
}

/** Says how much of the working is not printed, where some is not. */
function leftOutWords(leftOut: ReviewSheet['leftOut'] | undefined): TemplateResult | typeof nothing {
  const { lines, columns } = leftOut ?? { lines: 0, columns: 0 };
  const counted = [
    ...(lines > 0 ? [countWords(lines, 'line')] : []),
    ...(columns > 0 ? [`${countWords(columns, 'column')} of tables`] : []),
  ].join(' and ');
  return counted === ''
    ? nothing
    : html`<p class="left-out">Printed for review: ${counted} of this sheet left out, which are blank entries, working on which no governing check rests directly, and checks that do not apply. The book and its record have all.</p>`;
}

function listOf(references: readonly string[]): TemplateResult {
  return html`<div class="references">
    <h3>References of this sheet</h3>
    <ol>
      ${references.map((reference, at) => html`<li><span>[${at + 1}]</span><span>${reference}</span></li>`)}
    </ol>
  </div>`;
}

/** The parts of a sheet, those together that may stand side by side: tables of factors one after the other. */
function grouped(notebook: Notebook, { key, parts }: Sheet): readonly (readonly Part[])[] {
  const isOfFactors = (part: Part | undefined): boolean =>
    part?.kind === 'table' &&
    part.columns.every((column) => hasNoLine(notebook, `${key}.${part.name}`, column));
  const groups: Part[][] = [];
  for (const part of parts) {
    const last = groups.at(-1);
    if (last && isOfFactors(part) && isOfFactors(last[0])) last.push(part);
    else groups.push([part]);
  }
  return groups;
}

customElements.define('quay-printed-sheet', PrintedSheet);

declare global {
  interface HTMLElementTagNameMap {
    'quay-printed-sheet': PrintedSheet;
  }
}
