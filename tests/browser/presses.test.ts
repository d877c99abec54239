import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, given, numbers, tableOf } from '../make-book.ts';
import { cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

const book = bookOf({
  s: [
    blockOf(
      'p',
      { ...given('q', '4 kN/m', 'kN/m'), label: 'line load' },
      { ...calc('N', { formula: 'q * 2 m', unit: 'kN' }), label: 'load', reference: 'statics' },
    ),
    { ...tableOf('t', 2, numbers('a', 'm', [1, 2]), numbers('b', 'm', [3, 4])), title: 'Lengths' },
  ],
});

withBrowser();
beforeEach(async () => {
  await openPage();
  await openBookFile(page, writeBook(book));
  await drawn(page);
});

test('a press on words that are drawn anew by what it enters chooses their cell', async () => {
  await cell(page, 'load', 'value').click();
  await page.keyboard.type('9');
  // The margin says "stated" in place of the reference once the value is entered.
  const reference = cell(page, 'load', 'reference');
  await reference.getByText('statics').click();
  await expect.poll(() => reference.textContent()).toContain('stated');
  await expect.poll(() => reference.getAttribute('aria-selected')).toBe('true');
});

test('what Delete empties is shown as selected, the title of a table too', async () => {
  const title = page.locator('quay-table [data-field="title"]');
  const last = page.locator('quay-table [data-item="r0"] [data-field="b"]');
  const [from, to] = [await title.boundingBox(), await last.boundingBox()];
  if (!from || !to) throw new Error('no table');
  await page.mouse.move(from.x + 20, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(to.x + 8, to.y + 8, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => last.getAttribute('aria-selected')).toBe('true');
  expect(await title.getAttribute('aria-selected')).toBe('true');
});
