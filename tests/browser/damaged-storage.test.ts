import { readFile } from 'node:fs/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import { cell, enter, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openSmallBook } from './small-book.ts';
import { changeStored } from './stored-books.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await openSmallBook(page);
  await showSheet(page, 'Berthing energy');
  for (const entry of ['0.91', '0.92', '0.93', '0.94']) await enter(page, 'softness factor', entry);
  await kept().waitFor();
});

const kept = () => page.locator('quay-top-bar').getByText(/all kept/);

async function expectSoftness(entry: string): Promise<void> {
  await showSheet(page, 'Berthing energy');
  expect(await cell(page, 'softness factor', 'value').textContent()).toContain(entry);
}

/** What was done to the storage, what the page says of it, and the last entry before it. */
const damages: readonly (readonly [
  what: string,
  said: RegExp,
  left: string,
  damage: Parameters<typeof changeStored>[1],
])[] = [
  [
    'an edit of the journal that is gone',
    /Edit 3 of this book cannot be read: it is not there\. It and the 1 after it are lost here/,
    '0.92',
    ([, , journal]) => {
      journal.openCursor().onsuccess = ({ target }) => {
        const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
        if (cursor?.value.number === 3) cursor.delete();
        cursor?.continue();
      };
    },
  ],
  [
    'a journal that lost its end',
    /Edit 4 of this book cannot be read: it is not there\. It is lost here/,
    '0.93',
    ([, , journal]) => {
      journal.openCursor().onsuccess = ({ target }) => {
        const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
        if (cursor?.value.number === 4) cursor.delete();
        cursor?.continue();
      };
    },
  ],
  [
    'an edit that does not apply',
    /Edit 2 of this book cannot be read: .*\. It and the 2 after it are lost here/,
    '0.91',
    ([, , journal]) => {
      journal.openCursor().onsuccess = ({ target }) => {
        const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
        if (cursor?.value.number === 2)
          cursor.update({
            ...cursor.value,
            edit: { label: '', patches: [{ kind: 'remove', at: ['no', 'where'] }] },
          });
        cursor?.continue();
      };
    },
  ],
  [
    'an entry that is no edit',
    /Edit 2 of this book cannot be read: it is not an edit/,
    '0.91',
    ([, , journal]) => {
      journal.openCursor().onsuccess = ({ target }) => {
        const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
        if (cursor?.value.number === 2) cursor.update({ ...cursor.value, edit: 'x' });
        cursor?.continue();
      };
    },
  ],
];

describe.each(damages)('%s', (_, said, left, damage) => {
  test('leaves the book as it was before; what is stored stays until the person goes on', async () => {
    await changeStored(page, damage);
    await page.reload();
    await page.getByText(said).waitFor();
    await expectSoftness(left);
    expect(await kept().count()).toBe(0);
    // Entered, and not kept: what is stored is not written over.
    await enter(page, 'berth configuration factor', '0.95');
    expect(await kept().count()).toBe(0);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save what is stored as a file' }).click();
    const raw = await readFile(await (await download).path(), 'utf8');
    expect(JSON.parse(raw)).toMatchObject({ snapshot: { through: 0 }, metadata: { sequence: 4 } });
    expect(raw).toContain('"0.91"');
    await page.getByRole('button', { name: 'Go on from here' }).click();
    await kept().waitFor();
    await page.reload();
    await kept().waitFor();
    await expectSoftness(left);
    expect(await cell(page, 'berth configuration factor', 'value').textContent()).toContain('0.95');
  });
});

test('a snapshot that cannot be read refuses the book, and what is stored can be saved as it is', async () => {
  await changeStored(page, ([, texts]) => {
    texts.openCursor().onsuccess = ({ target }) => {
      const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
      cursor?.update({ ...cursor.value, text: '{"format": "quay' });
    };
  });
  await page.reload();
  await page.getByText(/the file is not JSON/).waitFor();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save what is stored as a file' }).click();
  expect(await readFile(await (await download).path(), 'utf8')).toContain('0.94');
});
