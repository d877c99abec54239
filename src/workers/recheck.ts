import type { Book } from '../document/index.ts';
import { openNotebook, recheckProgram } from '../notebook/index.ts';
import { type RecheckReport, recheck } from '../recheck/index.ts';

/** What the page asks: the book as it stands, and the turn it is. */
export interface RecheckRequest {
  readonly turn: number;
  readonly book: Book;
}
/** What it hears: the report of that turn, or why there is none. */
export type RecheckReply =
  | { readonly turn: number; readonly report: RecheckReport }
  | { readonly turn: number; readonly failed: string };

/** Rechecks a whole book off the main thread. */
self.addEventListener('message', (event: MessageEvent<RecheckRequest>) => {
  const { turn, book } = event.data;
  const answer = (reply: RecheckReply): void => self.postMessage(reply);
  const { program, values } = recheckProgram(openNotebook(book));
  recheck(program, values).then(
    (report) => answer({ turn, report }),
    (error: unknown) => answer({ turn, failed: String(error) }),
  );
});
