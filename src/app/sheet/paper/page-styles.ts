import { css, unsafeCSS } from 'lit';
import { figureCss } from '../../../figures/index.ts';
import { paperStyles } from '../../style/paper-styles.ts';
import { footStyles } from '../block-foot.ts';

/** The desk, the sheet of paper on it, and what stands on the paper besides lines and tables. */
export const pageStyles = css`
  ${unsafeCSS(figureCss)}
  ${paperStyles}
  slot[name='title-block'] {
    display: block;
    position: relative;
  }
  h2.sheet-title {
    margin: 0;
    padding: 26px 40px 6px calc(var(--margin) + 24px);
    font-size: var(--type-title);
    font-weight: 600;
    line-height: 1.25;
    letter-spacing: -0.005em;
  }
  .part {
    content-visibility: auto;
    contain-intrinsic-block-size: auto 320px;
  }
  .part.untitled {
    margin-top: 12px;
  }
  .words-row,
  .part-title {
    display: grid;
    position: relative;
    grid-template-columns: var(--margin) minmax(0, 1fr) 34px;
    align-items: baseline;
  }
  .words-row .margin {
    padding: 0 12px 0 14px;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .words-row .cell {
    padding: 5px 12px 5px 24px;
  }
  .words-row .cell.mark,
  .part-title .cell.mark {
    padding: 0;
  }
  h3 {
    margin: 0;
    font: inherit;
  }
  .words-row.part-title,
  .words-row.picture {
    margin-top: 22px;
  }
  .part-title .cell.title,
  .words-row.picture .cell.title {
    padding-top: 6px;
    padding-bottom: 6px;
    font-size: 16px;
    font-weight: 600;
  }
  .words-row.heading {
    margin-top: 26px;
  }
  .words-row.heading .cell.text {
    font-size: var(--type-large);
    font-weight: 600;
  }
  .paragraphs {
    max-width: 68ch;
  }
  .paragraphs p {
    margin: 0;
  }
  .paragraphs p + p {
    margin-top: 0.5em;
  }
  .words-row.text .cell.text {
    padding-top: 8px;
    padding-bottom: 8px;
  }
  .words-row.caution .cell.text {
    display: grid;
    grid-template-columns: 18px minmax(0, 1fr);
    gap: 8px;
    align-items: baseline;
    margin: 6px 0 6px 24px;
    padding: 4px 12px 4px 10px;
    border-inline-start: 2px solid var(--warn);
  }
  .words-row.caution .margin {
    color: var(--warn);
    font-weight: 600;
  }
  .words-row.open-item .cell.text {
    display: grid;
    grid-template-columns: 18px minmax(0, 1fr);
    gap: 8px;
    align-items: baseline;
    padding-inline-start: 20px;
  }
  .words-row.source .cell.text,
  .words-row.assumption .cell.text {
    color: var(--ink);
  }
  .words-row.source .cell.text {
    color: var(--ink-soft);
    font-size: 14px;
  }
  .words-row .drawing {
    grid-column: 2 / -1;
    padding: 8px 24px 16px;
  }
  .drawing details {
    margin-top: 4px;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .drawing summary {
    width: max-content;
    padding-block: 3px;
    cursor: pointer;
  }
  .alternative {
    max-height: 260px;
    margin-top: 6px;
    overflow: auto;
  }
  .alternative table {
    border-collapse: collapse;
    color: var(--ink);
  }
  .alternative :is(th, td) {
    padding: 2px 14px 2px 0;
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
    text-align: right;
  }
  .quiet {
    color: var(--ink-soft);
    font-weight: 400;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .cell {
    min-height: 1lh;
    outline: 0 solid transparent;
    border-radius: var(--radius);
    cursor: cell;
  }
  .cell[aria-selected='true']:not(.mark) {
    background: var(--selection);
  }
  .cell:focus {
    outline: 2px solid var(--accent);
    outline-offset: -1px;
  }
  .cell[data-waits] {
    caret-color: transparent;
  }
  .composing {
    text-decoration: underline dotted;
  }
  .cell.edited {
    outline: 0;
    background: none;
    cursor: auto;
  }
  .sign {
    width: 14px;
    height: 14px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.5;
    stroke-linecap: round;
    stroke-linejoin: round;
    vertical-align: -2px;
  }
  .sign.problem,
  .sign.fails {
    color: var(--bad);
  }
  .sign.warning,
  .sign.open {
    color: var(--warn);
  }
  .sign.holds {
    color: var(--good);
  }
  .menu-button {
    display: block;
    width: 24px;
    height: 24px;
    margin-inline-start: auto;
    padding: 0;
    border: 0;
    border-radius: var(--radius);
    background: none;
    color: var(--ink-soft);
    opacity: 0;
    cursor: pointer;
  }
  .menu-button .sign {
    stroke-width: 2.4;
  }
  :is(.line, .words-row, .part-title):hover .menu-button,
  .active .menu-button {
    opacity: 1;
  }
  .menu-button:hover {
    background: var(--selection);
    color: var(--ink);
  }
  .quiet-button {
    padding: 0;
    border: 0;
    background: none;
    color: var(--accent);
    font: inherit;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 3px;
    cursor: pointer;
  }
  ${footStyles}
  .plain-button {
    margin: 4px 8px 4px 0;
    padding: 6px 14px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
    cursor: pointer;
  }
  .plain-button:hover {
    border-color: var(--accent);
    color: var(--accent);
  }
  .empty {
    padding: 16px 24px 16px calc(var(--margin) + 24px);
    color: var(--ink-soft);
  }
  .sentence {
    display: grid;
    grid-template-columns: 18px minmax(0, 1fr);
    align-items: baseline;
    margin: 2px 0;
    font-size: 14px;
    line-height: 1.35;
  }
  .sentence.without-sign {
    display: block;
  }
  .sentence.problem {
    color: var(--bad);
  }
  .sentence.warning {
    color: var(--warn);
  }
  .sentence:is(.stated, .rounded) {
    color: var(--ink-soft);
  }
  .sentence:is(.stated:not(.failed), .rounded) {
    display: block;
    text-align: right;
  }
  .sentence.waits {
    color: var(--ink-soft);
  }
  .sentence.condition .maths {
    --maths-size: 15px;

    grid-column: 2;
  }
  .sentence .hint {
    color: var(--ink);
  }
  .refusal {
    position: fixed;
    inset: auto;
    max-width: 44ch;
    margin: 0;
    padding: 8px 12px;
    border: 1px solid var(--bad);
    border-inline-start-width: 4px;
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    box-shadow: var(--shadow-raised);
    font: 14px / 1.35 var(--text);
  }
  .refusal.remark {
    border-color: var(--rule-strong);
  }
  @media (hover: none) {
    .menu-button {
      opacity: 1;
    }
  }
  @media (forced-colors: active) {
    .cell[aria-selected='true']:not(.mark, :focus, .edited) {
      outline: 1px dashed var(--accent);
      outline-offset: -1px;
    }
  }
`;
