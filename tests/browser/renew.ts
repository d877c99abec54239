import type { Page } from 'playwright-core';
import type { AppPage } from './app-page.ts';

/** What a test can do to a page that stays on it. */
const changing = {
  page: ['addInitScript', 'route'],
  context: ['addInitScript', 'newPage', 'route', 'setOffline'],
} as const;

/** Width and height of the part of a window that shows the page, in px. */
export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

const changed = new WeakSet<Page>();

/** Takes note when a test changes more of a page than the app does. */
export function watchChanges({ page, context }: AppPage): void {
  const watch = (of: object, names: readonly string[]): void => {
    for (const name of names) {
      const does = Reflect.get(of, name) as (...args: readonly unknown[]) => unknown;
      Reflect.set(of, name, (...args: readonly unknown[]) => {
        changed.add(page);
        return does.apply(of, [...args]);
      });
    }
  };
  watch(page, changing.page);
  watch(context, changing.context);
}

/** Whether a page is as it was opened, apart from what {@link renew} takes back. */
export async function isAsOpened(page: Page): Promise<boolean> {
  if (changed.has(page) || page.isClosed()) return false;
  // A test that presses Print has a print of its own.
  return page.evaluate(() => /native code/.test(String(window.print)));
}

/** Has the app on a page begin anew: its window as it was, no book open, an element of its own, nothing stored. */
export async function renew(page: Page, window: WindowSize): Promise<void> {
  await page.emulateMedia({ media: null });
  await page.setViewportSize(window);
  await page.evaluate(async () => {
    location.hash = '';
    // A book is let go of once all its edits are written.
    while ((await navigator.locks.query()).held?.some(({ name }) => name?.startsWith('quaybook:')))
      await new Promise((done) => setTimeout(done, 5));
    sessionStorage.clear();
    localStorage.clear();
    const database = await new Promise<IDBDatabase>((done, fail) => {
      const asked = indexedDB.open('quaybook');
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error ?? new Error('the storage does not open'));
    });
    const stores = [...database.objectStoreNames];
    await new Promise<void>((done, fail) => {
      const clearing = database.transaction(stores, 'readwrite');
      for (const store of stores) clearing.objectStore(store).clear();
      clearing.oncomplete = () => done();
      clearing.onerror = () => fail(clearing.error ?? new Error('the storage is not cleared'));
    });
    database.close();
    const before = document.querySelector<HTMLElement & { store: unknown }>('quay-app');
    const after = Object.assign(document.createElement('quay-app'), { store: before?.store });
    before?.replaceWith(after);
  });
  await page.mouse.move(0, 0);
  await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
}
