import { beforeEach, describe, expect, test } from 'vitest';
import { drawn, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { toPaper } from './on-paper.ts';

withBrowser();

const table = () => page.locator('quay-table').first();
const rowAt = (row: number) => table().locator(`[data-item="r${row}"]`);
const number = (row: number) => rowAt(row).locator('.row-number');
const at = (row: number, column: number) => rowAt(row).locator('[data-field]').nth(column);
const selected = () => table().locator('.table-row:not(.head) [aria-selected="true"]').count();
const items = async () => {
  await drawn(page);
  return table().locator('.table-row:not(.head) [data-field]:nth-child(2)').allTextContents();
};

beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Quantities and loads');
});

describe('the numbers of rows', () => {
  test('select rows by click, Shift and drag; they move together, and undo is one step', async () => {
    const columns = await rowAt(0).locator('[data-field]').count();
    const before = await items();
    await number(1).click();
    expect(await selected()).toBe(columns);
    await number(2).click({ modifiers: ['Shift'] });
    expect(await selected()).toBe(2 * columns);
    await page.keyboard.press('Alt+ArrowUp');
    expect(await items()).toEqual([before[1], before[2], before[0], ...before.slice(3)]);
    // They stay selected, and go back.
    expect(await selected()).toBe(2 * columns);
    await page.keyboard.press('Control+z');
    expect(await items()).toEqual(before);

    await number(0).hover();
    await page.mouse.down();
    await number(1).hover();
    await page.mouse.up();
    expect(await selected()).toBe(2 * columns);
    await page.keyboard.press('Delete');
    expect((await items()).slice(0, 2).map((text) => text.trim())).toEqual(['', '']);
    await page.keyboard.press('Control+z');
    expect(await items()).toEqual(before);
  });

  test('a row goes by its number and the clipboard over another one', async () => {
    const before = await items();
    await number(0).click();
    await page.keyboard.press('Control+c');
    await number(2).click();
    await page.keyboard.press('Control+v');
    await expect.poll(items).toEqual([before[0], before[1], before[0], ...before.slice(3)]);
  });
});

test('a new blank row is told in one place, with what waits for it', async () => {
  const foot = table().locator('.table-foot');
  expect(await foot.textContent()).not.toContain('blank');
  await foot.getByRole('button', { name: 'add a row' }).click();
  const blank = foot.getByRole('button', { name: 'row 6 is blank' });
  await blank.waitFor();
  // On one line, not a letter below the other.
  expect((await blank.boundingBox())?.height).toBeLessThan(40);
  await page.locator('quay-status-bar').getByText('1 problem', { exact: true }).waitFor();
  expect(await page.locator('.sentence.problem').count()).toBe(0);
  expect(await page.locator('.sentence.waits').filter({ hasText: 'row 6 of' }).count()).toBeGreaterThan(0);
  expect((await foot.textContent())?.replace(/\s+/g, ' ')).toMatch(
    /row 6 is blank ?: what is computed from the table waits until it is filled in or deleted/,
  );
  await page.keyboard.press('Control+z');
  await drawn(page);
  expect(await foot.textContent()).not.toContain('blank');
});

test('Enter behind a run of Tab keys goes back to the column where it began, a row down', async () => {
  await at(0, 2).click();
  await page.keyboard.type('30');
  await page.keyboard.press('Tab');
  await page.keyboard.type('4');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9');
  await page.keyboard.press('Enter');
  await drawn(page);
  expect(await at(1, 2).evaluate((cell) => cell.matches(':focus'))).toBe(true);
  // A run that began elsewhere is another one.
  await at(0, 3).click();
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await drawn(page);
  expect(await at(1, 3).evaluate((cell) => cell.matches(':focus'))).toBe(true);
});

test('a total says what the rows of its column add to as they are printed, on paper too', async () => {
  const digits = (text: string | null) => Number((text ?? '').replaceAll(/[^\d.]/g, ''));
  const printed = async (field: string) => {
    await drawn(page);
    const cells = await table().locator(`.table-row:not(.head) [data-field="${field}"]`).allTextContents();
    return Number(cells.reduce((sum, cell) => sum + digits(cell), 0).toFixed(6));
  };
  const total = page.locator('quay-line[data-item="r17"]');
  const note = total.locator('.sentence');
  const added = await printed('c31');
  expect(digits(await total.locator('.number').last().textContent())).not.toBe(added);
  expect(await note.textContent()).toMatch(/^rounded; the rows as they are rounded add to/);
  expect(digits(await note.textContent())).toBe(added);
  // In one line, or two where it is narrow.
  const lines = async () => (await note.boundingBox())?.height ?? 0;
  expect(await lines()).toBeLessThan(45);
  const onPaper = (await toPaper(page)).locator('quay-line[data-item="r17"] .sentence');
  await expect.poll(() => onPaper.isVisible()).toBe(true);
  expect((await onPaper.boundingBox())?.height).toBeLessThan(45);
});
