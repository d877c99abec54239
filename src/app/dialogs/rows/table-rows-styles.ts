import { css } from 'lit';

/** The dialog that takes rows for a table. */
export const tableRowsStyles = css`
  dialog {
    width: min(63.6rem, calc(100vw - 48px));
    /* The foot is higher while it says why the rows are not taken. */
    scroll-padding-block-end: 124px;
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
  .why {
    overflow: hidden;
    flex: 1 1 16rem;
    max-height: 2.9em;
    padding: 0;
    border: none;
    color: var(--ink-soft);
    font-size: 14px;
    line-height: 1.4;
    text-align: start;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 3px;
  }
  .found p {
    margin: 0 0 4px;
  }
  @media (width < 40rem) {
    .why {
      flex-basis: 100%;
    }
  }
`;
