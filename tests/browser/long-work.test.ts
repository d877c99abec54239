import { expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { axeFindings, drawn, enter, line, resultOf, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { longBook, ROWS } from './long-book.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

/** 0 + 1 + … + (ROWS - 1), times the factor, over 100: from 100 million on it would stand as a power of ten. */
const sum = (factor: number): string => `${(factor * ((ROWS * (ROWS - 1)) / 2)) / 100}`;
const bar = () => page.locator('quay-status-bar').getByRole('group', { name: 'Computing' });
const press = (name: string) => bar().getByRole('button', { name }).click();
const digits = (text: string): string => text.replaceAll(/\D/g, '');
const question = () => page.locator('quay-sheet-list').locator('[data-sheet="q"]');

test('a book with long work is on the page before it is done, can be stopped and changed, and comes out right', async () => {
  await openPage();
  await openBookFile(page, writeBook(longBook));
  await line(page, 'one more').waitFor();
  await expect
    .poll(() => bar().textContent(), { timeout: 30_000 })
    .toMatch(/row \d+ of 20000; \d+ lines wait/);
  await press('Stop');
  await expect.poll(() => bar().textContent()).toMatch(/stopped: \d+ lines wait/);
  expect(await line(page, 'sum of the rows').textContent()).toContain('not computed yet');
  expect(await axeFindings(page)).toEqual([]);

  // F8 tells what there is to mend, as far as it is known.
  await page.keyboard.press('F8');
  await page.getByText(/^\s*No problem so far; \d+ lines are not computed yet\.\s*$/).waitFor();
  await showSheet(page, 'Job');
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
  expect(await question().textContent()).toContain('1 check fails');
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
