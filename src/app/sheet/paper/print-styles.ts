import { css } from 'lit';
import { PRINTED_NUMBERS } from './page-measure.ts';

/** On paper the sheet alone, its lines unbroken. */
export const printStyles = css`
  @media print {
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
    .line.active,
    .cell[aria-selected='true'] {
      background-color: transparent;
    }
    .line .reference .clamped {
      -webkit-line-clamp: none;
    }
    .cell:focus {
      outline: 0;
    }
    .menu-button,
    .quiet-button:not([data-go-item]),
    .drawing details,
    .entry.choice .sign,
    .refusal {
      display: none;
    }
    /* The numbers put in are there to be followed, not to be found. */
    .worked,
    .maths.numbers,
    .compared + .maths {
      --maths-size: ${PRINTED_NUMBERS}px;

      color: var(--ink-soft);
    }
    .line .reference {
      align-self: baseline;
    }
    .quiet-button {
      color: inherit;
      text-decoration: none;
    }
  }
`;
