import type { Book } from '../../document/index.ts';
import { cssString } from '../paper/page-rules.ts';
import { MOST_INDENT } from './formulas.ts';

/** The rules of a record, on the screen and on paper; `sheets` are the names of the pages of its sheets. */
export function recordCss(sheets: readonly string[]): string {
  const indents = Array.from(
    { length: MOST_INDENT },
    (_, at) => `.in${at + 1}{padding-left:${(at + 1) / 2}em}`,
  );
  return [rules, ...indents, ...sheets.map((name) => `.${name}{page:${name}}`)].join('\n');
}

/** The head of each printed page: what the title block says. */
export function runningHead({ title }: Book): string {
  const type =
    'font: 8pt / 1.3 var(--text); color: var(--ink-soft); vertical-align: bottom; padding-block-end: 3mm;';
  const said = (parts: readonly (readonly [string, string])[]): string =>
    parts
      .flatMap(([label, words]) => (words === '' ? [] : [label === '' ? words : `${label} ${words}`]))
      .join(' · ');
  const left = said([
    ['', title.project],
    ['', title.subject],
    ['client', title.client],
  ]);
  const right = said([
    ['job', title.job],
    ['prepared', title.prepared],
    ['checked', title.checked],
    ['', title.date],
    ['revision', title.revision],
  ]);
  return `@page {
  margin: 20mm 14mm 18mm;
  @top-left { ${type} width: 55%; text-align: start; overflow-wrap: anywhere; content: ${cssString(left)}; }
  @top-right { ${type} width: 45%; text-align: end; overflow-wrap: anywhere; content: ${cssString(right)}; }
}`;
}

const rules = `:root {
  --text: 'Source Sans 3', 'Segoe UI', 'Noto Sans', 'Liberation Sans', Arial, sans-serif;
  --serif: 'STIX Two Text', 'Cambria', 'Noto Serif', 'Liberation Serif', 'Times New Roman', serif;
  --ink: #1a2226;
  --ink-soft: #49555a;
  --rule: #d3dad7;
  --pen: #1d3f8f;
  --good: #1d6a48;
  --bad: #a4301c;
  --warn: #7d5700;
  --paper: #fff;
  color-scheme: light;
}
body { margin: 0; background: #fff; color: var(--ink); font: 15px / 1.4 var(--text); overflow-wrap: anywhere; }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem; }
h1 { margin: 0 0 0.4em; font-size: 1.7em; line-height: 1.2; }
h2 { margin: 2.2em 0 0.4em; padding-top: 0.3em; border-top: 2px solid var(--ink); font-size: 1.35em; line-height: 1.2; }
h3 { margin: 1.4em 0 0.3em; font-size: 1.1em; }
p { margin: 0.2em 0; }
ul { margin: 0.2em 0; padding-left: 1.3em; }
a { color: #0f625f; }
/* Words of the book keep their direction to themselves. */
h1, h2, a, dd, th, td, p, li > span { unicode-bidi: isolate; }
dl { margin: 0.5em 0; }
dl div { display: grid; grid-template-columns: 8.5em 1fr; padding: 0.15em 0; }
dd { margin: 0; }
dt { color: var(--ink-soft); }
.title-block { display: grid; grid-template-columns: repeat(4, 1fr); border: 1.5px solid var(--ink); }
.title-block div { display: block; min-width: 0; padding: 0.3em 0.7em; border: 0.5px solid var(--rule); }
.title-block dt { font-size: 0.8em; }
.hash { overflow-wrap: anywhere; }
.quiet { color: var(--ink-soft); font-size: 0.88em; }
.plain { display: none; }
.plain.fenced { display: block; color: var(--ink-soft); font-size: 0.85em; }
table { width: 100%; margin: 0.6em 0 1em; border-collapse: collapse; border-bottom: 1.5px solid var(--ink); }
.of-table { margin: 0.8em 0 0.2em; font-size: 1em; }
.described > span + span { color: var(--ink-soft); font-size: 0.88em; }
th, td { padding: 0.2em 0.5em 0.2em 0; font-weight: 400; text-align: left; vertical-align: top; }
thead th { border-block: 1.5px solid var(--ink); border-bottom-width: 1px; font-size: 0.88em; vertical-align: bottom; }
tbody tr + tr { border-top: 1px solid var(--rule); }
th.number, td.number { text-align: right; overflow-wrap: normal; font-variant-numeric: lining-nums tabular-nums; }
th.name { white-space: nowrap; }
.lines { table-layout: fixed; }
.lines th:first-child { width: 4.2em; overflow-wrap: anywhere; white-space: normal; }
.lines th:nth-child(3), .lines td:nth-child(3) { width: 7.5em; }
.lines th:nth-child(4), .lines td:nth-child(4) { width: 11em; }
.lines td:nth-child(3) { font-weight: 600; }
.lines td:nth-child(4) { color: var(--ink-soft); font-size: 0.85em; }
.untitled.of-table { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.cells { font-size: 0.88em; }
.total { border-top: 1.5px solid var(--ink); font-weight: 600; }
.entry, .entered, .stated { color: var(--pen); }
.numbers { color: var(--ink-soft); font-size: 0.9em; }
.compared { font-weight: 600; }
.checked, .otherwise { font-size: 0.88em; }
.otherwise { color: var(--pen); }
.holds { color: var(--good); }
.fails, .problem { color: var(--bad); }
.remark { color: var(--warn); }
.prose { max-width: 46rem; margin: 0.5em 0; }
.caution { padding-left: 0.8em; border-left: 3px solid var(--warn); }
.picture { margin: 0.8em 0; }
.maths { display: inline-block; max-width: 100%; margin-right: 1.2em; padding: 0.1em 0; vertical-align: top; overflow-x: auto; overflow-y: hidden; }
.maths:has(mfrac) { padding: 0.4em 0 0.5em; }
math { font-family: 'STIX Two Math', 'Cambria Math', 'Noto Sans Math', math; font-size: 1.1em; math-style: normal; }
math mi, math mn, math mtext { font-family: var(--serif); text-transform: none; }
math mtext { white-space: pre; }
math mi.v { font-style: italic; }
math mi.u { font-style: normal; }
math mo.separator { margin-inline-end: 0.25em; }
math mtable.cases mtd { padding: 3px 0; text-align: start; }
math mtable.cases mtd + mtd { padding-inline-start: 1.1em; }
math mfrac { padding-block: 0.12em; }
.symbol math { font-size: 1.05em; }
@media (max-width: 600px) {
  .title-block { grid-template-columns: repeat(2, 1fr); }
  section { overflow-x: auto; }
}
@media print {
  body { font-size: 9pt; line-height: 1.25; }
  main { max-width: none; padding: 0; page: front; }
  a { color: inherit; text-decoration: none; }
  .maths { overflow: visible; }
  .sheet { break-before: page; }
  .sheet h2 { margin-top: 0; }
  #sources { break-before: page; page: sources; }
  h2, h3, h4 { break-after: avoid; }
  p { margin: 0; }
  h2 { margin-top: 1.4em; }
  h3 { margin-top: 0.9em; }
  table { margin: 0.3em 0 0.6em; }
  th, td { padding-block: 0.1em; }
  thead { display: table-header-group; }
  tr, .picture, dl div, li, .prose p, .title-block { break-inside: avoid; }
}
`;
