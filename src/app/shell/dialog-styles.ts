import { css } from 'lit';

/** What all dialogs share. */
export const dialogStyles = css`
  dialog {
    width: min(44rem, calc(100vw - 48px));
    max-height: calc(100vh - 96px);
    padding: 24px 28px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font-size: 15px;
  }
  dialog::backdrop {
    background: rgb(20 30 34 / 35%);
  }
  h2 {
    margin: 0 0 12px;
    font-size: 18px;
  }
  form:not(.fields),
  .buttons {
    display: flex;
    justify-content: flex-end;
    gap: 8px;
    margin-top: 20px;
  }
  button {
    padding: 6px 16px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: none;
    color: inherit;
    font: inherit;
    cursor: pointer;
  }
  button.main {
    border-color: var(--accent);
    background: var(--accent);
    color: var(--on-accent);
    font-weight: 600;
  }
  :focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
`;
