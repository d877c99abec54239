import { css } from 'lit';

/** An open book: the bars above and below, the sheet between them, and the two sides, beside the sheet or over it. */
export const bookLayout = css`
  .book {
    display: grid;
    position: relative;
    grid-template: auto minmax(0, 1fr) auto / auto minmax(0, 1fr) auto;
    height: 100%;
    background: var(--desk);
  }
  header,
  footer {
    grid-column: 1 / -1;
    min-width: 0;
  }
  main {
    grid-area: 2 / 2;
    min-width: 0;
    min-height: 0;
    /* What lies over the sheet lies over all of it. */
    isolation: isolate;
  }
  .side {
    box-sizing: border-box;
    min-height: 0;
  }
  .side[hidden] {
    display: none;
  }
  .side:focus {
    outline: none;
  }
  .list {
    grid-area: 2 / 1;
    width: 220px;
  }
  .panel {
    grid-area: 2 / 3;
    width: 300px;
  }
  .side.over {
    z-index: 1;
    position: absolute;
    grid-area: 2 / 1 / 3 / -1;
    inset-block: 0;
    width: min(300px, calc(100% - 40px));
    box-shadow: var(--shadow-raised);
  }
  .list.over {
    inset-inline: 0 auto;
    border-inline-end: 1px solid var(--rule-strong);
    background: var(--desk);
  }
  .panel.over {
    inset-inline: auto 0;
    border-inline-start: 1px solid var(--rule-strong);
  }
  @media (max-width: 1280px) {
    .list:not(.over) {
      width: 176px;
    }
    .panel:not(.over) {
      width: 250px;
    }
  }
  @media (max-width: 1100px) {
    .list:not(.over) {
      width: 152px;
    }
    .panel:not(.over) {
      width: 216px;
    }
  }
  /* Paper has the printed book in place of all that stands on the screen. */
  @media print {
    .book {
      display: none;
    }
  }
`;
