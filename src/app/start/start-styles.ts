import { css } from 'lit';

/** The start page: one sheet of paper on the desk. */
export const startStyles = css`
  :host {
    display: block;
    min-height: 100vh;
    background: var(--desk);
  }
  main {
    box-sizing: border-box;
    max-width: 1180px;
    min-height: calc(100vh - 64px);
    margin: 0 auto;
    padding: 40px 56px 32px;
    background: var(--paper);
    box-shadow: var(--shadow);
    font-size: 15.5px;
  }
  main.dropping {
    outline: 2px dashed var(--accent);
    outline-offset: -8px;
  }
  header {
    padding-block-end: 20px;
    border-block-end: 1.5px solid var(--ink);
  }
  h1 {
    margin: 0 0 6px;
    font: 500 34px/1.1 var(--serif);
  }
  header p {
    max-width: 42rem;
    margin: 0;
    color: var(--ink-soft);
  }
  h2 {
    margin: 28px 0 10px;
    font-size: 13px;
    font-weight: 600;
    letter-spacing: 0.06em;
    color: var(--ink-soft);
  }
  h3 {
    margin: 0 0 6px;
    font-size: 20px;
  }
  .columns {
    display: grid;
    grid-template-columns: minmax(15rem, 1fr) 3fr;
    gap: 48px;
  }
  .templates {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    gap: 20px;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .templates li {
    padding: 12px 16px 14px;
    border: 1px solid var(--rule);
    border-radius: var(--radius);
    cursor: pointer;
  }
  .templates li:hover {
    border-color: var(--rule-strong);
  }
  .templates li.chosen {
    border-color: var(--accent);
    box-shadow: inset 0 3px 0 var(--accent);
  }
  /* No image as an element: a text that became one would be alone on the page, and is looked for. */
  .picture {
    block-size: 132px;
    margin-block-end: 6px;
    background: center / contain no-repeat;
  }
  .templates button {
    font-weight: 600;
  }
  .templates p {
    margin: 2px 0 0;
    color: var(--ink-soft);
    font-size: 14px;
    text-wrap: pretty;
  }
  .plain {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .plain li {
    padding: 3px 0;
  }
  .plain span {
    display: block;
    color: var(--ink-soft);
    font-size: 13.5px;
  }
  button {
    padding: 3px 0;
    border: 0;
    background: none;
    color: var(--accent);
    font: inherit;
    text-align: start;
    cursor: pointer;
  }
  button:hover {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  button[aria-pressed='true'] {
    color: var(--ink);
    font-weight: 600;
  }
  button.quiet {
    color: var(--ink-soft);
    font-size: 13.5px;
  }
  button.main {
    margin: 0;
    padding: 6px 17px;
    border: 1px solid var(--accent);
    border-radius: var(--radius);
    background: var(--accent);
    color: var(--on-accent);
    font-weight: 600;
  }
  :focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
  article {
    margin-block-start: 20px;
  }
  .lead {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 8px 28px;
  }
  .lead > div {
    flex: 1 1 24rem;
  }
  .lead p {
    margin: 0;
  }
  dl {
    columns: 2;
    column-gap: 36px;
    margin: 8px 0 0;
    padding-block-start: 4px;
    border-block-start: 1px solid var(--rule);
  }
  dt {
    break-after: avoid;
  }
  dd li {
    break-inside: avoid;
  }
  dt {
    margin-top: 12px;
    font-size: 13px;
    font-weight: 600;
    color: var(--ink-soft);
  }
  dt.caution {
    color: var(--warn);
  }
  dd {
    margin: 2px 0 0;
  }
  dd ul {
    margin: 0;
    padding-inline-start: 18px;
  }
  dd li {
    margin: 2px 0;
  }
  .quiet {
    color: var(--ink-soft);
  }
  .plain span.bad {
    color: var(--bad);
  }
  .refusal {
    margin: 16px 0 0;
    white-space: pre-line;
    padding: 8px 14px;
    border-inline-start: 3px solid var(--bad);
    background: var(--bad-tint);
  }
  footer {
    margin-top: 36px;
    padding-top: 12px;
    border-block-start: 1px solid var(--rule);
    color: var(--ink-soft);
    font-size: 13.5px;
  }
  @media (max-width: 1100px) {
    main {
      padding-inline: 32px;
    }
    .columns {
      grid-template-columns: minmax(0, 1fr);
      gap: 8px;
    }
  }
  /* Side by side, what begins a book and what goes on with one leave no half of the paper empty. */
  @media (700px <= width <= 1100px) {
    .columns > :first-child {
      columns: 2;
      column-gap: 20px;
    }
    #recent {
      break-before: column;
    }
  }
  @media (width < 700px) {
    main {
      padding: 24px 16px;
    }
    .templates {
      grid-template-columns: minmax(0, 1fr);
      gap: 16px;
    }
    dl {
      columns: 1;
    }
  }
`;
