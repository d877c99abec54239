import { css } from 'lit';

/** The marks of what goes into the value in hand and of what takes it: a full dot, and an open one. */
export const flowStyles = css`
  [data-flow]::before {
    display: inline-block;
    box-sizing: border-box;
    width: 9px;
    height: 9px;
    border: 1.75px solid var(--accent);
    border-radius: 50%;
    background: var(--paper);
    content: '';
  }
  [data-flow='source']::before {
    background: var(--accent);
  }
  @media (forced-colors: active) {
    [data-flow]::before {
      border-color: Highlight;
      background: Canvas;
      forced-color-adjust: none;
    }
    [data-flow='source']::before {
      background: Highlight;
    }
  }
`;
