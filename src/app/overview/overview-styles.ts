import { css, unsafeCSS } from 'lit';
import { figureCss } from '../../figures/index.ts';
import { PRINT_WIDTH, PRINTED_NOTES } from '../sheet/paper/page-measure.ts';
import { paperStyles } from '../style/paper-styles.ts';

/** The overview: the paper of a sheet, with the sheets' names in its margin. */
export const overviewStyles = css`
  ${unsafeCSS(figureCss)}
  ${paperStyles}
  :host {
    --margin: 158px;
    --lead: 24px;
    --least: 620px;
  }
  slot {
    display: block;
    position: relative;
  }
  h2,
  h3,
  .words {
    margin: 0;
    padding: 0 40px 0 calc(var(--margin) + var(--lead));
  }
  .order {
    display: flex;
    flex-wrap: wrap;
    gap: 0 20px;
    align-items: center;
    border: 0;
    padding-block-end: 6px;
    font-size: var(--type-small);
  }
  .order legend {
    float: left;
    padding: 0;
    color: var(--ink-soft);
  }
  .order label {
    display: flex;
    gap: 6px;
    align-items: center;
    min-height: 24px;
  }
  .order input {
    margin: 0;
    accent-color: var(--accent);
  }
  .bars [data-check] {
    cursor: pointer;
  }
  .bars [data-check]:hover .hit {
    fill: var(--selection);
  }
  :is(h2, h3):focus-visible {
    text-decoration: underline 2px var(--accent);
    text-underline-offset: 5px;
  }
  h2 {
    padding-block: 26px 10px;
    outline: none;
    font-size: var(--type-title);
    font-weight: 600;
    line-height: 1.25;
  }
  h3 {
    outline: none;
    padding-block: 32px 8px;
    font-size: 16px;
    font-weight: 600;
  }
  .quiet {
    color: var(--ink-soft);
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  h3 + table {
    margin-top: 0;
  }
  .words + table {
    margin-top: 16px;
  }
  tr {
    position: relative;
  }
  :is(th, td) {
    padding: 6px 10px;
    text-align: start;
    line-height: 20px;
    vertical-align: top;
  }
  th {
    padding-block: 4px;
    color: var(--ink-soft);
    font-size: var(--type-small);
    font-weight: 400;
  }
  :is(th, td):not(.sheet) {
    border-bottom: 1px solid var(--rule);
  }
  .sheet {
    box-sizing: border-box;
    width: var(--margin);
    padding-inline: 14px 12px;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .sheet + * {
    padding-inline-start: var(--lead);
  }
  .name {
    width: 72px;
    white-space: nowrap;
  }
  .number {
    text-align: end;
    white-space: nowrap;
  }
  :is(.number, .why, .name) .quiet {
    font-size: var(--type-small);
    white-space: normal;
  }
  .condition {
    --maths-size: 14px;
  }
  .sides > span {
    white-space: nowrap;
  }
  .pen {
    color: var(--pen);
    font-weight: 600;
  }
  .pen .quiet {
    font-weight: 400;
  }
  .open {
    color: var(--warn);
    font-weight: 600;
  }
  .broken {
    color: var(--bad);
    font-weight: 600;
  }
  .use {
    font-weight: 600;
  }
  .verdict {
    width: 84px;
    padding-inline-end: 20px;
    white-space: nowrap;
  }
  .verdict span {
    font-weight: 600;
  }
  .verdict .quiet {
    font-weight: 400;
  }
  .holds {
    color: var(--good);
  }
  .fails {
    color: var(--bad);
  }
  .out-of-range {
    color: var(--warn);
  }
  .told.problem {
    color: var(--bad);
  }
  .told.warning {
    color: var(--warn);
  }
  .told .sign {
    position: absolute;
    margin-block-start: 3px;
  }
  .told > :not(.sign) {
    margin-inline-start: 22px;
  }
  .prose button {
    max-width: 68ch;
  }
  button {
    padding: 0;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    text-align: start;
    cursor: pointer;
  }
  .goes button::after {
    position: absolute;
    inset: 0 0 0 var(--margin);
    content: '';
  }
  .goes:hover > :not(.sheet) {
    background: color-mix(in srgb, var(--selection) 55%, transparent);
  }
  button:focus-visible {
    outline: none;
  }
  button:focus-visible::after {
    outline: 2px solid var(--accent);
    outline-offset: -2px;
  }
  .sign {
    width: 14px;
    height: 14px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.5;
    stroke-linecap: round;
    stroke-linejoin: round;
    vertical-align: -2px;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  @media (max-width: 1280px) {
    :host(:not([paper])) {
      --margin: 108px;
      --lead: 16px;

      :is(th, td) {
        padding-inline: 7px;
      }
      /* Text within the width of a scroll bar from the edge is not painted where its room is kept, as with one letter. */
      :is(th, td):first-child {
        padding-inline-start: 14px;
      }
    }
  }
  /* In a narrow window the margin goes: a sheet's name stands above the first of its rows. */
  @media (width < 48rem) {
    :host(:not([paper])) {
      --margin: 0px;
      --lead: 16px;
      --least: 0px;

      :is(h2, h3, .words) {
        padding-inline: 16px;
      }
      .sheet {
        width: 0;
        padding-inline: 0;
        font-size: 0;
      }
      .sheet > span:not(.unseen) {
        position: absolute;
        inset: 6px auto auto 16px;
        font-size: var(--type-small);
      }
      .sheet + * {
        padding-inline-start: 16px;
      }
      tr:has(> td.sheet > span:not(.unseen)) > td:not(.sheet) {
        padding-block-start: 30px;
      }
      .name {
        width: 44px;
      }
      .verdict {
        width: auto;
        padding-inline-end: 8px;
        white-space: normal;
      }
    }
  }
  :host([paper]) {
    --margin: 100px;
    --lead: 0px;
    --type-small: ${PRINTED_NOTES}px;

    height: auto;
    overflow: visible;

    /* Set wider than the 700 px of A4 and of Letter within their margins, and fitted to them, as sheets are. */
    .page {
      width: ${PRINT_WIDTH}px;
      zoom: calc(700 / ${PRINT_WIDTH});
      max-width: none;
      min-height: 0;
      margin: 0;
      padding: 0;
      background: none;
      box-shadow: none;
      print-color-adjust: exact;
    }
    /* A drawing of bars cannot be broken; it is made no taller than a page. */
    .quay-figure {
      break-inside: avoid;
    }
    h3 {
      break-after: avoid;
    }
    tr {
      break-inside: avoid;
    }
    :is(th, td) {
      padding-block: 2px;
      line-height: 1.25;
    }
    :is(h2, h3) {
      padding-block: 12px 3px;
    }
    /* What is said of a check takes what its figures leave. */
    .described {
      width: 100%;
    }
    .use {
      width: 40px;
    }
    .verdict {
      width: 60px;
      padding-inline-end: 4px;
    }
    .not-applying {
      padding-block: 6px 0;
      padding-inline-end: 0;
      font-size: var(--type-small);
      line-height: 1.3;
    }
    /* The margin keeps its width, however wide the columns beside it would be. */
    .sheet::before {
      display: block;
      width: calc(var(--margin) - 12px);
      content: '';
    }
    .sheet {
      padding-inline: 0 12px;
    }
    :is(h2, h3, .words) {
      padding-inline: 0;
    }
    .bar-cell {
      width: 54px;
      padding-inline: 0 12px;
    }
  }
`;
