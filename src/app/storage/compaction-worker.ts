import { openDatabase } from './database.ts';
import { compactJournal } from './snapshot.ts';
import { reasonOf } from './storage-error.ts';

/** What the page hears of a journal that was to be compacted: the last edit in the snapshot, or why there is none. */
export type CompactionReply = { readonly through: number } | { readonly failed: string };

// A large book takes longer to read and write than a keystroke may, so it is done beside the page.
self.addEventListener('message', ({ data: id }: MessageEvent<string>) => {
  const answer = (reply: CompactionReply): void => self.postMessage(reply);
  compact(id).then(
    (through) => answer({ through }),
    (error: unknown) => answer({ failed: reasonOf(error) }),
  );
});

async function compact(id: string): Promise<number> {
  const database = await openDatabase({
    // A newer version has the storage at once: an unfinished compaction leaves everything as it was.
    blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
  });
  try {
    return await compactJournal(database, id);
  } finally {
    database.close();
  }
}
