import { css } from 'lit';

/** What all fields of a cell have in common: the frame, and the sheet of paper below that holds note and list. */
export const fieldStyles = css`
  :host {
    display: block;
    width: 100%;
    min-width: 0;
  }
  .field {
    box-sizing: border-box;
    display: block;
    width: 100%;
    margin: 0;
    padding: 3px 6px;
    border: 0;
    border-radius: var(--radius);
    outline: 2px solid var(--accent);
    outline-offset: -1px;
    background: var(--paper);
    color: var(--pen);
    font: inherit;
    text-align: inherit;
  }
  .below {
    position: fixed;
    inset: auto;
    box-sizing: border-box;
    max-width: min(640px, calc(100vw - 16px));
    margin: 0;
    padding: 0;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    overflow: hidden;
    background: var(--paper);
    box-shadow: var(--shadow-raised);
    color: var(--ink);
    font: 400 14px/1.35 var(--text);
    text-align: left;
  }
  .below.bare {
    border-color: transparent;
    background: none;
    box-shadow: none;
  }
  .lists {
    inset: 0 auto auto 0;
    margin: 0;
    padding: 0;
    border: 0;
    overflow: visible;
    background: none;
  }
  .options {
    display: grid;
    grid-template-columns: minmax(4em, max-content) 1fr;
    gap: 0 12px;
    max-height: 264px;
    margin: 0;
    padding: 3px 0;
    overflow-y: auto;
    list-style: none;
    scrollbar-width: thin;
  }
  .note:not(.none) + .options:not(:empty) {
    border-top: 1px solid var(--rule);
  }
  .options:empty {
    display: none;
  }
  .options li {
    display: grid;
    grid-column: 1 / -1;
    grid-template-columns: subgrid;
    align-items: baseline;
    padding: 3px 9px;
    cursor: pointer;
  }
  .options li .detail {
    color: var(--ink-soft);
    font-size: 13px;
  }
  .options li[aria-selected='true'] {
    background: var(--selection);
    box-shadow: inset 2px 0 var(--accent);
    /* Seen only where the system forces its colours. */
    outline: 2px solid transparent;
    outline-offset: -2px;
  }
  .options li:hover {
    background: var(--selection);
  }
`;
