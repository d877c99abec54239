import { css } from 'lit';

/** How formulas are set: letters in the text face of mathematics, signs and tall brackets in the face made for them. */
export const mathsStyles = css`
  math {
    font-family: var(--maths);
    font-size: 17px;
    math-style: normal;
  }
  /* On a narrow page smaller, which leaves the lines their breaks and some air. */
  @media screen and (max-width: 1200px) {
    math {
      font-size: 15px;
    }
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
  math mo.separator {
    margin-inline-end: 0.25em;
  }
`;
