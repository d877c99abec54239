import { css } from 'lit';

/** The desk and the sheet of paper on it: what a sheet and the overview have in common. */
export const paperStyles = css`
  :host {
    display: block;
    height: 100%;
    overflow: auto;
    scrollbar-gutter: stable;
    background: var(--desk);
    color: var(--ink);
    font: var(--type) / 1.4 var(--text);
    font-variant-numeric: lining-nums tabular-nums;
  }
  .page {
    position: relative;
    box-sizing: border-box;
    min-height: calc(100% - 56px);
    /* What is narrower still is scrolled sideways. */
    min-width: var(--least);
    max-width: 1080px;
    margin: 20px auto 36px;
    padding-bottom: 48px;
    background:
      linear-gradient(var(--rule-strong), var(--rule-strong)) var(--margin) 0 / 1px 100% no-repeat,
      linear-gradient(var(--margin-tint), var(--margin-tint)) 0 0 / var(--margin) 100% no-repeat,
      var(--paper);
    box-shadow: var(--shadow);
  }
  ::slotted(*) {
    background: var(--paper);
  }
  /* Forced colours leave out every background: the edge of the paper and the margin's rule become lines. */
  @media (forced-colors: active) {
    .page {
      outline: 1px solid;
    }
    .page::before {
      position: absolute;
      inset: 0 auto 0 var(--margin);
      border-inline-start: 1px solid;
      content: '';
    }
  }
`;
