import type { About, Book } from '../../document/index.ts';

/** A shipped template as the start page shows it before it opens. */
export interface ShippedTemplate {
  readonly id: string;
  readonly title: string;
  readonly about: About;
  /** Where its first sketch is, drawn from its own cells. */
  readonly picture: string;
  /** Fetches and opens its book. */
  readonly open: () => Promise<Book>;
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
      open: () => fetchBook(files[path] ?? ''),
    };
  })
  .sort((a, b) => a.title.localeCompare(b.title));

/** Fetches a book that is shipped with the app. */
export async function fetchBook(url: string): Promise<Book> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the book could not be loaded (${answer.status})`);
  const { openBook } = await import('../../document/index.ts');
  const opened = openBook(await answer.text());
  if (!opened.ok) throw new Error(opened.problems[0]?.message ?? 'the book is not sound');
  return opened.value.book;
}
