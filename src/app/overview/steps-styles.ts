import { css } from 'lit';
import { numbersStyles } from '../sheet/numbers/numbers-view.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { formStyles } from './form-styles.ts';
import { overviewStyles } from './overview-styles.ts';
import { symbolColumn } from './symbol-column.ts';

/** The page that goes to a result step by step. */
export const stepsStyles = [
  mathsStyles,
  overviewStyles,
  formStyles,
  symbolColumn,
  css`
  ${numbersStyles}
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .heads {
    margin: 0;
    padding-inline-end: 138px;
    color: var(--ink-soft);
    font-size: var(--type-small);
    text-align: end;
  }
  .step {
    display: grid;
    grid-template-columns: var(--margin) minmax(0, 1fr) 190px;
    position: relative;
    padding-block: 10px;
    border-block-start: 1px solid var(--rule);
  }
  .step.asked {
    border-block-start: 0;
  }
  .name {
    width: auto;
  }
  .line {
    display: flex;
    gap: 8px 24px;
    justify-content: space-between;
  }
  .result {
    color: var(--ink);
    font-weight: 600;
    font-variant-numeric: lining-nums tabular-nums;
    text-align: end;
    white-space: nowrap;
  }
  .asked .line {
    font-size: 17px;
  }
  .math {
    padding-block: 6px 2px;
  }
  .worked {
    padding-inline: 0;
  }
  .source,
  .stated {
    margin: 4px 0 0;
    font-size: var(--type-small);
  }
  .stated,
  .comes-to {
    color: var(--pen);
  }
  .comes-to {
    margin: 4px 0 0;
  }
  .hand {
    padding-inline: 12px 20px;
  }
  :host([paper]) {
    .step {
      grid-template-columns: var(--margin) minmax(0, 1fr) 190px;
      padding-block: 6px;
      break-inside: avoid;
    }
    .name {
      padding-inline: 0 14px;
    }
    .heads {
      padding-inline-end: 0;
    }
    .hand {
      padding-inline: 12px 0;
      text-align: end;
    }
    .to-write {
      display: block;
      height: 20px;
      border-block-end: 1px solid var(--rule-strong);
    }
  }
  @media (width < 48rem) {
    :host(:not([paper])) {
      .step {
        grid-template-columns: minmax(0, 1fr);
        padding-inline: 16px;
      }
      .name {
        padding: 0 0 2px;
        text-align: start;
      }
      .name .quiet {
        display: inline;
        margin-inline-start: 8px;
      }
      .what {
        padding-inline: 0;
      }
      .line {
        flex-wrap: wrap;
      }
      .hand {
        justify-self: start;
        padding: 8px 0 0;
      }
      .heads {
        display: none;
      }
    }
  }
  `,
];
