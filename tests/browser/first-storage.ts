import type { Page } from 'playwright-core';
import type { Edit } from '../../src/document/index.ts';

/**
 * Keeps a book as the first version of the storage did, its text with its card, and one edit of its journal.
 * The page is of the app's own address, in a browser that has not opened the app.
 */
export function keepAsFirstVersion(page: Page, text: string, edit: Edit): Promise<void> {
  return page.evaluate(
    (kept) =>
      new Promise<void>((done, refused) => {
        const opening = indexedDB.open('quaybook', 1);
        opening.onupgradeneeded = () => {
          opening.result.createObjectStore('books', { keyPath: 'id' });
          opening.result.createObjectStore('journal', { keyPath: ['book', 'number'] });
        };
        opening.onerror = () => refused(opening.error ?? new Error('not opened'));
        opening.onsuccess = () => {
          const writing = opening.result.transaction(['books', 'journal'], 'readwrite');
          writing
            .objectStore('books')
            .put({ id: 'earlier', name: 'An earlier book', changed: 0, through: 0, text: kept.text });
          writing.objectStore('journal').put({ book: 'earlier', number: 1, edit: JSON.parse(kept.edit) });
          writing.onabort = () => refused(writing.error ?? new Error('not kept'));
          writing.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
    { text, edit: JSON.stringify(edit) },
  );
}
