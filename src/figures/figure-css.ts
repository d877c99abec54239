/**
 * The style of every drawing: what the page and the record include once beside the drawings. Colours and typefaces
 * are custom properties of the page, with values of their own where the page has none.
 */
export const figureCss = `
.quay-figure {
  --figure-ink: var(--ink, #1a2226);
  --figure-soft: var(--ink-soft, #556167);
  --figure-rule: var(--rule, #dbe1de);
  --figure-rule-strong: var(--rule-strong, #93a09d);
  --figure-paper: var(--paper, #fdfefc);
  --figure-accent: var(--accent, #0f625f);
  --figure-good: var(--good, #1d6a48);
  --figure-bad: var(--bad, #a4301c);
  --figure-warn: var(--warn, #7d5700);
  display: block;
  inline-size: 100%;
  max-inline-size: 720px;
  block-size: auto;
  font-family: var(--text, 'Source Sans 3', system-ui, sans-serif);
  font-size: 12.5px;
  font-variant-numeric: lining-nums tabular-nums;
}
.quay-figure text { fill: var(--figure-ink); stroke: none; }
.quay-figure .halo { paint-order: stroke; stroke: var(--figure-paper); stroke-width: 3.5px; stroke-linejoin: round; }
.quay-figure .symbol { font-family: var(--serif, 'STIX Two Text', serif); font-style: italic; font-size: 1.1em; }
.quay-figure .below { font-family: var(--serif, 'STIX Two Text', serif); font-size: 0.74em; }
.quay-figure .strong { font-weight: 600; }
.quay-figure .soft { fill: var(--figure-soft); }
.quay-figure .note { fill: var(--figure-soft); font-size: 12px; }
.quay-figure .head { font-weight: 600; font-size: 13px; }
.quay-figure .accent-text { fill: var(--figure-accent); }
.quay-figure .bad-text { fill: var(--figure-bad); }
.quay-figure .warn-text { fill: var(--figure-warn); }
.quay-figure .good-text { fill: var(--figure-good); }
.quay-figure .hit { fill: transparent; }
.quay-figure .outline { stroke: var(--figure-ink); stroke-width: 1.4px; stroke-linejoin: round; }
.quay-figure .body { stroke: var(--figure-ink); stroke-width: 1.4px; stroke-linejoin: round; fill: var(--figure-paper); }
.quay-figure .face { stroke: var(--figure-ink); stroke-width: 2px; }
.quay-figure .thin { stroke: var(--figure-ink); stroke-width: 0.8px; stroke-linejoin: round; }
.quay-figure .ground { stroke: var(--figure-soft); stroke-width: 0.8px; }
.quay-figure .water { stroke: var(--figure-soft); stroke-width: 0.8px; }
.quay-figure .center { stroke: var(--figure-soft); stroke-width: 0.8px; stroke-dasharray: 12 3 2 3; }
.quay-figure .hidden { stroke: var(--figure-soft); stroke-width: 0.8px; stroke-dasharray: 4 3; }
.quay-figure .dim { stroke: var(--figure-soft); stroke-width: 0.8px; }
.quay-figure .dim-out { stroke: var(--figure-rule-strong); stroke-width: 0.6px; }
.quay-figure .dim-tick { stroke: var(--figure-ink); stroke-width: 1.3px; }
.quay-figure .leader { stroke: var(--figure-rule-strong); stroke-width: 0.7px; }
.quay-figure .fender { fill: var(--figure-soft); }
.quay-figure .dot { fill: var(--figure-ink); }
.quay-figure .hollow { fill: var(--figure-paper); stroke: var(--figure-ink); stroke-width: 1.2px; }
.quay-figure .load { stroke: var(--figure-accent); stroke-width: 1.8px; }
.quay-figure .load-head { fill: var(--figure-accent); }
.quay-figure .governs { stroke: var(--figure-accent); }
.quay-figure .demand { stroke: var(--figure-accent); stroke-width: 1.4px; }
.quay-figure .demand-dash { stroke: var(--figure-accent); stroke-width: 1.2px; stroke-dasharray: 6 3; }
.quay-figure .rope { stroke: var(--figure-ink); stroke-linecap: round; }
.quay-figure .rope.governs { stroke: var(--figure-accent); }
.quay-figure .slack { stroke: var(--figure-soft); stroke-dasharray: 5 4; }
.quay-figure .hatch { stroke: var(--figure-rule-strong); stroke-width: 0.7px; }
.quay-figure .hatch-strong { stroke: var(--figure-ink); stroke-width: 1.1px; }
.quay-figure .hatch-bad { stroke: var(--figure-bad); stroke-width: 1.6px; }
.quay-figure .hatch-dot { fill: var(--figure-rule-strong); }
.quay-figure .axis { stroke: var(--figure-rule-strong); stroke-width: 0.9px; }
.quay-figure .grid { stroke: var(--figure-rule); stroke-width: 0.8px; }
.quay-figure .area { fill: var(--figure-rule); }
.quay-figure .busy { fill: var(--figure-accent); }
.quay-figure .move { fill: var(--figure-rule); stroke: var(--figure-rule-strong); stroke-width: 0.8px; }
.quay-figure .idle { stroke: var(--figure-rule-strong); stroke-width: 0.8px; stroke-dasharray: 3 2; }
.quay-figure .road { stroke: var(--figure-rule); stroke-width: 13px; }
.quay-figure .curve { stroke-width: 1.7px; stroke-linejoin: round; stroke-linecap: round; }
.quay-figure .tone-0 { stroke: var(--figure-accent); }
.quay-figure .tone-1 { stroke: var(--figure-ink); stroke-dasharray: 7 3; }
.quay-figure .tone-2 { stroke: var(--figure-soft); stroke-dasharray: 1.5 3.5; }
.quay-figure .tone-3 { stroke: var(--figure-ink); stroke-dasharray: 10 3 2 3; }
.quay-figure .tone-4 { stroke: var(--figure-soft); }
.quay-figure .tone-5 { stroke: var(--figure-accent); stroke-dasharray: 4 3; }
.quay-figure .mark-0 { fill: var(--figure-accent); }
.quay-figure .mark-1 { fill: var(--figure-ink); }
.quay-figure .mark-2 { fill: var(--figure-soft); }
.quay-figure .mark-3 { fill: var(--figure-ink); }
.quay-figure .mark-4 { fill: var(--figure-soft); }
.quay-figure .mark-5 { fill: var(--figure-accent); }
.quay-figure .bar-0 { fill: var(--figure-accent); }
.quay-figure .bar-edge { stroke: var(--figure-ink); stroke-width: 0.8px; }
.quay-figure .bar-soft { fill: var(--figure-rule-strong); }
.quay-figure .track { fill: var(--figure-rule); opacity: 0.6; }
.quay-figure .holds-bar { fill: var(--figure-good); }
.quay-figure .beyond-bar { fill: var(--figure-paper); stroke: var(--figure-warn); stroke-width: 1.6px; }
.quay-figure .warn-edge { stroke: var(--figure-warn); stroke-width: 1.1px; stroke-linejoin: round; }
.quay-figure .fails-edge { stroke: var(--figure-bad); stroke-width: 1.2px; }
.quay-figure .limit { stroke: var(--figure-ink); stroke-width: 1px; stroke-dasharray: 12 3 2 3; }
`;
