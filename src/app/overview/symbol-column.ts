import { css } from 'lit';

/** Rows whose symbols stand in the margin of a page about the book, at its line, sheet by sheet. */
export const symbolColumn = css`
  table {
    table-layout: fixed;
  }
  th.name {
    width: var(--margin);
  }
  .name {
    box-sizing: border-box;
    padding-inline: 8px 14px;
    text-align: end;
  }
  .name + * {
    padding-inline-start: var(--lead);
  }
  /* In a narrower window too what stands behind the symbol begins where headings do. */
  :host(:not([paper])) .name + :is(th, td) {
    padding-inline-start: var(--lead);
  }
  .of-sheet th {
    padding-block: 18px 4px;
    font-weight: 600;
    text-align: start;
  }
  .of-sheet .quiet {
    margin-inline-start: 8px;
    font-weight: 400;
    font-size: var(--type-small);
  }
`;
