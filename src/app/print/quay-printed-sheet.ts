import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { findSheet } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { lineStyles } from '../sheet/line/line-styles.ts';
import { drawPart } from '../sheet/page-parts.ts';
import {
  describedWidth,
  PRINT_WIDTH,
  PRINTED_MATHS,
  pageStyle,
  roomFor,
  symbolWidth,
  tracksFor,
} from '../sheet/paper/page-measure.ts';
import { pageStyles } from '../sheet/paper/page-styles.ts';
import { printStyles } from '../sheet/paper/print-styles.ts';
import { gridMap } from '../sheet/place/grid-map.ts';
import type { SheetHost } from '../sheet/sheet-host.ts';
import { printedStatedStyles } from '../sheet/table/printed-stated.ts';
import { printedTableStyles } from '../sheet/table/printed-table.ts';
import { tableStyles } from '../sheet/table/table-styles.ts';
import { mathsStyles } from '../style/maths-styles.ts';

/** Nothing is edited on paper. */
const noHost: SheetHost = { commit: () => undefined, cancel: () => undefined };

/** A sheet of the book as it is printed: the lines of the page with the numbers put in, and no cell to stand on. */
export class PrintedSheet extends LitElement {
  static override properties = { session: { attribute: false }, sheet: { attribute: false } };
  static override styles = [
    pageStyles,
    lineStyles,
    mathsStyles,
    tableStyles,
    printStyles,
    printedTableStyles,
    printedStatedStyles,
  ];

  declare session: Session;
  /** The key of the sheet. */
  declare sheet: string;

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    const { notebook } = session;
    const sheet = findSheet(notebook.book, this.sheet);
    if (!sheet) return nothing;
    // On paper the page has a width of its own, whatever the screen's.
    const tracks = {
      ...tracksFor(PRINT_WIDTH, symbolWidth(sheet), describedWidth(sheet)),
      maths: PRINTED_MATHS,
    };
    const page = {
      host: noHost,
      session,
      sheet: sheet.key,
      map: gridMap(sheet, (table) => notebook.rowsOf(table)),
      room: roomFor(tracks, true),
      printing: true,
    };
    return html`<div class="page" .style=${pageStyle(tracks, PRINT_WIDTH)}>
      <slot name="title-block"></slot>
      <h2 class="sheet-title">${sheet.title || sheet.key}</h2>
      ${sheet.parts.map((part) => drawPart(page, part))}
    </div>`;
  }
}

customElements.define('quay-printed-sheet', PrintedSheet);
