import { type OpenDBCallbacks, openDB } from 'idb';
import { migrateStores } from './store-migrations.ts';
import type { Database, Schema } from './stores.ts';

/** Counts changes of the stores, not of the format of a book. */
const STORE_VERSION = 3;

/** Opens the storage of this browser, its stores migrated. Rejects where the browser allows none. */
export async function openDatabase(
  callbacks: Pick<OpenDBCallbacks<Schema>, 'blocked' | 'blocking' | 'terminated'>,
): Promise<Database> {
  if (typeof indexedDB === 'undefined' || !indexedDB) throw new DOMException('', 'SecurityError');
  return openDB<Schema>('quaybook', STORE_VERSION, {
    ...callbacks,
    upgrade: (database, _before, _after, transaction) => {
      // A transaction taken back leaves the stores as they were, and the opening is refused.
      migrateStores(database, transaction).catch(() => transaction.abort());
    },
  });
}
