import { css } from 'lit';

/** The menu of a line: a small sheet of paper above the page. */
export const menuStyles = css`
  :host {
    position: fixed;
    inset: auto;
    margin: 2px 0 0;
    padding: 6px 0;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    box-shadow: var(--shadow-raised);
    font: var(--type) / 1.35 var(--text);
  }
  .title {
    padding: 2px 14px 4px;
    color: var(--ink-soft);
    font-size: var(--type-small);
  }
  .insertions {
    display: grid;
    grid-template-columns: 1fr 1fr;
  }
  button {
    display: flex;
    width: 100%;
    gap: 24px;
    justify-content: space-between;
    align-items: baseline;
    padding: 5px 14px;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    text-align: left;
    white-space: nowrap;
  }
  button:hover,
  button:focus {
    background: var(--selection);
  }
  button:focus {
    /* Seen only where the system forces its colours. */
    outline: 2px solid transparent;
    outline-offset: -2px;
  }
  button:focus-visible {
    box-shadow: inset 3px 0 0 var(--accent);
  }
  button[aria-checked='true'] {
    font-weight: 600;
  }
  kbd {
    color: var(--ink-soft);
    font: var(--type-small) var(--text);
  }
  hr {
    margin: 6px 0;
    border: 0;
    border-top: 1px solid var(--rule);
  }
`;
