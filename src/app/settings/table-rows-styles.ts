import { css } from 'lit';

/** The dialog that takes rows for a table. */
export const tableRowsStyles = css`
  dialog {
    width: min(63.6rem, calc(100vw - 48px));
  }
  @media (width < 40rem) {
    dialog {
      width: calc(100vw - 16px);
    }
  }
  .field textarea {
    font: 13px/1.45 var(--code);
    white-space: pre;
  }
  .file {
    display: flex;
    gap: 10px;
    align-items: baseline;
    margin-block-start: 8px;
  }
  .columns {
    columns: 15rem;
    margin: 8px 0 0;
    padding: 0;
    font-size: 14px;
    list-style: none;
  }
  .columns li {
    padding-inline-start: 1rem;
    text-indent: -1rem;
    break-inside: avoid;
  }
  .columns span {
    color: var(--ink-soft);
  }
  .found {
    margin-block: 14px;
  }
  .found p {
    margin: 0 0 4px;
  }
`;
