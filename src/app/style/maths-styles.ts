import { css } from 'lit';

/** How formulas are set: letters in the text face of mathematics, signs and tall brackets in the face made for them. */
export const mathsStyles = css`
  math {
    font-family: var(--maths);
    font-size: var(--maths-size, 17px);
    math-style: normal;
  }
  math :is(mi, mn, mtext) {
    font-family: var(--serif);
    text-transform: none;
  }
  math mtext {
    white-space: pre;
  }
  math mi.v {
    font-style: italic;
  }
  math mi.u {
    font-style: normal;
  }
  math mn {
    font-variant-numeric: lining-nums tabular-nums;
  }
  math mtable.cases {
    math-style: normal;
    math-shift: normal;
    margin-inline-start: 2px;
  }
  math mtable.cases mtd {
    padding: 3px 0;
    text-align: start;
  }
  math mtable.cases mtd + mtd {
    padding-inline-start: 1.1em;
  }
  /* A fraction is no taller than its ink, which would meet that of the next line. */
  math mfrac {
    padding-block: 0.12em;
  }
  math mo.separator {
    margin-inline-end: 0.25em;
  }
  .maths {
    display: flex;
    align-items: baseline;
  }
  .maths .lines {
    min-width: 0;
    overflow: auto hidden;
    scrollbar-width: thin;
  }
  .maths-line {
    padding-block: 1px;
    font-size: var(--maths-size, 17px);
  }
  .maths-line + .maths-line {
    padding-block-start: 3px;
  }
  .maths .equals {
    padding-inline-end: 5px;
  }
`;
