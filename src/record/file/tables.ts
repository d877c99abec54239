import { type Attributes, type Content, element, type Markup, together } from '../../markup/index.ts';

/** A column of a table of the record: its head, and how its cells stand. */
export interface Head {
  readonly head: Content;
  readonly class?: 'number' | 'name';
}

/** A row of a table: its cells, the first of which names it, and an id where something leads to it. */
export interface TableRow {
  readonly id?: string;
  readonly class?: string;
  readonly cells: readonly Content[];
}

/** How a table is written: its kind, and the level of its title where that is not right below a section’s own. */
interface TableManner extends Pick<Attributes, 'class'> {
  readonly level?: 'h3' | 'h4';
}

/** A table below its title, with heads that say what they are heads of and rows that are named by their first cell. */
export function table(
  title: string,
  heads: readonly Head[],
  rows: readonly TableRow[],
  { class: kind, level = 'h3' }: TableManner = {},
): Markup {
  const headCells = heads.map(({ head, class: of }) => element('th', { scope: 'col', class: of }, head));
  const isUntitled = String(kind ?? '').includes('untitled');
  // With a caption Chromium begins a page for each table on pages that have a name.
  const heading = element(level, { class: isUntitled ? 'of-table untitled' : 'of-table' }, title);
  const written = element(
    'table',
    { class: kind, 'aria-label': title },
    element('thead', {}, element('tr', {}, headCells)),
    element(
      'tbody',
      {},
      rows.map(({ id, class: of, cells }) =>
        element(
          'tr',
          { id, class: of },
          cells.map((cell, at) =>
            at === 0
              ? element('th', { scope: 'row', class: heads[0]?.class }, cell)
              : element('td', { class: heads[at]?.class }, cell),
          ),
        ),
      ),
    ),
  );
  return together(heading, written);
}

/** Terms with what is said of each; those without words are left out. */
export function terms(list: readonly (readonly [term: string, words: Content])[], kind?: string): Markup {
  return element(
    'dl',
    { class: kind },
    list
      .filter(([, words]) => words !== '')
      .map(([term, words]) => element('div', {}, element('dt', {}, term), element('dd', {}, words))),
  );
}

/** Paragraphs of a text as it was typed. */
export function paragraphs(text: string): Content {
  return text
    .split(/\n+/)
    .filter((one) => one.trim() !== '')
    .map((one) => element('p', {}, one));
}
