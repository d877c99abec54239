import { css } from 'lit';
import { mathsStyles } from '../style/maths-styles.ts';
import { formStyles } from './form-styles.ts';
import { overviewStyles } from './overview-styles.ts';

/** The page of signatures and revisions. */
export const signingStyles = [
  mathsStyles,
  overviewStyles,
  formStyles,
  css`
  form {
    display: grid;
    gap: 8px;
    padding-block: 10px 4px;
  }
  textarea {
    width: 100%;
    min-height: 3.2em;
  }
  td.lead,
  th.lead {
    width: calc(var(--margin) + var(--lead) - 10px);
    box-sizing: border-box;
    padding-inline-start: 14px;
  }
  .date {
    white-space: nowrap;
  }
  .by {
    min-width: 5em;
  }
  code {
    font: 13px/1.4 var(--code);
  }
  .holds,
  .gone {
    font-weight: 600;
  }
  .holds {
    color: var(--good);
  }
  .gone,
  .told {
    color: var(--bad);
  }
  ul.open {
    margin: 0;
    padding-inline-start: 18px;
  }
  `,
];
