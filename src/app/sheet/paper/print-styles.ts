import { css } from 'lit';
import { PRINTED_COLUMN, PRINTED_NOTES, PRINTED_NUMBERS } from './page-measure.ts';

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
    box-shadow: none;
    line-height: 1.25;
    print-color-adjust: exact;
  }
  h2.sheet-title {
    padding: 10px 12px 2px calc(var(--margin) + 12px);
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
  .line .reference .clamped {
    -webkit-line-clamp: none;
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
  /* Many lines on a page, each with all that is to be followed: one line's working runs on as a textbook's does. */
  .line {
    padding-block: 0 1px;
  }
  .line .cell {
    min-height: 0;
    padding-block: 1px;
    line-height: 1.2;
  }
  .entry,
  .stated-value {
    border-bottom: 0;
  }
  /* Which method is in force may take as many words as there is room below the result. */
  .line:not(.column) .calculation:has(.method) {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.9em;
    align-items: baseline;
  }
  .line:not(.column) .calculation .method {
    flex-shrink: 0;
    max-width: calc(100% + var(--equals) + var(--number) + var(--unit));
    font-size: var(--type-small);
    line-height: 1.15;
  }
  /* Lines that explain columns have no result: two stand side by side, each a few rows of text. */
  .column-lines {
    margin-inline-start: calc(var(--margin) + 12px);
    columns: ${PRINTED_COLUMN}px 2;
    column-gap: 24px;
  }
  .column-lines .line {
    display: flow-root;
    padding-block: 1px 2px;
    background: linear-gradient(var(--rule), var(--rule)) 0 100% / 100% 1px no-repeat;
  }
  .column-lines .line .cell {
    padding: 0;
  }
  .column-lines .line .reference {
    float: right;
    max-width: 50%;
    margin-inline-start: 12px;
    text-align: end;
  }
  .column-lines .line :is(.symbol, .description) {
    display: inline;
    margin-inline-end: 7px;
  }
  .column-lines .line .value {
    display: inline-block;
    max-width: calc(100% - 16px);
    margin-inline-start: 16px;
  }
  .column-lines .line :is(.unit, .mark) {
    display: none;
  }
  .unit-behind {
    margin-inline-start: 7px;
    color: var(--ink-soft);
  }
  .line .reference {
    align-self: baseline;
    padding-inline: 4px;
    font-size: var(--type-small);
    line-height: 1.15;
  }
  .line .symbol {
    padding-inline: 8px 6px;
  }
  /* Description and formula on one row, the formula up to its equals sign. */
  .line.shared .description {
    grid-column: label / unit;
  }
  .line.shared .value {
    grid-column: label / unit;
  }
  .line.check.shared .value {
    grid-column: label / mark;
  }
  .line.shared .value > .calculation {
    justify-self: end;
  }
  .line .value > .worked {
    margin-top: 1px;
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
  .calculation > div:has(> .method) {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.9em;
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
  .words-row .cell,
  .part-title .cell.title,
  .words-row.picture .cell.title {
    padding: 2px 12px;
  }
  .words-row .margin {
    padding-inline: 4px;
  }
  .words-row.text .cell.text {
    padding-block: 2px;
  }
  .words-row.caution .cell.text {
    margin: 2px 0 2px 12px;
    padding-block: 2px;
  }
  .paragraphs {
    max-width: 112ch;
  }
  .paragraphs p + p {
    margin-top: 0.2em;
  }
  .words-row .drawing {
    padding: 2px 12px 6px;
  }
  .line.check .calculation {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.2em;
    align-items: baseline;
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
