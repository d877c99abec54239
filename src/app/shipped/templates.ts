import type { About, Book, Cases } from '../../document/index.ts';

/** A shipped template as the start page shows it before it opens. */
export interface ShippedTemplate {
  readonly id: string;
  readonly title: string;
  readonly about: About;
  /** Where its first sketch is, drawn from its own cells. */
  readonly picture: string;
  /** Fetches its book as a book begins with it. */
  readonly open: () => Promise<Book>;
  /** Fetches it as it is shipped, and its cases. */
  readonly verified: () => Promise<{ readonly book: Book; readonly cases: Cases }>;
}

interface TitleOfBook {
  readonly project: string;
  readonly subject: string;
}

const abouts = import.meta.glob<About>('../../../templates/*/book.quaybook.json', {
  import: 'about',
  eager: true,
});
const titles = import.meta.glob<TitleOfBook>('../../../templates/*/book.quaybook.json', {
  import: 'title',
  eager: true,
});
const files = import.meta.glob<string>('../../../templates/*/book.quaybook.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

const caseFiles = import.meta.glob<string>('../../../templates/*/cases.json', {
  query: '?url',
  import: 'default',
  eager: true,
});

const pictures = import.meta.glob<string>('../../../templates/*/picture.svg', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** The shipped templates; the demo book beside them is none. */
export const shippedTemplates: readonly ShippedTemplate[] = Object.entries(abouts)
  .filter(([path]) => !path.includes('/demo/'))
  .map(([path, about]) => {
    const id = path.split('/').at(-2) ?? path;
    return {
      id,
      title: titles[path]?.subject || id,
      about,
      picture: pictures[`${path.slice(0, path.lastIndexOf('/'))}/picture.svg`] ?? '',
      open: async () => {
        const book = await fetchBook(files[path] ?? '');
        const { startedFrom } = await import('./started-from.ts');
        return startedFrom(book, id);
      },
      verified: async () => {
        const [book, text] = await Promise.all([
          fetchBook(files[path] ?? ''),
          fetchText(caseFiles[`${path.slice(0, path.lastIndexOf('/'))}/cases.json`] ?? ''),
        ]);
        const { openCases } = await import('../../document/index.ts');
        const cases = openCases(text);
        if (!cases.ok) throw new Error(cases.problems[0]?.message ?? 'the cases are not sound');
        return { book, cases: cases.value };
      },
    };
  })
  .sort((a, b) => a.title.localeCompare(b.title));

/** Fetches a book that is shipped with the app. */
export async function fetchBook(url: string): Promise<Book> {
  const text = await fetchText(url);
  const { openBook } = await import('../../document/index.ts');
  const opened = openBook(text);
  if (!opened.ok) throw new Error(opened.problems[0]?.message ?? 'the book is not sound');
  return opened.value.book;
}

async function fetchText(url: string): Promise<string> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the book could not be loaded (${answer.status})`);
  return answer.text();
}
