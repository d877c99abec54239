import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/** The small signs of the page; each says in its shape what its colour says too. */
export type Sign =
  | 'problem'
  | 'warning'
  | 'waits'
  | 'holds'
  | 'fails'
  | 'idle'
  | 'otherwise'
  | 'open'
  | 'choice'
  | 'menu'
  | 'list'
  | 'panel';

const drawings: Readonly<Record<Sign, SVGTemplateResult>> = {
  problem: svg`<path d="M8 1.5 15 14H1Z M8 6v4 M8 11.8v.6" />`,
  warning: svg`<path d="M8 1.5 15 14H1Z M8 6v4 M8 11.8v.6" />`,
  waits: svg`<path d="M4 2h8 M4 14h8 M5 2v2.5L8 8l3-3.5V2 M5 14v-2.5L8 8l3 3.5V14" />`,
  holds: svg`<path d="M2.5 8.5 6.5 12.5 13.5 3.5" />`,
  fails: svg`<path d="M3 3l10 10M13 3 3 13" />`,
  idle: svg`<path d="M3 8h10" />`,
  otherwise: svg`<path d="M2.5 5.5h11 M2.5 10.5h11 M11 2 5 14" />`,
  open: svg`<circle cx="8" cy="8" r="6" /><path d="M8 5v3.5 M8 10.8v.6" />`,
  choice: svg`<path d="M4 6l4 4 4-4" />`,
  menu: svg`<path d="M8 3.2v.1 M8 8v.1 M8 12.8v.1" />`,
  list: svg`<path d="M1.5 2.5h13v11h-13Z M6 2.5v11 M3 5.5h1.2 M3 8h1.2 M3 10.5h1.2" />`,
  panel: svg`<path d="M1.5 2.5h13v11h-13Z M10 2.5v11" />`,
};

/** A sign; `words` say it to those who do not see it, nothing where words stand beside it. */
export function drawSign(sign: Sign, words = ''): TemplateResult {
  return html`<svg
    class="sign ${sign}"
    viewBox="0 0 16 16"
    role=${words === '' ? 'presentation' : 'img'}
    aria-hidden=${words === '' ? 'true' : 'false'}
    aria-label=${words}
  >
    ${drawings[sign]}
  </svg>`;
}
