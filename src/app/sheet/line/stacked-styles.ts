import { css } from 'lit';

/**
 * Lines on a page too narrow for their parts to stand side by side: the description with the symbol before it, below it the
 * value with its unit at the right, then a formula that does not fit beside it, and last the reference.
 */
export const stackedStyles = css`
  .stacked .line .cell.description {
    grid-row: 1;
    grid-column: label / mark;
  }
  .stacked .line .cell.value {
    grid-row: 2;
    grid-column: label / unit;
    grid-template-columns: [calculation] minmax(0, 1fr) [equals] var(--equals) [number] var(--number) [unit];
  }
  .stacked .line.across .cell.value:not(.edited) {
    display: grid;
    justify-self: stretch;
  }
  .stacked .line.check .cell.value {
    grid-column: label / mark;
    grid-template-columns: [calculation] minmax(0, 1fr) [equals] var(--equals) [number] var(--number) [unit] var(--unit);
  }
  .stacked .line .cell.unit {
    grid-row: 2;
  }
  /* A formula with a line of its own has the room of the unit too. */
  .stacked .line.under .cell.value > .calculation {
    grid-row: 2;
    grid-column: 1 / -1;
    margin-inline-end: calc(-1 * var(--unit));
  }
  .stacked .line.column .cell.value > .calculation {
    grid-column: 1 / -1;
    margin-inline-end: calc(-1 * var(--unit));
  }
  .stacked .line.check.under .cell.value > .calculation {
    margin-inline-end: 0;
  }
  .stacked .line.under .cell.value > .equals {
    visibility: hidden;
  }
  .stacked .line .cell.value > .worked {
    grid-row: 3;
  }
  .stacked .line .cell.reference {
    grid-row: 3;
    grid-column: label / end;
    align-self: baseline;
    padding: 0 6px 3px;
  }
  /* Beside an entry alone there is room for it. */
  .stacked .line.plain:not(.told) .cell.value {
    grid-column: equals / unit;
  }
  .stacked .line.plain:not(.told) .cell.reference {
    grid-row: 2;
    grid-column: label / equals;
  }
  .stacked .line .cell.mark {
    grid-row: 1;
  }
  .stacked .words-row .margin {
    grid-column: 2 / -1;
    padding: 4px 12px 0 24px;
  }
  .stacked .words-row .margin:empty {
    display: none;
  }
  .stacked .words-row > .cell:not(.margin, .mark) {
    grid-column: 2;
  }
  .stacked .words-row > .cell.mark {
    grid-column: 3;
  }
`;
