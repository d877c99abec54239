import { openDatabase } from './database.ts';
import { reasonOf } from './storage-error.ts';
import type { StoreNotice } from './store-notice.ts';
import type { Database } from './stores.ts';

/** The connection to the storage of this browser: opened when first wanted, and anew when it was lost. */
export interface Connection {
  /** The storage, where it is open now. */
  readonly current: Database | undefined;
  readonly open: () => Promise<Database>;
  /** The same, but rejects as soon as the opening has to wait. */
  readonly openAtOnce: () => Promise<Database>;
}

/** After so many milliseconds without an answer the person is told. */
const patience = 3000;

/**
 * `tell` hears what the person should know; `lost` hears that the connection is gone: what is stored may have gone with it,
 * or be another's by now.
 */
export function createConnection(tell: (notice: StoreNotice) => void, lost: () => void): Connection {
  let current: Database | undefined;
  let opening: Promise<Database> | undefined;
  let waiting: string | undefined;
  /** Whether something was said that is over once the storage is open. */
  let complained = false;
  /** Those who will not wait. */
  const impatient = new Set<(error: Error) => void>();
  const wait = (reason: string): void => {
    waiting = reason;
    complained = true;
    for (const reject of impatient) reject(new Error(reason));
    tell({ kind: 'waiting', reason });
  };
  const end = (): void => {
    // What was begun is written to its end before another has the storage.
    current?.close();
    current = undefined;
    opening = undefined;
    lost();
  };
  const open = async (): Promise<Database> => {
    const slow = setTimeout(() => {
      // What it waits for may be known by now, and says more.
      if (waiting === undefined) wait('the storage of this browser does not answer yet');
    }, patience);
    try {
      const database = await openDatabase({
        blocked: () =>
          wait(
            'another tab has an older version of Quaybook open; close it, or load it anew, and this one goes on',
          ),
        blocking: (_current, wanted) => {
          // Deleted by someone else, which is no new version.
          if (wanted !== null) tell({ kind: 'gave way' });
          end();
        },
        terminated: end,
      });
      current = database;
      waiting = undefined;
      if (complained) tell({ kind: 'ready' });
      complained = false;
      return database;
    } catch (error) {
      opening = undefined;
      complained = true;
      tell({ kind: 'cannot keep', reason: reasonOf(error) });
      throw error;
    } finally {
      clearTimeout(slow);
      waiting = undefined;
    }
  };
  const openPatiently = (): Promise<Database> => {
    opening ??= open();
    return opening;
  };
  return {
    get current() {
      return current;
    },
    open: openPatiently,
    openAtOnce: () =>
      new Promise((resolve, reject) => {
        if (waiting !== undefined) reject(new Error(waiting));
        impatient.add(reject);
        openPatiently()
          .then(resolve, reject)
          .finally(() => impatient.delete(reject));
      }),
  };
}
