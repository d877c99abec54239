import type { Book } from '../../document/index.ts';
import { type Piece, titleOf } from './pieces.ts';

/** A piece of a print, and its place in it from 0. */
export interface PlacedPiece {
  readonly piece: Piece;
  readonly at: number;
}

/** Pages that run on from one piece to the next, with a foot of their own. */
export interface PageRun {
  /** The name that the run's pages have as their `page`. */
  readonly name: string;
  /** What the foot calls them. */
  readonly title: string;
  /** Whether they begin with the contents of the print. */
  readonly contents: boolean;
  readonly pieces: readonly PlacedPiece[];
}

/**
 * The runs of pages that pieces are printed on. Several begin with their contents, behind which stand what the book is
 * for and its checks; the sheets of a group follow one another; every other piece begins a page.
 */
export function pageRuns(pieces: readonly Piece[], book: Book): readonly PageRun[] {
  const isSeveral = pieces.length > 1;
  const opening: PlacedPiece[] = [];
  const runs: PlacedPiece[][] = [];
  for (const [at, piece] of pieces.entries()) {
    const before = runs.at(-1);
    const last = before?.at(-1);
    if (isSeveral && piece.kind === 'page' && piece.page !== 'sources') opening.push({ piece, at });
    else if (
      before &&
      last &&
      groupOf(piece, book) !== '' &&
      groupOf(piece, book) === groupOf(last.piece, book)
    )
      before.push({ piece, at });
    else runs.push([{ piece, at }]);
  }
  const words = (run: readonly PlacedPiece[]): string => footWords(run, pieces.length, book);
  const contents: PageRun = {
    name: 'contents',
    title: ['Contents', ...(opening.length > 0 ? [words(opening)] : [])].join('; '),
    contents: true,
    pieces: opening,
  };
  return [
    ...(isSeveral ? [contents] : []),
    ...runs.map((run, at) => ({ name: `run-${at + 1}`, title: words(run), contents: false, pieces: run })),
  ];
}

/** The group of a sheet; pages about the book have none. */
function groupOf(piece: Piece, { sheets }: Book): string {
  if (piece.kind === 'page') return '';
  return sheets.find(({ key }) => key === piece.sheet)?.group ?? '';
}

/** What the foot of a run says: its parts by the numbers that they have in the contents, and their group's title or their own. */
function footWords(run: readonly PlacedPiece[], all: number, book: Book): string {
  const [first] = run;
  const last = run.at(-1);
  if (!first || !last) return '';
  if (first === last) {
    const title = titleOf(first.piece, book);
    return all > 1 ? `part ${first.at + 1} of ${all}: ${title}` : title;
  }
  const titles = run.map(({ piece }) => titleOf(piece, book)).join(', ');
  return `parts ${first.at + 1} to ${last.at + 1} of ${all}: ${groupOf(first.piece, book) || titles}`;
}
