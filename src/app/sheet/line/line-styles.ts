import { css } from 'lit';
import { numbersStyles } from '../numbers/numbers-view.ts';
import { barStyles } from './utilisation-bar.ts';

/** Lines: every one a grid of the same columns, so that symbols, equals signs, results and units align down the page. */
export const lineStyles = css`
  .line {
    display: grid;
    /* Painted by itself: a change of one line does not have the whole page painted again. */
    isolation: isolate;
    grid-template-columns: var(--tracks);
    align-items: baseline;
    padding-block: 3px;
    background: linear-gradient(var(--rule), var(--rule)) calc(var(--margin) + 24px) 100% /
      calc(100% - var(--margin) - 44px) 1px no-repeat;
  }
  /* The marks of the flow stand on the rule of the margin. */
  .line[data-flow] {
    position: relative;
  }
  .line[data-flow]::before {
    position: absolute;
    top: 11px;
    left: calc(var(--margin) - 4px);
  }
  .line.active {
    background:
      linear-gradient(var(--rule), var(--rule)) calc(var(--margin) + 24px) 100% /
        calc(100% - var(--margin) - 44px) 1px no-repeat,
      linear-gradient(var(--selection), var(--selection)) right / calc(100% - var(--margin) - 1px) 100% no-repeat;
  }
  .line .cell {
    scroll-margin-block: 32px;
    grid-row: 1;
    padding: 3px 6px;
  }
  .line .reference {
    grid-column: reference;
    align-self: center;
    padding: 0 6px 0 10px;
    color: var(--ink-soft);
    font-size: 12px;
    line-height: 1.2;
    hyphens: auto;
    overflow-wrap: break-word;
  }
  .line .reference .clamped {
    display: -webkit-box;
    overflow: hidden;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 3;
  }
  .line .reference .clamped.short {
    -webkit-line-clamp: 2;
  }
  .line.active .reference .clamped {
    -webkit-line-clamp: none;
  }
  .line .reference .of-kind {
    display: block;
    font-style: italic;
  }
  .line.active .reference {
    align-self: baseline;
  }
  .line.under .reference {
    grid-row: 1 / span 2;
    align-self: baseline;
  }
  .line .symbol {
    grid-column: symbol;
    padding-inline: 12px 8px;
    text-align: right;
    white-space: nowrap;
  }
  /* Subscripts hang below the line without pushing it apart. */
  .line .symbol math {
    margin-block: -6px -9px;
  }
  .line.check .symbol math {
    color: var(--ink-soft);
    font-size: 14px;
  }
  .line .description {
    grid-column: label / calculation;
    text-wrap: pretty;
  }
  .line.plain .description {
    grid-column: label / equals;
  }
  .line .value {
    display: grid;
    grid-column: calculation / unit;
    /* The same tracks as the line's, written out: a subgrid's baselines do not count when the line's height is found. */
    grid-template-columns: [calculation] minmax(0, 1fr) [equals] var(--equals) [number] var(--number) [unit];
    align-items: baseline;
    padding-inline: 0;
  }
  .line.plain .value {
    grid-column: equals / unit;
  }
  .line.across .description {
    grid-column: label / unit;
  }
  .line.across .value:not(.edited) {
    display: block;
    grid-column: label / unit;
    justify-self: end;
  }
  .line.across .description.edited {
    z-index: 1;
    background: var(--paper);
  }
  .line .value.edited > * {
    grid-column: 1 / -1;
  }
  .line .unit {
    grid-column: unit;
    padding-inline: 6px 0;
    color: var(--ink-soft);
  }
  /* An empty cell has its baseline where a line of text would. */
  .line .unit:not(.edited)::before,
  .line .description:not(.edited)::before {
    content: '\\200b';
  }
  .line .mark {
    display: flex;
    grid-column: mark;
    align-items: center;
    align-self: start;
    margin-top: 2px;
    padding: 0;
  }
  .line.under .description {
    grid-column: label / end;
  }
  .line.under .value {
    grid-row: 2;
    grid-column: label / unit;
  }
  .line.under .unit {
    grid-row: 2;
  }
  .checked {
    display: inline-flex;
    align-items: center;
    margin-inline-start: 2px;
    border: 1px solid currentcolor;
    border-radius: 50%;
    color: var(--pencil, var(--ink-soft));
  }
  .checked .sign {
    width: 9px;
    height: 9px;
    margin: 2px;
  }
  .checked:is(.differs, .not-comparable) {
    color: var(--bad);
  }
  .checked.stale {
    color: var(--warn);
  }
  .otherwise {
    display: inline-flex;
    margin-inline-start: 2px;
    color: var(--accent);
  }
  .otherwise .sign {
    width: 13px;
    height: 13px;
  }
  .comments {
    padding-inline: 3px;
    font-size: 11px;
    font-weight: 700;
    line-height: 13px;
    color: var(--warn);
  }
  .line.under .mark {
    grid-row: 1;
  }
  .written {
    font: 14px / 1.5 var(--code);
    white-space: pre-wrap;
    overflow-wrap: anywhere;
  }
  .calculation {
    grid-column: calculation;
    min-width: 0;
    padding-inline: 6px 8px;
  }
  ${numbersStyles}
  .line .value > .worked {
    grid-row: 2;
    grid-column: 1 / -1;
  }
  .maths.numbers math {
    font-size: calc(var(--maths-size) - 1px);
  }
  .line .value > .calculation,
  .line .value > .equals,
  .line .value > .number {
    grid-row: 1;
  }
  .line .value > .equals {
    grid-column: equals;
    text-align: center;
    font-family: var(--serif);
    font-size: 17px;
  }
  .number {
    grid-column: number;
    padding-inline: 4px;
    font-weight: 600;
    text-align: right;
    white-space: nowrap;
  }
  .number.words {
    grid-column: equals / unit;
    padding-inline-start: 22px;
    white-space: normal;
  }
  .line.under .number.words {
    grid-column: equals / -1;
  }
  /* Unseen digits behind a number have the decimal marks of neighbouring lines stand below one another. */
  [data-behind]::after {
    visibility: hidden;
    content: attr(data-behind);
  }
  .entry {
    grid-column: 1 / -1;
    justify-self: end;
    min-width: 2.2em;
    margin-inline-end: 4px;
    padding-inline: 2px 0;
    border-bottom: 1px solid var(--pen-rule);
    color: var(--pen);
    font-weight: 600;
    text-align: right;
    white-space: nowrap;
  }
  .stated-value {
    display: inline-block;
    min-width: 2.2em;
    padding-inline-start: 2px;
    border-bottom: 1px solid var(--pen-rule);
    color: var(--pen);
  }
  .stated-reason,
  .to-link,
  .of-formula {
    display: block;
  }
  .to-link {
    color: var(--warn);
  }
  .to-link.broken {
    color: var(--bad);
  }
  .linked > span {
    color: var(--ink-soft);
  }
  .stated-reason {
    color: var(--pen);
  }
  .of-formula {
    margin-top: 2px;
  }
  .reason-field {
    grid-column: 1 / -1;
    width: 100%;
    padding: 2px 6px 3px;
  }
  .entry.words {
    white-space: normal;
    text-wrap: balance;
  }
  .entry.choice {
    cursor: pointer;
  }
  .entry.choice .sign {
    margin-inline-end: 6px;
    width: 12px;
    height: 12px;
    stroke-width: 2;
  }
  .calculation > .entry {
    display: inline-block;
    text-align: left;
  }
  .entry.blank {
    color: var(--ink-soft);
    font-weight: 400;
  }
  .entry.blank.optional {
    padding-bottom: 1px;
    border-bottom: 0;
  }
  .calculation .method {
    display: block;
    color: var(--ink-soft);
    font-size: 12px;
  }
  /* The results of a column stand in its table: its formula has their room. */
  .line.column .calculation {
    grid-column: calculation / -1;
  }
  .quiet.calculation {
    font-style: italic;
  }
  .line .value > .sentence {
    grid-column: 1 / -1;
    padding-inline: 6px;
  }
  .line.plain.told .value {
    grid-column: label / unit;
    grid-row: 2;
  }
  .line.plain.told .unit {
    grid-row: 2;
  }
  .compared {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.45em;
  }
  .compared > span {
    white-space: nowrap;
  }
  .compared .than {
    font-family: var(--maths);
  }
  .line.check .value {
    grid-column: calculation / mark;
    grid-template-columns:
      [calculation] minmax(0, 1fr) [equals] var(--equals) [number] var(--number) [unit] var(--unit);
  }
  .line.check.under .value {
    grid-column: label / mark;
  }
  .line.check > .unit {
    display: none;
  }
  .verdict {
    display: grid;
    grid-column: equals / -1;
    grid-template-columns: [equals] var(--equals) [number] var(--number) [unit] minmax(0, 1fr);
    align-items: baseline;
    font-weight: 600;
    white-space: nowrap;
  }
  .verdict > svg {
    grid-row: 1;
    grid-column: equals / unit;
    align-self: center;
    justify-self: start;
    margin-inline-start: 4px;
  }
  .verdict .share {
    grid-row: 1;
    grid-column: number;
    padding-inline-end: 4px;
    text-align: right;
  }
  .verdict .word {
    grid-column: unit;
    padding-inline-start: 6px;
  }
  .verdict.holds {
    color: var(--good);
  }
  .verdict.fails {
    color: var(--bad);
  }
  .verdict.beyond {
    color: var(--warn);
  }
  .verdict .share {
    color: var(--ink);
  }
  .verdict.fails .share {
    color: var(--bad);
  }
  ${barStyles}
  @media (pointer: coarse) {
    .line .reference {
      align-content: center;
      min-height: 24px;
    }
  }
  /* Forced colours leave out every background, and with it the rule below a line. */
  @media (forced-colors: active) {
    .line {
      position: relative;
    }
    .line::after {
      position: absolute;
      inset: auto 20px 0 calc(var(--margin) + 24px);
      border-block-end: 1px solid var(--rule);
      content: '';
    }
  }
`;
