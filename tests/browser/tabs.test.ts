import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { cell, enter, showSheet } from './app-page.ts';
import { app, openBeside, openPage, page, withBrowser } from './each-test.ts';
import { openSmallBook } from './small-book.ts';
import { changeStored, deleteStored } from './stored-books.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

const kept = (on: Page) => on.locator('quay-top-bar').getByText(/all kept/);

async function openSheet(on: Page): Promise<void> {
  await showSheet(on, 'Berthing energy');
}
async function softness(on: Page): Promise<string> {
  await openSheet(on);
  return (await cell(on, 'softness factor', 'value').textContent()) ?? '';
}

describe('a book that is open in one tab', () => {
  test('is not removed in another without a word, and is said to be not kept once it is; it can be kept anew', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    const second = await openBeside({ beside: app.context });
    const asked: string[] = [];
    second.page.on('dialog', (dialog) => {
      asked.push(dialog.message());
      void (asked.length === 1 ? dialog.dismiss() : dialog.accept());
    });
    const remove = second.page.getByRole('button', { name: /^Remove/ });
    await remove.click();
    await expect.poll(() => asked.length).toBe(1);
    expect(asked[0]).toContain('is open in another tab');
    await kept(page).waitFor();
    await remove.click();
    // The other tab says so by itself.
    await page.getByText('This book was removed from this browser. What stands here is not kept.').waitFor();
    await page.getByText('not kept: this book was removed from this browser').waitFor();
    await enter(page, 'softness factor', '0.92');
    expect(await kept(page).count()).toBe(0);
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
    await page.reload();
    expect(await softness(page)).toContain('0.92');
    await second.page.close();
  });

  test('and is taken from the storage by other means is found missing at the next edit', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    await deleteStored(page);
    await enter(page, 'softness factor', '0.92');
    await page.getByText('not kept: this book was removed from this browser').waitFor();
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
    await enter(page, 'softness factor', '0.93');
    await kept(page).waitFor();
    await page.reload();
    expect(await softness(page)).toContain('0.93');
  });

  test('and is lost with the data of the site is said to be not kept at once', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    const devtools = await app.context.newCDPSession(page);
    await devtools.send('Storage.clearDataForOrigin', {
      origin: new URL(page.url()).origin,
      storageTypes: 'indexeddb',
    });
    await page.getByText('not kept: this book was removed from this browser').waitFor();
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
    await page.reload();
    expect(await softness(page)).toContain('0.91');
  });

  test('and is lost because another page deletes the storage is said to be not kept at once', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    const other = await app.context.newPage();
    await other.goto(new URL('icon.svg', page.url()).href);
    await other.evaluate(
      () =>
        new Promise<void>((done, refused) => {
          const deleting = indexedDB.deleteDatabase('quaybook');
          deleting.onerror = () => refused(deleting.error ?? new Error('not deleted'));
          deleting.onsuccess = () => done();
        }),
    );
    await page.getByText('not kept: this book was removed from this browser').waitFor();
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
    await page.reload();
    expect(await softness(page)).toContain('0.91');
  });

  test('and is taken from the storage by other means is found missing when the person comes back to the tab', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    await deleteStored(page);
    await page.evaluate(() => dispatchEvent(new Event('focus')));
    await page.getByText('not kept: this book was removed from this browser').waitFor();
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
  });
});

describe('a book that another tab has changed', () => {
  /** Opens it in a second tab too, changes it in both, and closes the first. */
  const change = async (): Promise<Page> => {
    await openSmallBook(page);
    const second = await openBeside({ beside: app.context });
    await second.page.goto(page.url());
    await second.page.getByText(/open in another tab/).waitFor();
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    await openSheet(second.page);
    await enter(second.page, 'softness factor', '0.82');
    await page.close();
    await second.page.getByText('This book was changed in another tab, and that is kept.').waitFor();
    return second.page;
  };
  const removed = (on: Page) =>
    on.getByText('This book was removed from this browser. What stands here is not kept.').waitFor();

  test('and a third then removes is said to be removed, and can be kept anew', async () => {
    const second = await change();
    const third = await openBeside({ beside: app.context });
    third.page.on('dialog', (dialog) => void dialog.accept());
    await third.page.getByRole('button', { name: /^Remove/ }).click();
    await removed(second);
    expect(await second.getByRole('button', { name: 'Take what is kept' }).count()).toBe(0);
    await enter(second, 'softness factor', '0.83');
    await second.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(second).waitFor();
    await second.reload();
    expect(await softness(second)).toContain('0.83');
  });

  test('stays in this tab where it is to be given up for what is kept and nothing is', async () => {
    const second = await change();
    await deleteStored(second);
    await second.getByRole('button', { name: 'Take what is kept' }).click();
    await removed(second);
    expect(await softness(second)).toContain('0.82');
    await second.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(second).waitFor();
    await second.reload();
    expect(await softness(second)).toContain('0.82');
  });

  test('and is removed unheard is found missing at the next edit', async () => {
    const second = await change();
    await deleteStored(second);
    await enter(second, 'softness factor', '0.83');
    await removed(second);
  });

  test('stays in this tab where it is to be given up for what is kept and that cannot be read', async () => {
    const second = await change();
    await changeStored(second, ([, texts]) => {
      const all = texts.getAll();
      all.onsuccess = () => {
        for (const one of all.result) texts.put({ ...one, text: '{' });
      };
    });
    await second.getByRole('button', { name: 'Take what is kept' }).click();
    await second.getByText(/^what is kept cannot be opened: /).waitFor();
    expect(await softness(second)).toContain('0.82');
    await second.getByRole('button', { name: 'Keep mine as a book of its own' }).click();
    await kept(second).waitFor();
    expect(await softness(second)).toContain('0.82');
  });
});

describe('a second tab on the same book', () => {
  test('says that the book was removed, though the first is the one that keeps it', async () => {
    await openSmallBook(page);
    const second = await openBeside({ beside: app.context });
    await second.page.goto(page.url());
    await second.page.getByText(/open in another tab/).waitFor();
    const third = await openBeside({ beside: app.context });
    third.page.on('dialog', (dialog) => void dialog.accept());
    await third.page.getByRole('button', { name: /^Remove/ }).click();
    for (const one of [page, second.page])
      await one.getByText('not kept: this book was removed from this browser').waitFor();
    await page.getByRole('button', { name: 'Keep it anew' }).click();
    await kept(page).waitFor();
    // Both would be the one book: the second to keep it has to choose.
    await second.page.getByRole('button', { name: 'Keep it anew' }).click();
    await second.page.getByText('not kept: this book was changed in another tab').waitFor();
  });

  test('takes over the keeping when the first is closed, and says so', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    const second = await openBeside({ beside: app.context });
    await second.page.goto(page.url());
    await second.page.getByText(/open in another tab/).waitFor();
    // One edit more in the first, which the second finds when it takes over.
    await enter(page, 'softness factor', '0.92');
    await kept(page).waitFor();
    await page.close();
    await kept(second.page).waitFor();
    expect(await second.page.getByText(/nothing is kept/).count()).toBe(0);
    expect(await softness(second.page)).toContain('0.92');
    await enter(second.page, 'softness factor', '0.93');
    await kept(second.page).waitFor();
    await second.page.reload();
    expect(await softness(second.page)).toContain('0.93');
  });

  test('keeps what was entered in it, where the first has changed nothing since', async () => {
    await openSmallBook(page);
    const second = await openBeside({ beside: app.context });
    await second.page.goto(page.url());
    await second.page.getByText(/open in another tab/).waitFor();
    await openSheet(second.page);
    await enter(second.page, 'softness factor', '0.82');
    await page.close();
    await kept(second.page).waitFor();
    await second.page.reload();
    expect(await softness(second.page)).toContain('0.82');
  });

  test('finds the edits of the first in the journal where the browser has no locks', async () => {
    const noLocks = () => {
      Reflect.deleteProperty(Navigator.prototype, 'locks');
      Reflect.deleteProperty(Crypto.prototype, 'randomUUID');
    };
    await page.addInitScript(noLocks);
    await page.reload();
    await openSmallBook(page);
    await openSheet(page);
    const second = await openBeside({ beside: app.context });
    await second.page.addInitScript(noLocks);
    await second.page.goto(page.url());
    await second.page.reload();
    await openSheet(second.page);
    await enter(page, 'softness factor', '0.91');
    await kept(page).waitFor();
    await enter(second.page, 'softness factor', '0.82');
    await second.page.getByText('not kept: this book was changed in another tab').waitFor();
    await second.page.getByRole('button', { name: 'Take what is kept' }).click();
    await kept(second.page).waitFor();
    expect(await softness(second.page)).toContain('0.91');
    await enter(second.page, 'softness factor', '0.83');
    await kept(second.page).waitFor();
    await enter(page, 'softness factor', '0.92');
    await page.getByText('not kept: this book was changed in another tab').waitFor();
    await page.getByRole('button', { name: 'Keep mine as a book of its own' }).click();
    await kept(page).waitFor();
    await page.reload();
    expect(await softness(page)).toContain('0.92');
    await second.page.reload();
    expect(await softness(second.page)).toContain('0.83');
  });
});

describe('versions of the storage side by side', () => {
  /** Opens the storage in a page that is not the app; whether it gives way is its own affair. */
  const hold = (on: Page, version: number) =>
    on.evaluate(
      (number) =>
        new Promise<void>((done, refused) => {
          const opening = indexedDB.open('quaybook', number);
          opening.onerror = () => refused(opening.error ?? new Error('not opened'));
          opening.onsuccess = () => {
            addEventListener('let go', () => opening.result.close());
            done();
          };
        }),
      version,
    );

  test('an old tab that does not give way is named, and the book waits in this tab until it does', async () => {
    const fresh = await app.context.browser()?.newContext({ serviceWorkers: 'block' });
    if (!fresh) throw new Error('there is no browser');
    const old = await fresh.newPage();
    await old.goto(new URL('icon.svg', page.url()).href);
    await hold(old, 1);
    const young = await fresh.newPage();
    await young.goto(page.url());
    await young.getByText(/another tab has an older version of Quaybook open/).waitFor();
    await openSmallBook(young);
    await young.getByText(/not kept: another tab has an older version/).waitFor();
    await openSheet(young);
    await enter(young, 'softness factor', '0.91');
    await old.evaluate(() => dispatchEvent(new Event('let go')));
    await kept(young).waitFor();
    await young.reload();
    expect(await softness(young)).toContain('0.91');
    await fresh.close();
  });

  test('this tab gives way to a newer one at once, with everything kept, and says so', async () => {
    await openSmallBook(page);
    await openSheet(page);
    await enter(page, 'softness factor', '0.91');
    const newer = await app.context.newPage();
    await newer.goto(new URL('icon.svg', page.url()).href);
    await hold(newer, 99);
    await page.getByText('Another tab has changed to a new version of Quaybook.').waitFor();
    // Nothing is called kept that this version cannot look at; both ways out are said.
    await page
      .getByText(/^not kept: a newer version of Quaybook has the storage; save a file .* close its tabs/)
      .waitFor();
    const stored = await newer.evaluate(
      () =>
        new Promise((done) => {
          const opening = indexedDB.open('quaybook', 99);
          opening.onsuccess = () => {
            const entries = opening.result.transaction('journal').objectStore('journal').getAll();
            entries.onsuccess = () => done(JSON.stringify(entries.result));
          };
        }),
    );
    expect(stored).toContain('0.91');
    await enter(page, 'softness factor', '0.92');
    await page.getByText(/not kept: a newer version of Quaybook has the storage/).waitFor();
    const asked = page.waitForEvent('dialog');
    await page.evaluate(() => setTimeout(() => location.reload()));
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    expect(await softness(page)).toContain('0.92');
    await newer.close();
    app.complaints.length = 0;
  });
});
