import { css } from 'lit';
import { mathsStyles } from '../style/maths-styles.ts';
import { formStyles } from './form-styles.ts';
import { overviewStyles } from './overview-styles.ts';
import { symbolColumn } from './symbol-column.ts';

/** The page of where the sheets came from. */
export const originStyles = [
  mathsStyles,
  overviewStyles,
  formStyles,
  symbolColumn,
  css`
  :host {
    --maths-size: 15px;
  }
  .what {
    width: 30%;
  }
  .what .quiet {
    font-size: var(--type-small);
  }
  .what .sign {
    width: 12px;
    height: 12px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 2;
    vertical-align: -1px;
    color: var(--accent);
  }
  .side .maths {
    margin: 0;
    padding: 0;
    overflow: auto hidden;
  }
  .side code {
    font: 13px/1.45 var(--code);
    overflow-wrap: anywhere;
  }
  .field {
    display: block;
    font-size: var(--type-small);
  }
  .tools {
    padding-block: 12px 10px;
    font-size: var(--type-small);
  }
  .words[role='status'] {
    padding-block-start: 8px;
  }
  .same {
    list-style: none;
  }
  .since {
    color: var(--warn);
  }
  .why {
    color: var(--bad);
    font-size: var(--type-small);
  }
  .agrees {
    color: var(--good);
  }
  .differs {
    color: var(--bad);
  }
  .verdict {
    box-sizing: border-box;
    width: var(--margin);
    padding-inline-start: 14px;
    white-space: nowrap;
  }
  .verdict + * {
    padding-inline-start: var(--lead);
  }
  td .quiet {
    font-size: var(--type-small);
  }
  .through {
    width: 24%;
    overflow-wrap: anywhere;
  }
  .through button {
    display: block;
    min-height: 24px;
    padding: 0;
    border: 0;
    background: none;
    color: var(--accent);
    font: 13px/1.45 var(--code);
    cursor: pointer;
  }
  .put {
    width: 96px;
  }
  .put button {
    min-height: 24px;
    color: var(--accent);
    font-size: var(--type-small);
  }
  .through s {
    display: block;
    font: 13px/1.45 var(--code);
  }
  @media (width < 48rem) {
    thead {
      display: none;
    }
    :is(table, tbody) {
      display: block;
    }
    tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      border-block-end: 1px solid var(--rule);
    }
    :is(td, th):not(.sheet) {
      width: auto;
      border: 0;
    }
    :host(:not([paper])) tr :is(.name, .what, .verdict) {
      grid-column: 1 / -1;
      width: auto;
      padding-inline-start: 14px;
      text-align: start;
    }
    .of-sheet .name {
      display: none;
    }
    :host(:not([paper])) tr :is(td, .of-sheet th) {
      padding-inline: 14px;
    }
    .of-sheet th,
    :host(:not([paper])) .verdict + td {
      grid-column: 1 / -1;
    }
    .side::before {
      display: block;
      color: var(--ink-soft);
      font-size: var(--type-small);
      content: attr(data-side);
    }
  }
  `,
];
