import type { Page } from 'playwright-core';

/** Removes a book's snapshot and journal from the storage, past the app. */
export function deleteStored(page: Page): Promise<void> {
  return changeStored(page, (stores) => {
    for (const store of stores) store.clear();
  });
}

/** Changes the stores of books, snapshots and journals past the app; `change` runs in the page and sees nothing of here. */
export async function changeStored(
  page: Page,
  change: (stores: readonly [IDBObjectStore, IDBObjectStore, IDBObjectStore]) => void,
): Promise<void> {
  await page.evaluate(
    `new Promise((done, refused) => {
      const opening = indexedDB.open('quaybook');
      opening.onerror = () => refused(opening.error);
      opening.onsuccess = () => {
        const names = ['books', 'texts', 'journal'];
        const writing = opening.result.transaction(names, 'readwrite');
        (${change.toString()})(names.map((name) => writing.objectStore(name)));
        writing.onabort = () => refused(writing.error);
        writing.oncomplete = () => { opening.result.close(); done(); };
      };
    })`,
  );
}
