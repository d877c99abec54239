import { readFile } from 'node:fs/promises';
import { beforeEach, expect, test } from 'vitest';
import { axeFindings, drawn, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

const dialog = () => page.getByRole('dialog', { name: /CSV/ });
const found = () => dialog().getByRole('status').textContent();
const take = () => dialog().getByRole('button', { name: 'Take the rows' });
const notice = () => page.locator('quay-change-notice').getByRole('status').textContent();
const radio = (name: string) => dialog().getByRole('radio', { name });
const beside = () => dialog().getByRole('button', { name: /^Once taken: / });
const table = () => page.locator('quay-table').first();
const cell = (row: number, column: string) =>
  table().locator(`[data-item="r${row}"] [data-field="${column}"]`);

async function paste(text: string): Promise<void> {
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await page.keyboard.press('Control+v');
}

/** Keeps a picture of what is shown, where one is asked for. */
async function picture(name: string): Promise<void> {
  const folder = process.env.QUAYBOOK_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/${name}.png` });
}

/** The takeoff of a template, in which a mass and two volumes are stated for deck slab, pile caps and fendering. */
beforeEach(async () => {
  const text = await readFile('templates/debris-haul/book.quaybook.json', 'utf8');
  const stated = (row: number, entry: string, reason: string) => JSON.stringify([{ row, entry, reason }]);
  const said = [
    ['M', stated(3, '4700', 'weighed at gate')],
    ['V', stated(4, '450', 'as-built survey')],
    ['V_l', stated(5, '250', 'fender contractor')],
  ].reduce((book = '', [name = '', cells = '']) => {
    const from = book.indexOf('"name": "takeoff"');
    const at = book.indexOf(`"name": "${name}"`, from);
    return `${book.slice(0, at)}"stated": ${cells}, ${book.slice(at)}`;
  }, text);
  await openPage();
  await openBookFile(page, said);
  await showSheet(page, 'Quantities and loads');
  await drawn(page);
  await cell(0, 'c19').click();
});

const LIST = [
  'item\tmaterial\tfrom\tthick (in)\tV_s (cy)\tw',
  'timber fendering\ttreated timber\tvolume\t\t60\t0',
  'asphalt paving\tasphalt\twhole strip\t4\t\t5',
  'deck slab\tconcrete\twhole strip\t17\t\t0',
].join('\n');

const ALL =
  '3 stated values are deleted: V of pile caps and beams 450 cy (as-built survey), M of deck slab 4700 ST (weighed at gate) and V_l of timber fendering 250 lcy (fender contractor)';

test('in place of the rows there, stated values are named and deleted, or go with their items', async () => {
  await paste(LIST);
  await dialog().waitFor();
  await radio('in place of the rows there').check();
  // Items with stated values come again: what becomes of these is asked.
  expect(await take().isDisabled()).toBe(true);
  await picture('revised-replace-open');
  await radio('is deleted with the rows there').check();
  await expect.poll(found).toContain(ALL);
  await expect.poll(() => beside().textContent()).toContain('3 stated values are deleted');
  expect(await axeFindings(page)).toEqual([]);
  await picture('revised-replace-gone');
  await take().click();
  await expect.poll(notice).toContain(`3 rows taken; ${ALL}`);
  await picture('revised-replace-notice');
  await page.keyboard.press('Control+z');
  await cell(0, 'c19').click();
  await paste(LIST);
  await dialog().waitFor();
  await radio('in place of the rows there').check();
  await radio('goes with the item of that name').check();
  const one = '1 stated value is deleted: V of pile caps and beams 450 cy (as-built survey)';
  await expect.poll(found).toContain(one);
  await take().click();
  await expect.poll(notice).toContain(one);
  await expect.poll(() => cell(2, 'c32').textContent()).toContain('4700');
  await expect.poll(() => cell(0, 'c34').textContent()).toContain('250');
});

test('in place of the rows there, all items that go are named, also beyond the length of a short list', async () => {
  await paste('item;material;from;V_s (cy)\ncap;concrete;volume;1200\nasphalt paving;asphalt;volume;77');
  await dialog().waitFor();
  await radio('in place of the rows there').check();
  await radio('goes with the item of that name').check();
  await expect
    .poll(() => dialog().textContent())
    .toContain(
      '1 of 2 rows finds its item; new, and blank there: “cap”; gone with what they hold: “base course”, “deck slab”, “pile caps and beams” and “timber fendering”.',
    );
});

test('over the rows there, an item that moved up does not stay below, and other figures leave its reason open', async () => {
  await paste(LIST);
  await dialog().waitFor();
  await expect.poll(() => dialog().textContent()).toContain('Stated there: ');
  await radio('goes with the item of that name').check();
  await expect
    .poll(() => dialog().textContent())
    .toContain('1 row of the list there stays below: “pile caps and beams”.');
  await expect.poll(found).toContain('M of deck slab 4700 ST (weighed at gate)');
  await picture('revised-follow');
  await page.setViewportSize({ width: 1024, height: 768 });
  await picture('revised-follow-1024');
  await page.setViewportSize({ width: 1440, height: 900 });
  await take().click();
  await expect
    .poll(notice)
    .toContain(
      '1 reason is to be confirmed, for what it was given for has changed: M of deck slab 4700 ST (weighed at gate)',
    );
  // The new rows, and the one that the list does not have.
  await expect.poll(() => table().locator('.table-row:not(.head)').count()).toBe(4);
  await expect.poll(() => cell(2, 'c32').textContent()).toContain('4700');
  await page.keyboard.press('Control+z');
  await cell(0, 'c19').click();
  await paste(LIST);
  await dialog().waitFor();
  await radio('stays in its row').check();
  await expect.poll(found).toContain('“timber fendering” stands there twice now');
});

test('a total that does not add up is told in the notice too', async () => {
  await paste(`${LIST}\nTotal\t\t\t\t75\t`);
  await dialog().waitFor();
  await dialog()
    .getByRole('group', { name: 'Totals among the rows' })
    .getByRole('radio', { name: 'left out' })
    .check();
  await radio('goes with the item of that name').check();
  await expect.poll(() => beside().textContent()).toContain('1 total does not add up');
  await take().click();
  await expect.poll(notice).toContain('left out as a total, says 75');
});

test('blank rows that would take numbers away are asked for, and what becomes blank is told', async () => {
  await cell(0, 'c22').click();
  await paste('5\n\n18');
  await dialog().waitFor();
  await radio('stay: each number goes to the row where it stands').check();
  await expect.poll(found).toContain('1 entry becomes blank: thick of base course 14 in');
  await take().click();
  await expect.poll(notice).toContain('1 entry becomes blank: thick of base course 14 in');
});

test('values pasted on a calculated column are told, with what was stated before', async () => {
  await cell(1, 'c32').click();
  await paste('2100\n4650\n');
  await expect
    .poll(notice)
    .toContain('2 cells pasted; stated in M; stated there before: M of deck slab 4700 ST (weighed at gate)');
});

test('with nothing else to undo, Undo takes back what is being typed', async () => {
  const before = await cell(0, 'c22').textContent();
  await cell(0, 'c22').click();
  await page.keyboard.type('9');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => cell(0, 'c22').textContent()).toBe(before);
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
});

test('a list of one column under its heading becomes a table on a blank sheet', async () => {
  await page.getByRole('button', { name: 'Add a sheet' }).click();
  await page.keyboard.type('Takeoff');
  await page.keyboard.press('Enter');
  await page.getByText('An empty sheet.').waitFor();
  await paste('Volume (m3)\n380\n20');
  await dialog().waitFor();
  await expect.poll(found).toContain('2 rows are taken; 3 cells: 1 heading, 2 taken');
  await take().click();
  await expect.poll(() => table().locator('.table-row:not(.head)').allTextContents()).toHaveLength(2);
});

test('what is lost stands beside the button in dark colours too', async () => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await paste(LIST);
  await dialog().waitFor();
  await radio('goes: these cells become blank').check();
  await expect.poll(() => beside().textContent()).toContain('1 stated value is deleted');
  expect(await axeFindings(page)).toEqual([]);
  await picture('revised-dark');
});
