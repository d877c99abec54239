import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { OverviewPart, Session } from '../session/session.ts';

type Host = ReactiveControllerHost & { readonly session: Session | undefined };

/** Tells at the foot of every printed page what it is a page of, so that a loose one finds its way back. */
export class RunningFoot implements ReactiveController {
  readonly #host: Host;
  /** The texts are the book's, so the rule is written when the book is printed. */
  readonly #rule = new CSSStyleSheet();

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('beforeprint', this.#write);
    addEventListener('afterprint', this.#remove);
  }

  hostDisconnected(): void {
    removeEventListener('beforeprint', this.#write);
    removeEventListener('afterprint', this.#remove);
    this.#remove();
  }

  readonly #write = (): void => {
    this.#remove();
    const { session } = this.#host;
    if (!session) return;
    this.#rule.replaceSync(footRule(footText(session)));
    document.adoptedStyleSheets.push(this.#rule);
  };

  readonly #remove = (): void => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== this.#rule);
  };
}

/** Project (or what it is about) and job, the sheet, and the revision, as far as the book has them. */
function footText({ notebook, sheet: shown, overview }: Session): string {
  const { title, sheets } = notebook.book;
  const sheet = sheets.find(({ key }) => key === shown);
  return [
    title.project || title.subject,
    title.job && `job ${title.job}`,
    overview ? overviewTitle(overview) : sheet?.title || shown,
    title.revision && `revision ${title.revision}`,
  ]
    .filter((text) => text !== '')
    .join(' · ');
}

function overviewTitle(overview: OverviewPart): string {
  if (overview === 'about') return 'Purpose, limits and cautions';
  return overview === 'sources' ? 'Sources' : 'All checks';
}

/** The page's margin boxes with a text at the left, and the page's number at the right. */
function footRule(text: string): string {
  const type =
    'font: 8pt / 1.3 var(--text); color: var(--ink-soft); vertical-align: top; padding-block-start: 4mm;';
  return `@page {
    @bottom-left { ${type} width: 80%; text-align: start; content: ${cssString(text)}; }
    @bottom-right { ${type} width: 20%; text-align: end; content: "page " counter(page) " of " counter(pages); }
  }`;
}

/** A text as a string of CSS: what would end it or is no printing sign becomes its code. */
function cssString(text: string): string {
  const escaped = text.replace(/["\\\p{Cc}]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
  return `"${escaped}"`;
}
