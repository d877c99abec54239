import type { Book } from '../../../document/index.ts';
import { openNotebook } from '../../../notebook/index.ts';
import type { TableCell } from '../../../tables/index.ts';
import { type FoundRows, openRowsFinder, type RowsFinder, type RowsRequest } from './find-rows.ts';

/** What the page tells the worker: the book whose tables the rows are for, first of all; then texts to read. */
export type RowsOrder =
  | { readonly kind: 'book'; readonly book: Book }
  | { readonly kind: 'read'; readonly turn: number; readonly request: RowsRequest };

/** What it hears: the cells of a text column by column, then all else of it; or why there is nothing. */
export type RowsReply =
  | {
      readonly kind: 'cells';
      readonly turn: number;
      readonly name: string;
      readonly cells: readonly TableCell[];
    }
  | { readonly kind: 'found'; readonly turn: number; readonly found: FoundRows }
  | { readonly kind: 'failed'; readonly turn: number; readonly reason: string };

let find: RowsFinder | undefined;

// A long text takes longer to read than a keystroke may, so it is done beside the page.
self.addEventListener('message', ({ data }: MessageEvent<RowsOrder>) => {
  if (data.kind === 'book') {
    // No value of the book matters here: what a cell may be is said by its columns and units.
    find = openRowsFinder(openNotebook(data.book, () => ({ isOver: () => true })));
    return;
  }
  const answer = (reply: RowsReply): void => self.postMessage(reply);
  const { turn, request } = data;
  try {
    if (!find) throw new Error('no book is told');
    const found = find(request);
    const { read } = found;
    if (!read.ok) {
      answer({ kind: 'found', turn, found });
      return;
    }
    // The page takes in one column at a time, so that it can answer a key in between.
    for (const [name, cells] of Object.entries(read.value.cells))
      answer({ kind: 'cells', turn, name, cells });
    answer({
      kind: 'found',
      turn,
      found: { ...found, read: { ...read, value: { ...read.value, cells: {} } } },
    });
  } catch (error) {
    answer({ kind: 'failed', turn, reason: String(error) });
  }
});
