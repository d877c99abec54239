import { css } from 'lit';

/** The fields of dialogs: a word above, a line to write on below. */
export const fieldsStyles = css`
  .field,
  .choices {
    display: block;
    margin: 14px 0 0;
    padding: 0;
    border: 0;
    color: var(--ink-soft);
    font-size: 13px;
  }
  .choices label {
    display: inline-block;
    margin-inline-end: 20px;
    padding-block: 2px;
    color: var(--ink);
    font-size: 15px;
  }
  .choices input {
    margin-inline: 0 6px;
    accent-color: var(--accent);
  }
  legend {
    margin-block-end: 4px;
    padding: 0;
  }
  :is(input:not([type='radio'], [type='checkbox'], [type='file']), select, textarea) {
    box-sizing: border-box;
    width: 100%;
    margin-block-start: 3px;
    padding: 4px 2px;
    border: 0;
    border-block-end: 1px solid var(--pen-rule);
    border-radius: 0;
    background: none;
    color: var(--pen);
    font: 15px / 1.4 var(--text);
  }
  input[type='file'] {
    display: block;
    margin-block-start: 4px;
    font: 14px var(--text);
  }
  input::file-selector-button {
    margin-inline-end: 10px;
    padding: 4px 12px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: none;
    color: var(--ink);
    font: inherit;
  }
  select option {
    background: var(--paper);
    color: var(--ink);
  }
  :is(input, textarea)[aria-invalid='true'] {
    border-color: var(--bad);
  }
  .short {
    width: 8rem;
  }
  h3 {
    margin: 22px 0 6px;
    font-size: 15px;
    font-weight: 600;
  }
  .head {
    color: var(--ink-soft);
    font-size: 13px;
  }
  .quiet {
    margin: 6px 0;
    color: var(--ink-soft);
    font-size: 14px;
  }
  .trouble {
    margin: 2px 0 4px;
    color: var(--bad);
    font-size: 14px;
  }
  button.small,
  button.add {
    padding: 2px 4px;
    border: 0;
    color: var(--accent);
  }
  button.add {
    padding-inline-start: 0;
  }
  button:disabled {
    opacity: 0.5;
    cursor: default;
  }
`;
