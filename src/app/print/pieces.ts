import type { Book } from '../../document/index.ts';
import { groupedSheets } from '../../record/index.ts';
import { type OverviewPart, overviewTitles } from '../view-model/page-view.ts';
import type { Working } from './working.ts';

/** A page about the whole book that is printed. */
export type PrintedPage = 'about' | 'checks' | 'signing' | 'origin' | 'sources' | 'steps';

/** The pages that are printed when they are in hand; of the others the checks are. */
const ON_PAPER: readonly PrintedPage[] = ['about', 'signing', 'origin', 'sources', 'steps'];

/** What begins a page of its own on paper: a sheet by its key, or a page about the book. */
export type Piece =
  | { readonly kind: 'sheet'; readonly sheet: string }
  | { readonly kind: 'page'; readonly page: PrintedPage };

/** What is to be printed: the page in hand, the whole book, or what was chosen of it, by {@link idOf}. */
export type PrintChoice =
  | { readonly which: 'in hand' }
  | { readonly which: 'all' }
  | { readonly which: 'chosen'; readonly ids: ReadonlySet<string> };

/** Names a piece among all of a book. */
export function idOf(piece: Piece): string {
  return piece.kind === 'sheet' ? `sheet ${piece.sheet}` : `page ${piece.page}`;
}

/**
 * All that a book has to print, in the order of its paper: what it is for, its sheets as they are listed, what they come to. The
 * steps to a result are printed by themselves.
 */
export function piecesOf(book: Book): readonly Piece[] {
  const page = (of: PrintedPage): Piece => ({ kind: 'page', page: of });
  const sheets = [...groupedSheets(book).values()].flat();
  const { signOffs, revisions } = book.review;
  return [
    page('about'),
    page('checks'),
    ...(signOffs.length > 0 || revisions.length > 0 ? [page('signing')] : []),
    ...(book.sheets.some(({ start }) => start) ? [page('origin')] : []),
    ...sheets.map(({ key }): Piece => ({ kind: 'sheet', sheet: key })),
    page('sources'),
  ];
}

/**
 * The pieces of a book that a choice names; what was chosen and is gone by now is left out. A print of the whole book for
 * review has the sources of what it prints on each sheet, in place of the list of all.
 */
export function chosenPieces(
  book: Book,
  choice: PrintChoice,
  working: Working,
  inHand: { readonly sheet: string; readonly overview: OverviewPart | undefined },
): readonly Piece[] {
  if (choice.which === 'in hand') return [pieceInHand(inHand)];
  const all = piecesOf(book);
  if (choice.which === 'all')
    return working === 'review' ? all.filter((piece) => idOf(piece) !== 'page sources') : all;
  return all.filter((piece) => choice.ids.has(idOf(piece)));
}

/** The page or sheet that is shown. */
export function pieceInHand({
  sheet,
  overview,
}: {
  readonly sheet: string;
  readonly overview: OverviewPart | undefined;
}): Piece {
  if (!overview) return { kind: 'sheet', sheet };
  return { kind: 'page', page: ON_PAPER.find((page) => page === overview) ?? 'checks' };
}

/** What a piece is called. */
export function titleOf(piece: Piece, { sheets }: Book): string {
  if (piece.kind === 'page') return overviewTitles[piece.page];
  return sheets.find(({ key }) => key === piece.sheet)?.title || piece.sheet;
}
