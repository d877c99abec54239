import { css } from 'lit';
import { mathsStyles } from '../style/maths-styles.ts';
import { formStyles } from './form-styles.ts';
import { overviewStyles } from './overview-styles.ts';
import { symbolColumn } from './symbol-column.ts';

/** The page of what was checked by hand. */
export const checkingStyles = [
  mathsStyles,
  overviewStyles,
  formStyles,
  symbolColumn,
  css`
  .tolerance {
    width: 5.5em;
  }
  /* The button of a row covers it, but for what is entered there. */
  .hand > * {
    position: relative;
    z-index: 1;
  }
  .result {
    width: 19%;
    overflow-wrap: break-word;
    white-space: normal;
  }
  .hand {
    width: 148px;
  }
  .state {
    width: 132px;
    padding-inline-start: 14px;
  }
  .agrees,
  .seen {
    color: var(--good);
  }
  .differs,
  .not-comparable {
    color: var(--bad);
  }
  .stale {
    color: var(--warn);
  }
  .why {
    color: var(--bad);
    font-size: var(--type-small);
  }
  .apart {
    color: var(--ink-soft);
    font-size: var(--type-small);
    white-space: nowrap;
  }
  tr.entry .result {
    color: var(--pen);
  }
  .gone button {
    border: 0;
    background: none;
    color: var(--accent);
    font: inherit;
    cursor: pointer;
  }
  /* One column of words, and below them the result, the field and the state. */
  @media (width < 34rem) {
    :is(table, tbody) {
      display: block;
    }
    thead {
      display: none;
    }
    tr {
      display: grid;
      grid-template-columns: 1fr 1fr 1fr;
      border-block-end: 1px solid var(--rule);
    }
    :is(td, th):not(.sheet) {
      width: auto;
      border: 0;
    }
    .name + * {
      grid-column: 2 / -1;
    }
    :host(:not([paper])) tr .name {
      width: auto;
      text-align: start;
    }
    .of-sheet .name {
      display: none;
    }
    .of-sheet th {
      grid-column: 1 / -1;
    }
    .hand {
      padding-inline: 0;
    }
  }
  @media (34rem <= width < 48rem) {
    th.name {
      width: 84px;
    }
    .hand {
      width: 120px;
    }
    .state {
      width: 96px;
    }
  }
  `,
];
