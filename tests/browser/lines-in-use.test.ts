import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, choice, given } from '../make-book.ts';
import { axeFindings, cell, drawn, line, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

const { sheets, ...book } = bookOf({
  load: [
    blockOf(
      'p1',
      { ...given('R_w', '10 kip', 'kip'), label: 'load of the wharf' },
      { ...given('R_f', '6 kip', 'kip'), label: 'load of the fender' },
      { ...calc('twice', { formula: '2 * R_w', unit: 'kip' }), label: 'two loads' },
    ),
  ],
  pile: [
    blockOf(
      'p2',
      {
        ...calc('H', { formula: 'load.R_w', unit: 'kip' }),
        link: { kind: 'given', entry: '3 kip' },
        label: 'lateral load',
      },
      { ...calc('M', { formula: 'H * 3 ft', unit: 'kip-ft' }), label: 'moment' },
      { ...choice('soil', 'clay', 'sand', 'rock'), label: 'soil' },
      { ...given('h', '5 m', 'm'), label: 'height' },
    ),
  ],
});
const titled = sheets.map((sheet) => ({ ...sheet, title: sheet.key === 'load' ? 'Loads' : 'Pile' }));

withBrowser();
beforeEach(async () => {
  await openPage();
  await openBookFile(page, writeBook({ ...book, sheets: titled }));
  await drawn(page);
});

const told = () => page.locator('quay-told').getByRole('status');
const status = () => page.locator('quay-status-bar');

test('a line that others use is deleted, and at once those are named that lost it; a broken link is linked anew', async () => {
  await cell(page, 'load of the wharf', 'label').click();
  await page.keyboard.press('Control+Shift+Backspace');
  await expect
    .poll(async () => (await told().textContent())?.replace(/\s+/g, ' '))
    .toContain('line R_w deleted; Ctrl+Z undoes it 2 lines lost what they used:');
  expect(await axeFindings(page)).toEqual([]);
  await told().getByRole('button', { name: 'lateral load' }).click();
  const margin = line(page, 'lateral load').locator('.to-link');
  await expect.poll(() => margin.textContent()).toBe('link broken: load.R_w');
  // The others are still a press away.
  await told().getByRole('button', { name: 'two loads' }).waitFor();
  await status().getByRole('button', { name: '1 broken link' }).click();
  await page
    .getByRole('table', { name: 'Linked values' })
    .getByText('it took its value from load.R_w, which is not in the book any more')
    .waitFor();
  await showSheet(page, 'Pile');
  await page.locator('quay-side-panel').getByRole('button', { name: 'Link to another line' }).click();
  await page.getByRole('combobox', { name: 'Name or description of a line' }).waitFor();
  await page.keyboard.type('fender');
  await page.keyboard.press('Enter');
  await status().getByRole('button', { name: '1 linked' }).waitFor();
  expect(await margin.count()).toBe(0);
});
