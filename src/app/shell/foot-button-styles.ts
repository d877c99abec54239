import { css } from 'lit';

/** The buttons in the bars at the foot of the page: words that lead somewhere. */
export const footButtonStyles = css`
  button {
    min-height: 26px;
    border: 0;
    border-radius: var(--radius);
    background: none;
    font: inherit;
    cursor: pointer;
  }
  button:hover {
    background: var(--margin-tint);
  }
  button:focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: -2px;
  }
  kbd {
    font: inherit;
    font-weight: 600;
  }
`;
