import { readFile } from 'node:fs/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import { cell, enter, line, resultOf, showSheet, startFrom } from './app-page.ts';
import { app, openBeside, openPage, page, withBrowser } from './each-test.ts';
import { keepAsFirstVersion } from './first-storage.ts';
import { openSmallBook, SMALL_BOOK } from './small-book.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

/** Waits until the page says that everything is kept. */
async function kept(): Promise<void> {
  await page
    .locator('quay-top-bar')
    .getByText(/all kept/)
    .waitFor();
}

describe('keeping', () => {
  test('a reload loses nothing that was entered', async () => {
    await openSmallBook(page);
    await showSheet(page, 'Berthing energy');
    await enter(page, 'softness factor', '0.91');
    const changed = await resultOf(page, 'normal berthing energy');
    await kept();
    await page.reload();
    await showSheet(page, 'Berthing energy');
    expect(await resultOf(page, 'normal berthing energy')).toBe(changed);
    await page.getByRole('button', { name: 'Quaybook' }).click();
    await page.getByRole('button', { name: SMALL_BOOK }).first().waitFor();
  });

  test('a book that was left is kept when it is opened again in the same tab', async () => {
    await openSmallBook(page);
    for (const entry of ['0.91', '0.92']) {
      await showSheet(page, 'Berthing energy');
      await enter(page, 'softness factor', entry);
      await page.getByRole('button', { name: 'Quaybook' }).click();
      // The list of books comes from the storage; the template of this name is there before it.
      await page.locator('quay-start-page #recent + ul button').first().click();
      await showSheet(page, 'Berthing energy');
      expect(await cell(page, 'softness factor', 'value').textContent()).toContain(entry);
      expect(await page.getByText(/open in another tab/).count()).toBe(0);
    }
    await enter(page, 'softness factor', '0.93');
    await kept();
  });

  test('a tab that crashes loses nothing that was kept', async () => {
    await openSmallBook(page);
    const book = page.url();
    await showSheet(page, 'Berthing energy');
    await enter(page, 'softness factor', '0.91');
    await kept();
    const devtools = await app.context.newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    void devtools.send('Page.crash').catch(() => undefined);
    await crashed;
    const again = await app.context.newPage();
    await again.goto(book);
    await showSheet(again, 'Berthing energy');
    expect(await cell(again, 'softness factor', 'value').textContent()).toContain('0.91');
    await again.close();
  });

  test('a book that the first version of the storage kept is opened, with its edits', async () => {
    const fresh = await app.context.browser()?.newContext();
    if (!fresh) throw new Error('there is no browser');
    const old = await fresh.newPage();
    // An address of the app on which the app itself does not run.
    await old.goto(new URL('icon.svg', page.url()).href);
    await keepAsFirstVersion(old, await readFile('templates/fender-energy/book.quaybook.json', 'utf8'), {
      label: 'change the subject',
      patches: [{ kind: 'set', at: ['title', 'subject'], value: 'as changed before' }],
    });
    await old.goto(page.url());
    await old.getByRole('button', { name: 'An earlier book', exact: true }).click();
    await old.getByText('as changed before').first().waitFor();
    await showSheet(old, 'Berthing energy');
    await line(old, 'softness factor').waitFor();
    await fresh.close();
  });

  test('a journal that grew long is folded into the book, and a reload still loses nothing', async () => {
    await openSmallBook(page);
    await showSheet(page, 'Berthing energy');
    await enter(page, 'softness factor', '0.8');
    for (let step = 0; step < 35; step += 1) {
      await page.keyboard.press('Control+z');
      await page.keyboard.press('Control+y');
    }
    await page.waitForFunction(async () => {
      const opened = indexedDB.open('quaybook');
      await new Promise((resolve) => opened.addEventListener('success', resolve));
      const texts = opened.result.transaction('texts').objectStore('texts').getAll();
      await new Promise((resolve) => texts.addEventListener('success', resolve));
      opened.result.close();
      return texts.result[0].through >= 64;
    });
    await enter(page, 'softness factor', '0.77');
    await kept();
    await page.reload();
    await showSheet(page, 'Berthing energy');
    expect(await cell(page, 'softness factor', 'value').textContent()).toContain('0.77');
  });

  test('full storage is said plainly, a file is offered, and what was missed is kept once there is room', async () => {
    await openSmallBook(page);
    await showSheet(page, 'Berthing energy');
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
      addEventListener('room', () => {
        IDBObjectStore.prototype.put = put;
      });
    });
    await enter(page, 'softness factor', '0.91');
    await page.getByText('not kept: the storage of this browser is full').waitFor();
    const saved = page.waitForEvent('download');
    await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
    await page.getByRole('button', { name: 'Save a file' }).click();
    expect((await saved).suggestedFilename()).toMatch(/\.quaybook\.json$/);
    await page.evaluate(() => dispatchEvent(new Event('room')));
    await enter(page, 'berth configuration factor', '0.95');
    await kept();
    await page.reload();
    await showSheet(page, 'Berthing energy');
    expect(await cell(page, 'softness factor', 'value').textContent()).toContain('0.91');
    expect(await cell(page, 'berth configuration factor', 'value').textContent()).toContain('0.95');
  });

  test('full storage that refuses at once is said plainly, and nothing else goes wrong', async () => {
    await openSmallBook(page);
    await showSheet(page, 'Berthing energy');
    await page.evaluate(() => {
      const { put, add } = IDBObjectStore.prototype;
      const refuse = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
      Object.assign(IDBObjectStore.prototype, { put: refuse, add: refuse });
      addEventListener('room', () => Object.assign(IDBObjectStore.prototype, { put, add }));
    });
    await enter(page, 'softness factor', '0.91');
    await page.getByText('not kept: the storage of this browser is full').waitFor();
    await page.evaluate(() => dispatchEvent(new Event('room')));
    await kept();
  });

  test('forbidden storage is said plainly, and a book can be worked on all the same', async () => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('', 'SecurityError');
      };
    });
    await page.reload();
    await page.getByText(/this browser does not allow it/).waitFor();
    await openSmallBook(page);
    await page.getByText(/not kept: this browser does not allow it/).waitFor();
    await page.getByRole('button', { name: 'Save a file' }).waitFor();
    await showSheet(page, 'Berthing energy');
    const before = await resultOf(page, 'normal berthing energy');
    await enter(page, 'softness factor', '0.91');
    expect(await resultOf(page, 'normal berthing energy')).not.toBe(before);
  });

  test('two tabs on one book never overwrite each other silently', async () => {
    await openSmallBook(page);
    const second = await openBeside({ beside: app.context });
    await second.page.goto(page.url());
    await second.page.getByText(/open in another tab/).waitFor();
    // Both are changed; the first, which keeps the book, is closed.
    await showSheet(page, 'Berthing energy');
    await enter(page, 'softness factor', '0.91');
    await kept();
    await showSheet(second.page, 'Berthing energy');
    await enter(second.page, 'softness factor', '0.82');
    await page.close();
    await second.page.getByRole('button', { name: 'Keep mine as a book of its own' }).click();
    await second.page.getByText(/all kept/).waitFor();
    await second.page.reload();
    await showSheet(second.page, 'Berthing energy');
    expect(await cell(second.page, 'softness factor', 'value').textContent()).toContain('0.82');
    await second.page.getByRole('button', { name: 'Quaybook' }).click();
    await second.page.getByRole('button', { name: SMALL_BOOK }).nth(1).waitFor();
    await second.page.close();
  });

  test('works without a network after the first load', async () => {
    await openPage({ keptOffline: true });
    await openSmallBook(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await app.context.setOffline(true);
    await page.reload();
    await page.locator('quay-line').first().waitFor();
    await page.getByRole('button', { name: 'Quaybook' }).click();
    await startFrom(page, 'Bollard pull and mooring lines');
    await app.context.setOffline(false);
    app.complaints.length = 0;
  });
});
