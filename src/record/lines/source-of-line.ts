import { brokenLink, type Item, linkSource, type Notebook } from '../../notebook/index.ts';
import { idInWords } from '../values/persons-words.ts';
import { type Referring, referenceShown } from './methods-shown.ts';

/**
 * What a line rests on, in words: its reference; of a linked line the line that its value comes from with that line's own
 * source, and the reference only as the one that it has without the link.
 */
export function sourceOfLine(notebook: Notebook, source: Referring, item: Item | undefined): string {
  const own = referenceShown(notebook, source, item);
  if (!item) return own;
  const { items } = notebook.model;
  const from = linkSource(item, items);
  if (!from && brokenLink(item, items) === undefined) return own;
  const without = own === '' ? '' : `without the link: ${own}`;
  return [from && linkWords(notebook, item, from), without].filter(Boolean).join('; ');
}

function linkWords(notebook: Notebook, item: Item, from: Item): string {
  const { items } = notebook.model;
  const seen = new Set([item.id]);
  let end = from;
  // A line that is linked in its turn has no source but what it is linked to.
  for (let next = linkSource(end, items); next && !seen.has(next.id); next = linkSource(end, items)) {
    seen.add(end.id);
    end = next;
  }
  const reference = referenceShown(notebook, 'row' in end ? end.row : end.column, end);
  const name = idInWords(from.id, notebook, item.sheet);
  return `linked to ${name}${reference === '' ? ', which has no reference' : `: ${reference}`}`;
}
