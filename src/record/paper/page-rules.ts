import type { Book } from '../../document/index.ts';

/** Pages that have one foot: their name as CSS has it, and what the foot calls them. */
export interface NamedPages {
  readonly name: string;
  readonly title: string;
}

/**
 * The rules of the pages: a foot on each that tells what it is a page of, so that a loose one finds its
 * way back: project (or what the book is about), job, title, revision, the content's hash in short, and the page's number.
 */
export function pageRules(book: Book, runs: readonly NamedPages[], hash: string): string {
  const { title } = book;
  const type =
    'font: 8pt / 1.3 var(--text); color: var(--ink-soft); vertical-align: top; padding-block-start: 4mm;';
  const rules = runs.map((run) => {
    const words = [
      title.project || title.subject,
      title.job && `job ${title.job}`,
      run.title,
      title.revision && `revision ${title.revision}`,
      `content ${shortHash(hash)}`,
    ];
    const text = words.filter((part) => part !== '').join(' · ');
    return `@page ${run.name} {
      @bottom-left { ${type} width: 80%; text-align: start; content: ${cssString(text)}; }
      @bottom-right { ${type} width: 20%; text-align: end; content: "page " counter(page) " of " counter(pages); }
    }`;
  });
  return rules.join('\n');
}

/** As much of a content hash as tells two states of a book apart. */
export function shortHash(hash: string): string {
  return `${hash.slice(0, 4)} ${hash.slice(4, 8)}`;
}

/** A text as a string of CSS: what would end it or is no printing sign becomes its code. */
export function cssString(text: string): string {
  const escaped = text.replace(/["\\\p{Cc}]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
  return `"${escaped}"`;
}
