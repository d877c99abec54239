import type { IDBPTransaction } from 'idb';
import { allStores, type Database, type Schema, type StoreName } from './stores.ts';

type Transaction<Mode extends IDBTransactionMode> = IDBPTransaction<Schema, readonly StoreName[], Mode>;

/**
 * Does work on the stores in one transaction, and gives its result once all of it is on the disk. A failure, of the work or
 * of the transaction, leaves everything as it was and is thrown once.
 */
export async function inTransaction<Mode extends 'readonly' | 'readwrite', Result>(
  database: Database,
  mode: Mode,
  work: (transaction: Transaction<Mode>) => Promise<Result>,
): Promise<Result> {
  const transaction = database.transaction(allStores, mode, { durability: 'strict' });
  try {
    const [result] = await Promise.all([work(transaction), transaction.done]);
    return result;
  } catch (error) {
    abortTransaction(transaction);
    throw error;
  }
}

/** Ends a transaction without effect, if it has not ended by itself. */
export function abortTransaction(transaction: { readonly abort: () => void }): void {
  try {
    transaction.abort();
  } catch (error) {
    if (!isNamed(error, 'InvalidStateError')) throw error;
  }
}

/** Whether an error is one the browser calls so. */
export function isNamed(error: unknown, name: string): boolean {
  return error instanceof DOMException && error.name === name;
}
