import { expect, test } from 'vitest';
import { type Book, blankBook, chunksOfCells, writeBook } from '../../src/document/index.ts';
import { axeFindings, drawn, enter, line, resultOf, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

const ROWS = 20_000;
const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 'j',
      title: 'Job',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'a', kind: 'given', name: 'a', label: 'first number', entry: '1' },
            { id: 'b', kind: 'calc', name: 'b', label: 'one more', formula: 'a + 1' },
            { id: 'f', kind: 'given', name: 'f', label: 'factor on the rows', entry: '2' },
            { id: 's', kind: 'calc', name: 's', label: 'sum of the rows', formula: 'SUM(t.n)' },
          ],
        },
        { id: 'c', kind: 'chart', form: 'line', title: 'Way to go', table: 't', x: 'k', y: ['n'] },
        {
          id: 't',
          kind: 'table',
          name: 't',
          length: ROWS,
          columns: [
            {
              id: 'k',
              kind: 'given',
              name: 'k',
              label: 'row',
              chunks: chunksOfCells(Array.from({ length: ROWS }, (_, row) => row)),
            },
            // Every row looks at every row, and no sorting helps: MAX(t.k) - k, times the factor.
            { id: 'n', kind: 'calc', name: 'n', label: 'way to go', formula: 'f * MAX(t.k - k)' },
          ],
        },
      ],
    },
    {
      key: 'q',
      title: 'Questions',
      parts: [
        {
          id: 'r',
          kind: 'rows',
          rows: [{ id: 'h', kind: 'check', name: 'h', label: 'rows are few', formula: 'j.s <= 1000' }],
        },
      ],
    },
  ],
};

/** 0 + 1 + … + (ROWS - 1), times the factor. */
const sum = (factor: number): string => `${factor * ((ROWS * (ROWS - 1)) / 2)}`;
const bar = () => page.locator('quay-status-bar').getByRole('group', { name: 'Computing' });
const press = (name: string) => bar().getByRole('button', { name }).click();
const digits = (text: string): string => text.replaceAll(/\D/g, '');
const question = () => page.locator('quay-sheet-list').locator('[data-sheet="q"]');

async function openBook(): Promise<void> {
  await openPage();
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  const chosen = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  await (await chosen).setFiles({
    name: 'long.quaybook.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeBook(book)),
  });
  await line(page, 'one more').waitFor();
}

test('a book with long work is on the page before it is done, can be stopped and changed, and comes out right', async () => {
  await openBook();
  await expect
    .poll(() => bar().textContent(), { timeout: 30_000 })
    .toMatch(/row \d+ of 20000; \d+ lines wait/);
  await press('Stop');
  await expect.poll(() => bar().textContent()).toMatch(/stopped: \d+ lines wait/);
  expect(await line(page, 'sum of the rows').textContent()).toContain('not computed yet');
  expect(await axeFindings(page)).toEqual([]);

  await enter(page, 'first number', '41');
  expect(await resultOf(page, 'one more')).toBe('42');
  expect(await bar().textContent()).toContain('stopped');
  expect(await question().textContent()).not.toContain('fail');
  await showSheet(page, 'Questions');
  await drawn(page);
  expect(await line(page, 'rows are few').textContent()).toContain('not computed yet');

  await press('Compute');
  await bar().waitFor({ state: 'detached', timeout: 240_000 });
  await drawn(page);
  expect(await question().textContent()).toContain('1 fails');
  expect(await line(page, 'rows are few').textContent()).not.toContain('not computed yet');
  await showSheet(page, 'Job');
  await drawn(page);
  expect(digits(await resultOf(page, 'sum of the rows'))).toBe(sum(2));

  // What was computed is out of date from the edit on, wherever it is shown.
  await enter(page, 'factor on the rows', '3');
  await bar().waitFor();
  await press('Stop');
  await drawn(page);
  expect(await line(page, 'sum of the rows').textContent()).toContain('not computed yet');
  expect(await line(page, 'sum of the rows').textContent()).not.toContain(sum(2));
  expect(await question().textContent()).not.toContain('fail');
}, 400_000);
