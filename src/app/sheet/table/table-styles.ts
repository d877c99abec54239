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
  .table-frame {
    position: relative;
    isolation: isolate;
    margin: 2px 20px 0 calc(var(--margin) + 24px);
  }
  .table-window {
    overflow: auto hidden;
    scroll-padding: calc(var(--head) + 2px) 40px 2px calc(var(--stuck) + 2px);
    scrollbar-width: thin;
  }
  .table-window.long {
    overflow: auto;
    contain: strict;
    height: min(640px, 70vh);
  }
  /* Where columns lie out of sight, the table goes under an edge. */
  .table-frame::before,
  .table-frame::after {
    position: absolute;
    z-index: 4;
    inset-block: 0;
    width: 14px;
    opacity: 0;
    content: '';
    pointer-events: none;
    transition: opacity 0.15s;
  }
  .table-frame::before {
    left: var(--stuck);
    border-left: 1px solid var(--rule-strong);
    background: linear-gradient(to right, var(--edge), transparent);
  }
  .table-frame::after {
    right: 0;
    border-right: 1px solid var(--rule-strong);
    background: linear-gradient(to left, var(--edge), transparent);
  }
  .table-frame.scrolled::before,
  .table-frame.goes-on::after {
    opacity: 1;
  }
  .table-grid {
    width: max-content;
    border-bottom: 1.5px solid var(--ink);
  }
  .table-row {
    box-sizing: border-box;
    display: grid;
    grid-template-columns: var(--columns);
    align-items: stretch;
    border-bottom: 1px solid var(--rule);
    background: var(--paper);
  }
  .table-row.head {
    position: sticky;
    top: 0;
    z-index: 3;
    border-block: 1.5px solid var(--ink);
    border-bottom-width: 1px;
  }
  .column-head[data-flow] {
    position: relative;
  }
  /* Beside the symbol, in the room between columns. */
  .column-head[data-flow]::before {
    position: absolute;
    right: -1px;
    bottom: 12px;
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
  }
  .table-grid > .table-row:last-child {
    border-bottom-color: transparent;
  }
  .table-row.active {
    background: var(--selection);
  }
  .table-row .cell {
    min-width: 0;
    padding: 4px 9px;
    overflow: hidden;
    line-height: 21px;
    text-align: right;
    text-overflow: ellipsis;
    white-space: nowrap;
    scroll-margin-block: 8px;
  }
  .table-row .cell.words {
    text-align: left;
  }
  .table-row .cell.stated {
    color: var(--pen);
  }
  .table-row .cell.stated .said {
    margin-inline-start: 0.5em;
    font-size: 0.8em;
    color: var(--ink-soft);
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
  .wide-editor {
    position: absolute;
    z-index: 5;
    top: max(0px, min(var(--top), 100% - 30px));
    left: max(0px, min(var(--left), 100% - 420px));
    width: min(420px, 100%);
    text-align: left;
  }
  /* What belongs to the last row stands below the table, not over the row. */
  .wide-editor.below {
    top: max(0px, min(var(--top), 100%));
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
  .row-number,
  .table-row .cell.stays {
    position: sticky;
    left: 0;
    z-index: 2;
    background-color: var(--paper);
  }
  .table-row .cell.stays {
    left: var(--number);
  }
  .table-row.active > .row-number,
  .table-row.active > .cell.stays {
    background-color: var(--selection);
  }
  .row-number {
    padding: 4px 10px 4px 0;
    color: var(--ink-soft);
    font-size: var(--type-small);
    line-height: 21px;
    text-align: right;
    cursor: default;
    user-select: none;
  }
  .table-foot :is(span, button) {
    margin-inline-end: 16px;
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
