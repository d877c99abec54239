import { css } from 'lit';
import { fieldsStyles } from '../../style/fields-styles.ts';

/** The methods of a line in the panel: what is written can be pressed and becomes its field. */
export const methodsStyles = [
  fieldsStyles,
  css`
    :host {
      padding: 0;
      overflow: visible;
      border: 0;
    }
    details .method {
      margin-block-start: 8px;
      padding-block-start: 8px;
      border-block-start: 1px solid var(--rule);
    }
    summary {
      min-height: 24px;
    }
    :is(h3, h4) {
      margin: 16px 0 4px;
      font-size: 12px;
      font-weight: 600;
      letter-spacing: 0.05em;
      color: var(--ink-soft);
    }
    .buttons button {
      min-height: 30px;
      padding: 4px 12px;
      border: 1px solid var(--rule-strong);
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
      cursor: pointer;
    }
    .buttons .main {
      border-color: var(--accent);
      background: var(--accent);
      color: var(--on-accent);
    }
    button.menu {
      display: grid;
      place-items: center;
      align-self: center;
      width: 28px;
      height: 28px;
      padding: 0;
      border: 0;
      border-radius: var(--radius);
      background: none;
      color: var(--ink-soft);
      cursor: pointer;
    }
    .sign {
      width: 16px;
      height: 16px;
      fill: none;
      stroke: currentcolor;
      stroke-width: 2.2;
      stroke-linecap: round;
    }
    button.written {
      display: block;
      box-sizing: border-box;
      width: 100%;
      min-height: 24px;
      padding: 2px 4px;
      margin-inline-start: -4px;
      border: 0;
      border-radius: var(--radius);
      background: none;
      color: inherit;
      font: inherit;
      text-align: start;
      white-space: pre-wrap;
      overflow-wrap: anywhere;
      cursor: text;
    }
    button.written.formula {
      margin: 6px 0 0;
      padding: 8px 10px;
      background: var(--margin-tint);
      font: 13px / 1.45 var(--code);
    }
    button.written.blank {
      color: var(--ink-soft);
    }
    button.name {
      min-height: 24px;
      padding: 0 2px;
      border: 0;
      background: none;
      color: var(--accent);
      font: inherit;
      cursor: pointer;
    }
    :is(button.written, button.menu):hover {
      background: var(--selection);
    }
    form {
      margin-block: 14px;
      padding-block: 12px;
      border-block: 1px solid var(--rule-strong);
    }
    .title {
      display: flex;
      gap: 10px;
      align-items: baseline;
    }
    .title h3 {
      flex: 1;
      margin: 0;
      color: inherit;
      font-size: 14.5px;
      letter-spacing: normal;
    }
    .method h4 {
      margin-block-start: 10px;
    }
    form h3 {
      margin: 0;
      color: inherit;
      font-size: 15px;
      letter-spacing: normal;
    }
    .choices label {
      display: block;
    }
    .buttons {
      display: flex;
      gap: 12px;
      justify-content: flex-end;
      margin-block-start: 14px;
    }
    .edited {
      margin-block: 6px;
    }
  `,
];
