import { css } from 'lit';

/** Tables as books set them: rules above and below, one under the head, numbers to the right, no verticals. */
export const tableStyles = css`
  quay-table {
    display: block;
    margin-top: 22px;
  }
  quay-table .name {
    padding-inline-start: 8px;
    font-family: var(--serif);
    font-style: italic;
    font-size: 15px;
  }
  .part-title .cell.title {
    grid-column: 2;
    padding-inline: 24px 12px;
  }
  .table-window {
    margin-inline-start: var(--margin);
    padding-inline: 24px 16px;
    overflow: auto hidden;
    scrollbar-width: thin;
  }
  .table-window.long {
    overflow: auto;
    contain: strict;
    height: min(640px, 70vh);
  }
  .table-grid {
    width: max-content;
    border-bottom: 1.5px solid var(--ink);
  }
  .table-row {
    display: grid;
    grid-template-columns: var(--columns);
    align-items: stretch;
    background: linear-gradient(var(--rule), var(--rule)) left bottom / 100% 1px no-repeat;
  }
  .table-row.head {
    position: sticky;
    top: 0;
    z-index: 1;
    align-items: end;
    border-block: 1.5px solid var(--ink);
    border-bottom-width: 1px;
    background: var(--paper);
  }
  .column-head[data-flow] {
    position: relative;
  }
  /* On the rule below the head. */
  .column-head[data-flow]::before {
    position: absolute;
    right: 2px;
    bottom: -5px;
  }
  .table-space {
    position: relative;
  }
  .table-space .table-row {
    position: absolute;
    inset: 0 0 auto;
  }
  .table-row:not(.head) {
    height: 30px;
    scroll-margin-top: 72px;
  }
  .table-row.active {
    background-color: var(--selection);
  }
  .table-row .cell {
    min-width: 0;
    padding: 4px 9px;
    overflow: hidden;
    line-height: 22px;
    text-align: right;
    text-overflow: ellipsis;
    white-space: nowrap;
    scroll-margin: 72px 60px 8px;
  }
  .table-row .cell.words {
    text-align: left;
  }
  .table-row .cell.entered {
    color: var(--pen);
  }
  .table-row .cell.bad {
    background: var(--bad-tint);
    color: var(--bad);
  }
  .table-row .cell.bad .sign {
    margin-inline-end: 4px;
  }
  .table-row .cell.waits::after {
    color: var(--ink-soft);
    content: '·';
  }
  .table-row .cell.edited {
    position: relative;
    z-index: 2;
    padding: 1px;
    overflow: visible;
  }
  .table-row .cell.column-head.edited {
    min-width: 420px;
    text-align: left;
  }
  .table-row .cell.column-head {
    display: flex;
    flex-direction: column;
    justify-content: end;
    padding-block: 6px;
    font-size: var(--type-small);
    line-height: 1.25;
    white-space: normal;
  }
  .column-head .symbol-unit {
    margin-top: 2px;
    white-space: nowrap;
  }
  .column-head math {
    font-size: 16px;
  }
  .column-head .unit {
    color: var(--ink-soft);
  }
  .row-number {
    position: sticky;
    left: -24px;
    z-index: 1;
    padding: 4px 10px 4px 0;
    background: var(--paper);
    color: var(--ink-soft);
    font-size: var(--type-small);
    line-height: 22px;
    text-align: right;
  }
  .table-foot span + :is(span, button) {
    margin-inline-start: 16px;
  }
  .table-foot {
    margin: 5px 16px 8px calc(var(--margin) + 24px);
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .table-foot output {
    color: var(--ink);
    font-weight: 600;
  }
  .column-lines .line .unit {
    grid-column: unit;
  }
`;
