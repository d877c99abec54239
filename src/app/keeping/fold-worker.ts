import { openDatabase } from './database.ts';
import { reasonOf } from './reason.ts';
import { foldJournal } from './whole.ts';

/** What the page hears of a book whose journal was to be folded into its whole. */
export type FoldReply = { readonly id: string; readonly failed?: string };

// A large book takes longer to read and write than a keystroke may, so it is done beside the page.
const database = openDatabase();

self.addEventListener('message', ({ data: id }: MessageEvent<string>) => {
  const answer = (reply: FoldReply): void => self.postMessage(reply);
  database
    .then((store) => foldJournal(store, id))
    .then(
      () => answer({ id }),
      (error: unknown) => answer({ id, failed: reasonOf(error) }),
    );
});
