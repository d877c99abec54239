import { css } from 'lit';
import { PRINTED_NUMBERS } from './page-measure.ts';

/** On paper the sheet alone, its lines unbroken. */
export const printStyles = css`
  :host {
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
    print-color-adjust: exact;
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
    padding-block: 1px;
  }
  .line .cell {
    padding-block: 2px;
    line-height: 1.3;
  }
  .line .reference {
    align-self: baseline;
    line-height: 1.15;
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
    margin-top: 12px;
  }
  .words-row .cell {
    padding-block: 2px;
  }
  .quiet-button {
    color: inherit;
    text-decoration: none;
  }
`;
