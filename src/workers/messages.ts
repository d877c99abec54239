import type { Book } from '../document/index.ts';
import type { RecheckReport } from '../recheck/index.ts';

/** What the page asks: the book as it stands, and the turn it is. */
export interface RecheckRequest {
  readonly turn: number;
  readonly book: Book;
}
/** What it hears: the report of that turn, or why there is none. */
export type RecheckReply =
  | { readonly turn: number; readonly report: RecheckReport }
  | { readonly turn: number; readonly failed: string };
