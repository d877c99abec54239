import { beforeEach, expect, test } from 'vitest';
import { axeFindings, chooseFromMenu, drawn, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Quantities and loads');
});

const ROWS = 50_000;
/** Slabs with their areas in whole square metres, 1, 2, … 9, 1, 2, …, which add up to a number that can be told. */
const text = `item,area (m2)\n${Array.from({ length: ROWS }, (_, row) => `slab ${row},${(row % 9) + 1}`).join('\n')}\n`;

const dialog = () => page.getByRole('dialog', { name: /CSV/ });
const status = () => dialog().getByRole('status');
const table = () => page.locator('quay-table').first();

async function openDialog(): Promise<void> {
  await table().locator('.part-title .cell.title').first().click();
  await chooseFromMenu(page, 'Paste or open CSV');
  await dialog().waitFor();
}

const takeFile = () =>
  dialog()
    .locator('input[type=file]')
    .setInputFiles({ name: 'slabs.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

/** Counts the keys that the page answers while the dialog says that it reads. */
async function keysWhileReading(): Promise<number> {
  await page.evaluate(() => {
    const counted = window as never as { keys: number };
    counted.keys = 0;
    document.addEventListener('keydown', () => {
      const dialogs = document.querySelector('quay-app')?.shadowRoot?.querySelector('quay-table-rows');
      const words = dialogs?.shadowRoot?.querySelector('.found')?.textContent ?? '';
      if (words.includes('Reading')) counted.keys += 1;
    });
  });
  await status().getByText('Reading').waitFor();
  while ((await status().getByText('Reading').count()) > 0) await page.keyboard.press('Shift');
  return page.evaluate(() => (window as never as { keys: number }).keys);
}

test('a long file is read beside the page, which answers keys meanwhile, and is shown by its beginning', async () => {
  await openDialog();
  await takeFile();
  expect(await keysWhileReading()).toBeGreaterThan(0);
  expect(await status().textContent()).toContain(`${ROWS} rows are taken`);
  const field = dialog().getByLabel(/^Rows: the beginning of a text of/);
  expect((await field.inputValue()).length).toBeLessThan(3000);
  expect(await field.inputValue()).toMatch(/^item,area \(m2\)\nslab 0,1\nslab 1,2\n/);
  expect(await axeFindings(page)).toEqual([]);
  await dialog().getByRole('button', { name: 'Take the rows' }).click();
  await dialog().waitFor({ state: 'hidden' });
  await drawn(page);
  expect(await table().locator('.table-foot').textContent()).toMatch(/50\s000 rows/);
}, 240_000);

test('reading a long file can be stopped, and so can be a text that was pasted', async () => {
  await openDialog();
  await takeFile();
  await status().getByText('Reading').waitFor();
  await page.keyboard.press('Escape');
  await dialog().waitFor({ state: 'hidden' });

  await page.evaluate((words) => navigator.clipboard.writeText(words), text);
  await table().locator('[data-item="r0"] [data-field]').first().click();
  await page.keyboard.press('Control+v');
  expect(await keysWhileReading()).toBeGreaterThan(0);
  expect(await status().textContent()).toContain(`${ROWS} rows are taken`);
  await dialog().getByRole('button', { name: 'Let go of this text' }).click();
  await dialog().getByText('The first line names the columns').waitFor();
  expect(await dialog().getByLabel('Rows', { exact: true }).inputValue()).toBe('');
  expect(await dialog().getByRole('button', { name: 'Take the rows' }).isDisabled()).toBe(true);
}, 240_000);

test('the columns of a line that parts into thousands are shown a hundred at a time', async () => {
  await openDialog();
  const prose = Array.from({ length: 3000 }, (_, at) => `word ${at}`).join('; ');
  await page.evaluate((words) => navigator.clipboard.writeText(words), prose);
  await dialog().getByRole('textbox', { name: 'Rows' }).focus();
  await page.keyboard.press('Control+v');
  const columns = dialog().locator('.mapping tbody tr');
  await expect.poll(() => columns.count()).toBe(100);
  expect(await axeFindings(page)).toEqual([]);
  await dialog().getByRole('button', { name: 'Show 100 more of the 3000 columns' }).click();
  await expect.poll(() => columns.count()).toBe(200);
  await dialog().getByRole('button', { name: 'Leave out the 3000 that go nowhere yet' }).click();
  await status().getByText('3000 left out').waitFor();
});
