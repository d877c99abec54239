import { css } from 'lit';

/** Fields and buttons on a page about the book. */
export const formStyles = css`
  :is(fieldset, .fields) {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 18px;
    align-items: center;
  }
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    float: left;
    margin-inline-end: 14px;
    padding: 0;
    color: var(--ink-soft);
  }
  label {
    display: flex;
    gap: 6px;
    align-items: center;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  :is(input[type='text'], select, textarea) {
    box-sizing: border-box;
    min-height: 28px;
    padding: 2px 6px;
    border: 1px solid var(--rule);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font: inherit;
  }
  .tools {
    padding-block: 12px 10px;
    font-size: var(--type-small);
  }
  .tools .wanted {
    border-color: var(--bad);
  }
  .initials {
    width: 6em;
  }
  button.act {
    min-height: 28px;
    padding: 2px 12px;
    border: 1px solid var(--rule);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--accent);
    font: inherit;
    cursor: pointer;
  }
  button.act:focus-visible {
    outline: 2px solid var(--accent);
  }
  input[type='radio'] {
    margin: 0;
    accent-color: var(--accent);
  }
  .state-sign .sign {
    width: 13px;
    height: 13px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 2.2;
    vertical-align: -1px;
  }
  .changes {
    color: var(--warn);
    font-size: var(--type-small);
  }
`;
