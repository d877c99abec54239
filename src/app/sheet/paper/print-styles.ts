import { css } from 'lit';
import { PRINTED_GAP, PRINTED_NOTES, PRINTED_NUMBERS } from './page-measure.ts';

/** On paper the sheet alone, its lines unbroken. */
export const printStyles = css`
  :host {
    --type-small: ${PRINTED_NOTES}px;

    height: auto;
    overflow: visible;
  }
  /* 700 px are the width of A4 and of Letter within their margins. */
  .page {
    width: calc(var(--page) * 1px);
    max-width: none;
    zoom: calc(700 / var(--page));
    min-height: 0;
    margin: 0;
    padding: 0;
    background: none;
    box-shadow: none;
    line-height: 1.25;
    print-color-adjust: exact;
  }
  h2.sheet-title {
    padding: 10px 0 2px;
    break-after: avoid;
  }
  .part {
    content-visibility: visible;
  }
  .line,
  .words-row {
    break-inside: avoid;
  }
  .words-row.part-title,
  .words-row.heading,
  .part-title {
    break-after: avoid;
  }
  .menu-button,
  .quiet-button:not([data-go-item]),
  .drawing details,
  .entry.choice .sign {
    display: none;
  }
  /* The numbers put in are there to be followed, not to be found. */
  .worked,
  .maths.numbers,
  .compared + .maths {
    --maths-size: ${PRINTED_NUMBERS}px;

    color: var(--ink-soft);
  }
  /*
   * Lines stand in two columns: on the first row of each symbol, description and result, below them its formula from the
   * left edge of the description, so that symbols, formulas and results each have an edge of their own all down the page.
   */
  .two-columns {
    columns: 2;
    column-gap: ${PRINTED_GAP}px;
  }
  .line {
    grid-template-columns:
      [symbol] minmax(var(--symbol), max-content) [label] minmax(0, 1fr)
      [number] minmax(72px, max-content) [unit] 56px [end];
    padding-block: 1px 2px;
    background: linear-gradient(var(--rule), var(--rule)) 0 100% / 100% 1px no-repeat;
  }
  .part-title .cell.title {
    grid-column: 1 / -1;
  }
  .line.column {
    grid-template-columns: [symbol] minmax(var(--symbol), max-content) [label] minmax(0, 1fr) [number unit end];
  }
  .line .cell {
    min-height: 0;
    padding: 0;
    line-height: 1.2;
  }
  .line .cell.symbol {
    padding-inline-end: 8px;
    text-align: left;
  }
  .line .cell.description {
    grid-column: label / number;
    text-wrap: wrap;
  }
  .line .cell.value {
    display: contents;
  }
  .line .cell.unit {
    grid-row: 1;
    padding-inline-start: 6px;
  }
  .line > .mark,
  .line.column > .unit,
  .line .equals {
    display: none;
  }
  .cited {
    margin-inline-start: 4px;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .cited :is(.stated-reason, .to-link, .of-formula) {
    display: inline;
  }
  .entry,
  .stated-value {
    border-bottom: 0;
  }
  .line .cell.value > :is(.entry, .number) {
    grid-row: 1;
    grid-column: number;
    padding: 0 0 0 8px;
  }
  .line .cell.value > .number.words {
    grid-column: number / end;
    text-align: end;
  }
  .line .cell.value > .entry {
    margin: 0;
  }
  .line .cell.value > .entry.words {
    grid-column: number / end;
  }
  /* Words that have no room beside the description stand below it. */
  .line.across .cell.description {
    grid-column: label / end;
  }
  .line.across .cell.value > .entry.words {
    grid-column: label / end;
  }
  .line:is(.beside, .under):is(.given, .choice) .cell.value > .entry.words,
  .line.under .cell.value > .number.words {
    grid-row: 2;
    grid-column: label / end;
    padding-inline-start: 16px;
  }
  .line .cell.value > :is(.calculation, .worked, .sentence) {
    grid-row: auto;
    grid-column: label / end;
    margin: 0;
    padding-inline: 16px 0;
  }
  .line .cell.value > .verdict {
    display: flex;
    grid-row: 1;
    grid-column: number / end;
    gap: 6px;
    justify-content: end;
    align-items: baseline;
    padding-inline-start: 8px;
  }
  .verdict > svg {
    align-self: center;
    margin: 0;
  }
  .verdict :is(.share, .word) {
    padding: 0;
  }
  /* Which method is in force follows its formula on the same row where there is room. */
  .calculation:has(> .method),
  .calculation > div:has(> .method),
  .line.check .calculation {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.9em;
    align-items: baseline;
  }
  .calculation .method {
    font-size: var(--type-small);
    line-height: 1.15;
  }
  .unit-behind {
    margin-inline-start: 7px;
    color: var(--ink-soft);
  }
  .maths .lines {
    overflow: visible;
  }
  .worked.of-row > :is(p, .maths) {
    display: inline;
    margin-inline-end: 0.5em;
  }
  .worked.of-row > .maths {
    display: inline-flex;
  }
  .maths-line {
    padding-block: 0;
  }
  .number-notes li {
    display: inline;
  }
  .number-notes li + li::before {
    content: '; ';
  }
  .words-row.part-title,
  .words-row.picture {
    margin-top: 6px;
  }
  .words-row.heading {
    margin-top: 12px;
  }
  .words-row,
  .part-title {
    grid-template-columns: minmax(0, 1fr);
  }
  .words-row .cell,
  .part-title .cell.title,
  .words-row.picture .cell.title {
    padding: 2px 0;
  }
  .words-row .cell.mark,
  .part-title .cell.mark,
  .words-row .margin:empty {
    display: none;
  }
  .words-row .margin {
    padding: 0;
  }
  /* What kind of words they are, if any, stands before them. */
  .words-row:is(.caution, .assumption, .open-item, .source) {
    grid-template-columns: max-content minmax(0, 1fr);
    gap: 0 10px;
  }
  .words-row.caution .cell.text {
    margin: 2px 0;
    padding-block: 2px;
  }
  .paragraphs {
    max-width: none;
  }
  .paragraphs p + p {
    margin-top: 0.2em;
  }
  .words-row .drawing {
    grid-column: 1 / -1;
    padding: 2px 0 6px;
  }
  .table-foot {
    margin-block: 0 4px;
  }
  .sentence {
    font-size: var(--type-small);
    line-height: 1.2;
  }
  .quiet-button {
    color: inherit;
    text-decoration: none;
  }
`;
