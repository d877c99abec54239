import type { Locator } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, choice, given } from '../make-book.ts';
import { axeFindings, cell, drawn, line, showSheet } from './app-page.ts';
import { app, openBeside, openPage, page, withBrowser } from './each-test.ts';
import { tell } from './on-paper.ts';
import { openBookFile } from './open-book-file.ts';

const { sheets, ...book } = bookOf({
  load: [
    blockOf(
      'p1',
      { ...given('R_w', '10 kip', 'kip'), label: 'load of the wharf' },
      { ...given('R_f', '6 kip', 'kip'), label: 'load of the fender' },
      { ...calc('twice', { formula: '2 * R_w', unit: 'kip' }), label: 'two loads' },
    ),
    {
      id: 't',
      kind: 'table',
      name: 't',
      columns: [{ id: 'z', kind: 'series', name: 'z', formula: 'SERIES(1 m; 60 m; 1 m)', unit: 'm' }],
    },
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
      choice('way', 'with a friction that is found along the whole of the shaft, layer by layer'),
      { ...calc('w', 'IF(way = "end"; 1; 2)'), label: 'rule of the pile' },
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

const told = () => page.locator('quay-change-notice').getByRole('status');
const status = () => page.locator('quay-status-bar');

test('a line that others use is deleted, and at once those are named that lost it; a broken link is linked anew', async () => {
  await cell(page, 'load of the wharf', 'label').click();
  await page.keyboard.press('Control+Shift+Backspace');
  await expect
    .poll(async () => (await told().textContent())?.replace(/\s+/g, ' '))
    .toContain('line R_w deleted; Ctrl+Z undoes it · 2 lines lost what they used:');
  expect(await axeFindings(page)).toEqual([]);
  await told().getByRole('button', { name: 'lateral load' }).click();
  const margin = line(page, 'lateral load').locator('.to-link');
  await expect.poll(() => margin.textContent()).toBe('link broken: R_w on “Loads”');
  // The others are still a press away.
  await told().getByRole('button', { name: 'two loads' }).waitFor();
  await status().getByRole('button', { name: '1 broken link' }).click();
  await page
    .getByRole('table', { name: 'Linked values' })
    .getByText('it took its value from R_w on “Loads”, which is not in the book any more')
    .waitFor();
  await showSheet(page, 'Pile');
  await page.locator('quay-side-panel').getByRole('button', { name: 'Link to another line' }).click();
  await page.getByRole('combobox', { name: 'Name or description of a line' }).waitFor();
  await page.keyboard.type('fender');
  await page.keyboard.press('Enter');
  await status().getByRole('button', { name: '1 linked' }).waitFor();
  expect(await margin.count()).toBe(0);
});

test('of a linked line whose value is stated, panel and list say where its formula leads and that another value stands', async () => {
  const panel = page.locator('quay-side-panel');
  const linked = page.getByRole('table', { name: 'Linked values' });
  const lateral = linked.getByRole('row').filter({ hasText: 'lateral load' });
  const words = async (one: Locator) => (await one.textContent())?.replace(/\s+/g, ' ');
  await showSheet(page, 'Pile');
  await cell(page, 'lateral load', 'value').click();
  await panel.getByText('It takes its value from load of the wharf, on “Loads”.').waitFor();
  await page.keyboard.type('7 kip');
  await page.keyboard.press('Enter');
  await expect.poll(() => line(page, 'lateral load').locator('.stated-value').count()).toBe(1);
  await cell(page, 'lateral load', 'value').click();
  const inPlace =
    'Its formula takes the value of load of the wharf, on “Loads”; another value is stated in its place. ' +
    'Use the computed value to have the link in force, or to take it off.';
  await panel.getByText(inPlace).waitFor();
  expect(await panel.getByText('It takes its value from').count()).toBe(0);
  expect(await panel.getByRole('button', { name: 'Take the link off' }).count()).toBe(0);
  await status().getByRole('button', { name: '1 linked' }).click();
  await expect
    .poll(() => words(lateral))
    .toMatch(/7 kip.*load of the wharf, .*on “Loads”; another value is stated in its place/);
  await lateral.getByRole('button', { name: 'lateral load' }).click();
  await panel.getByRole('button', { name: 'Use the computed value' }).click();
  await panel.getByText('It takes its value from load of the wharf, on “Loads”.').waitFor();
  await panel.getByRole('button', { name: 'Take the link off' }).waitFor();
  await status().getByRole('button', { name: '1 linked' }).click();
  await expect.poll(() => words(lateral)).toMatch(/10 kip.*on “Loads”\s*$/);
});

/** Puts a text on the clipboard and pastes it where the focus is. */
async function paste(text: string): Promise<void> {
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await page.keyboard.press('Control+v');
}

test('what is pasted while the list of a choice is open goes to the choice, or is refused; several lines become lines', async () => {
  await showSheet(page, 'Pile');
  const entry = line(page, 'soil').locator('.entry.choice');
  const list = page.getByRole('listbox');
  const open = async () => {
    await cell(page, 'soil', 'label').click();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('F2');
    await list.waitFor();
  };
  await open();
  await paste('Rock\n');
  await expect.poll(() => entry.textContent()).toContain('rock');
  expect(await list.count()).toBe(0);
  await open();
  await paste('peat');
  await page.getByText('“peat” is not one of the choices').waitFor();
  expect(await list.count()).toBe(1);
  await page.keyboard.press('Escape');
  expect(await entry.textContent()).toContain('rock');
  await open();
  await paste('draught\t12 m\nlength\t90 m');
  await expect
    .poll(async () =>
      (await page.locator('quay-line [data-field="label"]').allTextContents()).map((one) => one.trim()),
    )
    .toEqual(['lateral load', 'moment', 'soil', 'draught', 'length', 'height', '', 'rule of the pile']);
  expect(await list.count()).toBe(0);
  expect(await entry.textContent()).toContain('rock');
});

test('lines copied from the description to the value come into another book as lines, to be linked', async () => {
  await showSheet(page, 'Pile');
  await cell(page, 'lateral load', 'label').click();
  await cell(page, 'moment', 'value').click({ modifiers: ['Shift'] });
  await page.keyboard.press('Control+c');
  const other = bookOf({ s: [blockOf('p', { ...given('b', '3 m', 'm'), label: 'width' })] });
  const beside = await openBeside({ beside: app.context });
  await openBookFile(beside.page, writeBook(other));
  await cell(beside.page, 'width', 'label').click();
  await beside.page.keyboard.press('Control+v');
  await expect
    .poll(async () =>
      (await beside.page.locator('quay-line [data-field="label"]').allTextContents()).map((one) =>
        one.trim(),
      ),
    )
    .toEqual(['width', 'load of the wharf', 'lateral load', 'moment']);
  await beside.page.locator('quay-status-bar').getByRole('button', { name: '1 to be linked' }).waitFor();
  expect(await line(beside.page, 'moment').locator('.number').textContent()).toBe('30');
});

test('undo says that there is nothing to undo, and the box is gone with the next step; long words in the panel stay in it', async () => {
  await showSheet(page, 'Pile');
  await cell(page, 'height', 'value').click();
  await page.keyboard.press('Control+z');
  const note = page
    .getByRole('alert')
    .getByText('nothing to undo: it goes back to when the book was opened on this page');
  await note.waitFor();
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => note.count()).toBe(0);
  await cell(page, 'rule of the pile', 'value').click();
  await drawn(page);
  const beyond = await page
    .locator('quay-side-panel')
    .evaluate((panel) => panel.scrollWidth - panel.clientWidth);
  expect(beyond).toBe(0);
});

test('paper has the rows of a long calculated table that matter, and all of them where the book says so', async () => {
  const printed = page.locator('quay-table .printed-table tbody tr');
  const print = async () => {
    await page.emulateMedia({ media: 'print' });
    await tell(page, 'beforeprint');
  };
  await showSheet(page, 'Loads');
  await print();
  // In brief three rows, those left out, and two.
  await expect.poll(() => printed.count()).toBe(6);
  await page.getByText('rows 4 to 58 left out (55 rows)').waitFor();
  await tell(page, 'afterprint');
  // In full six rows, those left out, and three.
  await page.locator('quay-printed-book').evaluate((book) => Object.assign(book, { working: 'full' }));
  await print();
  await expect.poll(() => printed.count()).toBe(10);
  await page.getByText('rows 7 to 57 left out (51 rows)').waitFor();
  await tell(page, 'afterprint');
  await page.emulateMedia({ media: 'screen' });
  await page.getByRole('button', { name: 'Book', exact: true }).click();
  await page.getByRole('radio', { name: 'all rows' }).check();
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Keep' }).click();
  await print();
  await expect.poll(() => printed.count()).toBe(60);
});
