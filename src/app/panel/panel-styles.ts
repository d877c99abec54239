import { css } from 'lit';
import { numbersStyles } from '../sheet/numbers/numbers-view.ts';

/** The panel at the right. */
export const panelStyles = css`
  :host {
    display: block;
    /* What is only read aloud is placed in it, and would else lengthen the window. */
    position: relative;
    padding: 24px 20px;
    overflow-y: auto;
    background: var(--paper);
    border-inline-start: 1px solid var(--rule);
    font-size: 14.5px;
  }
  @media (max-width: 1200px) {
    :host {
      --maths-size: 15px;
    }
  }
  h2 {
    margin: 0;
    font-size: 22px;
    font-weight: 400;
  }
  h3 {
    margin: 20px 0 6px;
    font-size: 12px;
    font-weight: 600;
    letter-spacing: 0.05em;
    color: var(--ink-soft);
  }
  p {
    margin: 0 0 6px;
  }
  .label {
    color: var(--ink-soft);
  }
  .value b {
    font-size: 18px;
  }
  .sight {
    float: right;
    min-height: 24px;
    padding: 0 6px;
    border: 0;
    border-radius: var(--radius);
    background: none;
    font: inherit;
    font-size: 12.5px;
    color: var(--accent);
    cursor: pointer;
  }
  .sight:hover {
    background: var(--margin-tint);
  }
  .sight[aria-pressed='true'] {
    font-weight: 600;
  }
  .quiet {
    color: var(--ink-soft);
  }
  pre {
    margin: 6px 0 0;
    padding: 8px 10px;
    background: var(--margin-tint);
    font: 13px/1.45 var(--code);
    white-space: pre-wrap;
    overflow-wrap: anywhere;
  }
  .math {
    padding-block: 4px;
  }
  ${numbersStyles}
  .worked {
    padding-inline: 0;
  }
  .numbers {
    color: var(--pen);
  }
  h3.flow::before {
    margin-inline-end: 7px;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li button {
    display: flex;
    justify-content: space-between;
    gap: 12px;
    width: 100%;
    padding: 3px 0;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    text-align: start;
    cursor: pointer;
  }
  .sheet {
    display: block;
    color: var(--ink-soft);
    font-size: 12.5px;
    line-height: 1.3;
  }
  .hand {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 6px;
  }
  .hand p {
    margin: 0;
  }
  .hand quay-hand-field {
    justify-self: start;
  }
  .hand :is(label, .say) {
    display: flex;
    gap: 8px;
    align-items: center;
  }
  .hand input {
    box-sizing: border-box;
    flex: 1;
    min-width: 0;
    min-height: 26px;
    padding: 1px 6px;
    border: 1px solid var(--rule);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
  }
  .hand :is(.agrees, .seen) {
    color: var(--good);
  }
  .hand :is(.differs, .not-comparable) {
    color: var(--bad);
  }
  .hand :is(.stale, .changed) {
    color: var(--warn);
  }
  .comment {
    display: grid;
    gap: 4px;
    padding-inline-start: 10px;
    border-inline-start: 2px solid var(--warn);
  }
  .comment > .fix {
    justify-self: start;
  }
  .answer {
    padding-inline-start: 12px;
  }
  .sides {
    display: grid;
    gap: 2px;
    margin: 0 0 10px;
    padding-inline-start: 10px;
    border-inline-start: 2px solid var(--accent);
  }
  .sides dt {
    color: var(--ink-soft);
    font-size: 12.5px;
  }
  .sides dd {
    min-width: 0;
    margin: 0 0 4px;
    overflow: auto hidden;
  }
  .excess {
    color: var(--bad);
  }
  .holds {
    color: var(--good);
  }
  .beyond {
    color: var(--warn);
  }
  li button:hover {
    background: var(--selection);
  }
  .number {
    font-weight: 600;
    text-align: end;
    /* A number and its unit hold together; the words of a choice may be long. */
    overflow-wrap: break-word;
  }
  button:focus-visible,
  .tried:focus-visible,
  .math:focus-visible,
  pre:focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 1px;
  }
  .nudge {
    display: flex;
    align-items: center;
    gap: 10px;
  }
  .nudge button {
    width: 32px;
    height: 32px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: none;
    color: inherit;
    font-size: 18px;
    cursor: pointer;
  }
  .tried {
    box-sizing: border-box;
    min-width: 0;
    min-height: 32px;
    padding: 3px 8px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--pen);
    font: inherit;
    font-weight: 600;
  }
  input.tried {
    flex: 1;
  }
  select.tried {
    width: 100%;
  }
  .trial p {
    margin-block: 6px;
  }
  :is(.trial, .stated-one) dl {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 2px 12px;
    margin: 10px 0 6px;
  }
  :is(.trial, .stated-one) dt {
    color: var(--ink-soft);
  }
  :is(.trial, .stated-one) dd {
    margin: 0;
    font-weight: 600;
  }
  .moved li {
    padding: 3px 0;
    border-block-start: 1px solid var(--rule);
  }
  .move {
    display: block;
    font-variant-numeric: tabular-nums;
  }
  .ends {
    margin-block: 8px;
  }
  .told:not(:empty) {
    margin-block-end: 14px;
    padding: 8px 12px;
    border-inline-start: 3px solid var(--accent);
    background: var(--accent-tint);
  }
  .problem {
    margin: 12px 0;
    padding: 8px 12px;
    border-inline-start: 3px solid var(--bad);
    background: var(--bad-tint);
  }
  .problem.warning {
    border-color: var(--warn);
    background: var(--warn-tint);
  }
  .problem.waits {
    border-color: var(--rule-strong);
    background: var(--margin-tint);
  }
  .hint {
    color: var(--ink-soft);
  }
  .fix {
    margin: 4px 8px 2px 0;
    padding: 3px 10px;
    border: 1px solid var(--accent);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--accent);
    font: 13px var(--code);
    cursor: pointer;
  }
  .caution {
    padding-inline-start: 12px;
    border-inline-start: 2px solid var(--warn);
    color: var(--ink-soft);
    font-size: 13.5px;
  }
`;
