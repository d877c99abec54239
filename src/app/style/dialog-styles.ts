import { css } from 'lit';

/** What all dialogs share. */
export const dialogStyles = css`
  dialog {
    box-sizing: border-box;
    width: min(47.6rem, calc(100vw - 48px));
    max-height: calc(100vh - 96px);
    padding: 24px 28px;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    font-size: 15px;
    /* What gets the focus is not to lie behind the foot. */
    scroll-padding-block: 12px 72px;
  }
  dialog:has(.buttons) {
    padding-block-end: 0;
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
  /* What a long dialog ends with stays in sight while the rest of it is scrolled. */
  .buttons {
    position: sticky;
    z-index: 2;
    inset-block-end: 0;
    flex-wrap: wrap;
    margin: 14px -28px 0;
    padding: 12px 28px 18px;
    border-block-start: 1px solid var(--rule);
    background: var(--paper);
  }
  @media (width < 40rem) {
    dialog {
      width: calc(100vw - 16px);
      max-width: none;
      padding-inline: 16px;
    }
    .buttons {
      margin-inline: -16px;
      padding-inline: 16px;
    }
  }
  @media (height < 50rem) {
    dialog {
      max-height: calc(100vh - 24px);
    }
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
