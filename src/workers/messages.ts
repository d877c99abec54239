import type { Book, Case } from '../document/index.ts';
import type { RecheckProgress, RecheckReport } from '../recheck/index.ts';
import type { ProjectCase } from '../review/index.ts';

/** What the page asks: the book as it stands, and the turn it is. */
export interface RecheckRequest {
  readonly turn: number;
  readonly book: Book;
}
/** What it hears of that turn: how far it is, the report, or why there is none. */
export type RecheckReply =
  | { readonly turn: number; readonly progress: RecheckProgress }
  | { readonly turn: number; readonly report: RecheckReport }
  | { readonly turn: number; readonly failed: string };

/** What the page asks: a template with its id, cases of it, and the book on whose formulas they are run. */
export interface CasesRequest {
  readonly template: Book;
  readonly id: string;
  readonly cases: readonly Case[];
  readonly project: Book;
}
/** What it hears, one for each case in their order; or why there are no more. */
export type CasesReply = { readonly result: ProjectCase } | { readonly failed: string };
