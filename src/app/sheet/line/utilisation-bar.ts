import { css, html, type TemplateResult } from 'lit';

/** How far a bar goes beyond its limit at most. */
const MOST = 1.25;

/** A bar of demand over capacity, with the limit as a line across it. */
export function utilisationBar(utilisation: number): TemplateResult {
  const share = Math.min(Math.max(utilisation, 0), MOST);
  return html`<svg class="bar" viewBox="0 0 50 10" preserveAspectRatio="none" aria-hidden="true">
    <rect class="track" x="0" y="3" width="40" height="4" />
    <rect class="fill" x="0" y="3" width=${(share * 40).toFixed(1)} height="4" />
    <path class="limit" d="M40 0v10" />
  </svg>`;
}

export const barStyles = css`
  .bar {
    width: 54px;
    height: 11px;
  }
  .bar .track {
    fill: var(--rule);
  }
  .bar .fill {
    fill: currentcolor;
  }
  .bar .limit {
    stroke: var(--ink);
    stroke-width: 1;
    vector-effect: non-scaling-stroke;
  }
`;
