import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { cell, enter, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openSmallBook, SMALL_BOOK } from './small-book.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

const kept = (on: Page) => on.locator('quay-top-bar').getByText(/all kept/);

/** Loads the page anew and stays where it asks; gives whether it asked. */
async function isAskedOnReload(): Promise<boolean> {
  const asked = page.waitForEvent('dialog', { timeout: 10_000 });
  await page.evaluate(() => setTimeout(() => location.reload()));
  const dialog = await asked.catch(() => undefined);
  await dialog?.dismiss();
  return dialog?.type() === 'beforeunload';
}

/** Drops a book's file on the start page. */
async function dropFile(text: string, name: string): Promise<void> {
  const data = await page.evaluateHandle(
    ({ content, called }) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], called));
      return transfer;
    },
    { content: text, called: name },
  );
  await page.dispatchEvent('quay-start-page main', 'drop', { dataTransfer: data });
}

/** What a browser refuses, and what the page then says; each runs before the page does. */
const refusals: readonly (readonly [what: string, said: RegExp, refuse: () => void])[] = [
  [
    'full storage',
    /the storage of this browser is full/,
    () => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
    },
  ],
  [
    'no storage at all, and no more than plain http has',
    /this browser does not allow it/,
    () => {
      Reflect.deleteProperty(Navigator.prototype, 'locks');
      Reflect.deleteProperty(Navigator.prototype, 'storage');
      Reflect.deleteProperty(Crypto.prototype, 'randomUUID');
      Object.defineProperty(globalThis, 'indexedDB', { value: undefined });
      Object.defineProperty(globalThis, 'localStorage', { value: undefined });
    },
  ],
];

describe.each(refusals)('with %s', (_, said, refuse) => {
  test('a new book, a template and a dropped file are worked on in the tab, listed, and not left without a word', async () => {
    await page.addInitScript(refuse);
    await page.reload();
    const asLeft = async () => {
      await page.getByRole('button', { name: 'Quaybook' }).click();
      await page.getByRole('heading', { name: 'Recent books' }).waitFor();
    };
    const only = page.getByText(/^only in this tab: /);

    await page.getByRole('button', { name: 'New book' }).click();
    await page.locator('quay-top-bar').getByText(said).waitFor();
    await page.getByRole('button', { name: 'Save a file' }).waitFor();
    await asLeft();
    await only.first().waitFor();

    await openSmallBook(page);
    await page.locator('quay-top-bar').getByText(said).waitFor();
    await showSheet(page, 'Berthing energy');
    await enter(page, 'softness factor', '0.91');
    expect(await isAskedOnReload()).toBe(true);
    await asLeft();
    await expect.poll(() => only.count()).toBe(2);
    expect(await only.first().textContent()).toMatch(said);
    await page.getByRole('button', { name: SMALL_BOOK }).first().click();
    await showSheet(page, 'Berthing energy');
    expect(await cell(page, 'softness factor', 'value').textContent()).toContain('0.91');
    await asLeft();

    await dropFile(await readFile('templates/fender-energy/book.quaybook.json', 'utf8'), 'b.quaybook.json');
    await page.locator('quay-line').first().waitFor();
    await asLeft();
    await expect.poll(() => only.count()).toBe(3);
    expect(await isAskedOnReload()).toBe(true);
  });

  test('a book that is saved as a file is left without a question', async () => {
    await page.addInitScript(refuse);
    await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
    await page.reload();
    await page.getByRole('button', { name: 'New book' }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a file' }).click();
    await download;
    await page.getByText(/^saved to .*\.quaybook\.json$/).waitFor();
    const loaded = page.waitForEvent('load');
    await page.evaluate(() => setTimeout(() => location.reload()));
    await loaded;
    await page
      .getByText(/this book is not kept in this browser|cannot be opened from the storage of this browser/)
      .waitFor();
  });
});

test('a book made while the storage is full is kept once there is room', async () => {
  await page.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('', 'QuotaExceededError');
    };
    addEventListener('room', () => {
      IDBObjectStore.prototype.put = put;
    });
  });
  await page.reload();
  await openSmallBook(page);
  await page
    .locator('quay-top-bar')
    .getByText(/is full/)
    .waitFor();
  await page.evaluate(() => dispatchEvent(new Event('room')));
  await showSheet(page, 'Berthing energy');
  await enter(page, 'softness factor', '0.91');
  await kept(page).waitFor();
  await page.evaluate(() => setTimeout(() => location.reload()));
  await showSheet(page, 'Berthing energy');
  expect(await cell(page, 'softness factor', 'value').textContent()).toContain('0.91');
});

test('a file that is too large or in another encoding is refused with its name, beside one that opens', async () => {
  await page.evaluate(() => {
    Object.defineProperty(File.prototype, 'size', {
      get(this: File) {
        return this.name === 'large.json' ? 600_000_000 : 2;
      },
    });
  });
  await dropFile('{}', 'large.json');
  await page.getByText('large.json: the file has 600 MB, and at most 300 MB are read').waitFor();
  const book = await readFile('templates/fender-energy/book.quaybook.json', 'utf8');
  const data = await page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([new Uint8Array([0x4b, 0xfc, 0x73])], 'latin.json'));
    transfer.items.add(new File([content], 'book.json'));
    return transfer;
  }, book);
  await page.dispatchEvent('quay-start-page main', 'drop', { dataTransfer: data });
  await page.getByText('latin.json: the file is not UTF-8 text').waitFor();
  await page.getByRole('button', { name: /^Remove/ }).waitFor();
});
