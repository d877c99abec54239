import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, cell, chooseFromMenu, focusedWords, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Berthing energy and fenders');
});

const sheets = () => page.locator('quay-sheet-list');
const problems = () => page.locator('quay-status-bar').getByText(/\d+ problems?/);

const focused = () => focusedWords(page);
const choose = (words: string) => chooseFromMenu(page, words);

describe('the overview', () => {
  test('has every check with its verdict in words, and leads to the line', async () => {
    await page.keyboard.press('Control+PageUp');
    const overview = page.locator('quay-overview');
    await overview.getByRole('heading', { name: 'All checks' }).waitFor();
    const counted = await page
      .locator('quay-status-bar')
      .getByText(/checks/)
      .textContent();
    const rows = overview.getByRole('table').first().locator('tbody tr');
    // 19 checks hold, 2 do not apply
    const numbers = (counted ?? '').match(/\d+/g)?.map(Number) ?? [];
    expect(numbers.reduce((sum, one) => sum + one, 0)).toBe(await rows.count());
    for (const words of await rows.locator('.verdict').allTextContents())
      expect(words.trim()).toMatch(/^(holds|fails|no value|does not apply)$/);
    expect(await axeFindings(page)).toEqual([]);
    const first = rows.first().getByRole('button');
    const label = ((await first.textContent()) ?? '').trim();
    await first.click();
    await line(page, label).waitFor();
    await expect.poll(() => page.locator('quay-side-panel .label').textContent()).toBe(label);
  });

  test('a bar leads to its check', async () => {
    await page.keyboard.press('Control+PageUp');
    const bar = page.locator('quay-overview [data-check]').nth(2);
    const label = (
      (await page.locator('quay-overview tbody tr').nth(2).getByRole('button').textContent()) ?? ''
    ).trim();
    await bar.click();
    await line(page, label).waitFor();
    await expect.poll(() => page.locator('quay-side-panel .label').textContent()).toBe(label);
  });

  test('lists a problem with its place as soon as there is one', async () => {
    await showSheet(page, 'Berthing energy');
    await cell(page, 'softness factor', 'value').click();
    await page.keyboard.type('0.9 kN');
    await page.keyboard.press('Enter');
    await sheets().getByRole('button', { name: 'All checks' }).click();
    const found = page.locator('quay-overview').getByRole('table', { name: 'Problems' });
    await found.getByRole('button').first().click();
    await line(page, 'softness factor').waitFor();
  });
});

describe('the sheets of a book', () => {
  test('a sheet is renamed with its key by keyboard, and the formulas of other sheets follow', async () => {
    const before = await problems().textContent();
    await sheets().getByRole('button', { name: 'Berthing energy' }).focus();
    await choose('Title, key and group');
    const key = page.getByRole('textbox', { name: /^Key/ });
    await key.fill('berth_x');
    await page.keyboard.press('Enter');
    await key.waitFor({ state: 'hidden' });
    expect(await focused()).toContain('Berthing energy');
    await expect.poll(() => problems().textContent()).toBe(before);
  });

  test('a sheet is added, duplicated, moved and removed, and undo brings it back', async () => {
    await sheets().getByRole('button', { name: 'Add a sheet' }).click();
    await page.keyboard.type('Rail beam');
    await page.keyboard.press('Enter');
    await page.locator('quay-sheet').getByRole('heading', { name: 'Rail beam' }).waitFor();
    const entry = sheets().getByRole('button', { name: 'Rail beam', exact: true });
    await entry.focus();
    // First it joins the group above, then it goes up in it.
    await choose('Move up');
    await expect.poll(() => focused()).toBe('Rail beam');
    await page.getByText(/the sheet “Rail beam” moved into the group “[^”]+”; Ctrl\+Z undoes it/).waitFor();
    await choose('Move up');
    const titles = async () =>
      (await sheets().locator('[data-sheet]').allTextContents()).map((t) => t.trim());
    await expect.poll(async () => (await titles()).at(-1)).not.toBe('Rail beam');
    expect(await focused()).toBe('Rail beam');
    await choose('Duplicate');
    await page.locator('quay-sheet').getByRole('heading', { name: 'Rail beam, copy' }).waitFor();
    await entry.click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Remove' }).click();
    await page.getByText('No other sheet refers to it.').waitFor();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect.poll(() => entry.count()).toBe(0);
    await page.locator('quay-top-bar').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => entry.count()).toBe(1);
  });

  test('the only sheet of a group keeps its heading when it moves, and undo brings it back', async () => {
    await sheets().getByRole('button', { name: 'Add a sheet' }).click();
    await page.keyboard.type('Rail beam');
    await page.keyboard.press('Enter');
    await page.locator('quay-sheet').getByRole('heading', { name: 'Rail beam' }).waitFor();
    await sheets().getByRole('button', { name: 'Rail beam', exact: true }).focus();
    await choose('Title, key and group');
    await page.getByRole('combobox', { name: 'Group' }).fill('Rails');
    await page.keyboard.press('Enter');
    const order = () => sheets().locator('h2, [data-sheet] span:first-child').allTextContents();
    await expect.poll(order).toContain('Rails');
    const before = await order();
    expect(before.slice(-2)).toEqual(['Rails', 'Rail beam']);
    await sheets().getByRole('button', { name: 'Rail beam', exact: true }).focus();
    await choose('Move up');
    await expect.poll(async () => (await order()).at(-1)).not.toBe('Rail beam');
    const after = await order();
    expect(after.indexOf('Rail beam')).toBe(after.indexOf('Rails') + 1);
    expect([...after].sort()).toEqual([...before].sort());
    await page.locator('quay-top-bar').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(order).toEqual(before);
  });

  test('what refers to a sheet is said before it goes', async () => {
    await sheets().getByRole('button', { name: 'Berthing energy' }).click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Remove' }).click();
    const dialog = page.getByRole('dialog', { name: /^Remove/ });
    await dialog.getByText('will have no value').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => focused()).toContain('Berthing energy');
  });
});

describe('the tables of a sheet', () => {
  const heads = () => page.locator('quay-table').getByRole('columnheader');

  beforeEach(async () => {
    await sheets().getByRole('button', { name: 'Add a sheet' }).click();
    await page.keyboard.type('Soil');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'A table' }).click();
    await heads().first().waitFor();
  });

  test('a column is inserted, named, given a unit, moved and deleted by keyboard', async () => {
    await heads().first().click();
    await choose('Insert a given column');
    await expect.poll(() => heads().count()).toBe(3);
    await choose('Name, type and unit');
    await page.getByRole('textbox', { name: 'Name in formulas' }).fill('thickness');
    await page.getByRole('textbox', { name: 'Heading' }).fill('thickness of layer');
    await page.getByRole('textbox', { name: 'Unit' }).fill('ft');
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await expect.poll(() => heads().nth(1).textContent()).toContain('thickness of layer');
    await expect.poll(() => focused()).toContain('thickness of layer');
    await choose('Move right');
    await expect.poll(() => heads().nth(2).textContent()).toContain('thickness of layer');
    await choose('Delete the column');
    await expect.poll(() => heads().count()).toBe(2);
  });

  test('rows come from CSV with a unit in the header; bad rows are pointed out and none is lost', async () => {
    await heads().nth(1).click();
    await choose('Name, type and unit');
    await page.getByRole('textbox', { name: 'Unit' }).fill('ft');
    await page.keyboard.press('Enter');
    await expect.poll(() => heads().nth(1).textContent()).toContain('ft');
    await page.locator('quay-table .part-title .cell.title').click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Paste or open CSV' }).click();
    const dialog = page.getByRole('dialog', { name: /CSV/ });
    await dialog.locator('input[type=file]').setInputFiles({
      name: 'layers.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('item,quantity (m)\nclay,3.5\nsand\ngravel,1,250\n'),
    });
    const take = dialog.getByRole('button', { name: 'Take the rows' });
    const found = dialog.getByRole('status');
    await found.getByText(/^line 4 has 3 cells for 2 columns.*needs quotation marks: "1,250"/).waitFor();
    await found.getByText(/^line 3 has 1 of 2 cells/).waitFor();
    expect(await take.isDisabled()).toBe(true);
    const text = dialog.getByRole('textbox', { name: 'Rows' });
    await text.fill('item,quantity (m3)\nclay,3.5\n');
    await found
      .getByText(/“quantity \(m3\)” states “m3”, a unit of another kind than the column .* takes \(ft\)/)
      .waitFor();
    expect(await take.isDisabled()).toBe(true);
    await text.fill('item,quantity (m),Remarks\nclay,3.5,wet\nsand,,\ngravel,four,dry\n');
    await found.getByText(/^the table has no column called “Remarks”; choose where it goes/).waitFor();
    expect(await take.isDisabled()).toBe(true);
    await dialog.getByRole('combobox', { name: '“Remarks” goes to' }).selectOption('left out');
    // A word alone could be a note below the table.
    await found.getByText(/^line 3 has one cell of words and nothing else: “sand”/).waitFor();
    await dialog.getByRole('radio', { name: 'rows like the others' }).check();
    await found.getByText('“Remarks” of the text stays out').waitFor();
    await found.getByText('3 rows are taken; 10 cells: 2 headings, 4 taken, 1 marked, 3 left out.').waitFor();
    await found.getByText(/^line 4, column B “quantity \(m\)”: “four” is not a number/).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await take.click();
    await page.locator('quay-change-notice').getByText('3 rows taken').waitFor();
    const rows = page.locator('quay-table .table-row:not(.head)');
    await expect.poll(() => rows.count()).toBe(3);
    expect(await rows.first().textContent()).toContain('3.5 m');
    await page.locator('quay-top-bar').getByText('US', { exact: true }).click();
    await expect.poll(() => rows.first().textContent()).toContain('11.48');
  });

  test('the menu stays open once a right button held for long is let go', async () => {
    const paste = page.getByRole('menuitem', { name: 'Paste or open CSV' });
    await page.locator('quay-table .part-title .cell.title').hover();
    await page.mouse.down({ button: 'right' });
    await page.waitForTimeout(300);
    await page.mouse.up({ button: 'right' });
    await paste.waitFor();
    await page.waitForTimeout(300);
    expect(await paste.isVisible()).toBe(true);
  });

  test('a table is renamed from its menu', async () => {
    await page.locator('quay-table .part-title .cell.title').click();
    await choose('Name and title');
    await page.getByRole('textbox', { name: 'Name in formulas' }).fill('layers');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('quay-table .part-title').textContent()).toContain('layers');
  });
});
