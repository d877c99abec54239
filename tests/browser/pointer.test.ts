import type { Locator } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { drawn, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Axial capacity of a waterside crane pile');
});

const words = () => page.locator('quay-words').first().locator('[data-field="text"]');
/** A description in sight below the paragraphs. */
const label = (at: number) => page.locator('quay-line').nth(at).locator('[data-field="label"]');
const selected = () => page.locator('quay-sheet [data-field][aria-selected="true"]');

/** Has a paragraph typed that is longer than it was, and gives the middle of a cell below as it stands then. */
async function typeParagraph(below: Locator): Promise<{ x: number; y: number }> {
  await words().click();
  await page.keyboard.press('F2');
  await page.locator('textarea').waitFor();
  for (let at = 0; at < 4; at += 1) await page.keyboard.press('Shift+Enter');
  await page.keyboard.type('The last line.');
  await drawn(page);
  const box = await below.boundingBox();
  if (!box || box.y > 860) throw new Error('the cell is out of sight');
  return { x: box.x + 10, y: box.y + box.height / 2 };
}

const isChosen = (cell: Locator) => cell.getAttribute('aria-selected');

test('a double click opens the cell it was aimed at, though its first press moves the page', async () => {
  const cell = label(1);
  const { x, y } = await typeParagraph(cell);
  await page.mouse.dblclick(x, y);
  await page.locator('.edited').waitFor();
  expect(await cell.locator('quay-cell-editor').count()).toBe(1);
  expect(((await cell.boundingBox())?.y ?? 0) + 8).toBeLessThan(y);
});

test('the menu is that of the line it was asked for, though the press moves the page', async () => {
  const cell = label(1);
  const { x, y } = await typeParagraph(cell);
  await page.mouse.click(x, y, { button: 'right' });
  await page.getByRole('menu').waitFor();
  expect(await isChosen(cell)).toBe('true');
});

test('a press on a button means that button, though the page moves before it is let go', async () => {
  const { y } = await typeParagraph(label(1));
  const button = page.locator('quay-line').nth(1).locator('[data-menu]');
  const { x = 0, width = 0 } = (await button.boundingBox()) ?? {};
  await page.mouse.move(x + width / 2, y);
  await page.mouse.down();
  await drawn(page);
  await page.mouse.up();
  await page.getByRole('menu').waitFor({ timeout: 5000 });
  expect(((await button.boundingBox())?.y ?? 0) + 8).toBeLessThan(y);
});

test('a button that is left with the pointer down is not pressed', async () => {
  const button = page.locator('quay-line').nth(1).locator('[data-menu]');
  const { x, y, width, height } = (await button.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x - 60, y + height / 2);
  await page.mouse.up();
  await drawn(page);
  expect(await page.getByRole('menu').count()).toBe(0);
});

test('a hand that is not quite still chooses the cell it pressed, though the page moves under it', async () => {
  const cell = label(1);
  const { x, y } = await typeParagraph(cell);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await drawn(page);
  await page.mouse.move(x + 1, y + 1);
  await page.mouse.up();
  await drawn(page);
  expect(await selected().count()).toBe(1);
  expect(await isChosen(cell)).toBe('true');
});

test('a range is drawn from the first cell and back to it', async () => {
  const [from, to] = [await label(0).boundingBox(), await label(2).boundingBox()];
  if (!from || !to) throw new Error('the cells are out of sight');
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + 10, { steps: 4 });
  await expect.poll(() => selected().count()).toBe(3);
  await page.mouse.move(from.x + 11, from.y + 11, { steps: 4 });
  await expect.poll(() => selected().count()).toBe(1);
  await page.mouse.up();
  expect(await isChosen(label(0))).toBe('true');
});

test('who scrolls away right after choosing a line is not brought back when it unfolds', async () => {
  await showSheet(page, 'Demand and checks');
  const formula = page.locator('quay-line.calc').first();
  await formula.locator('[data-field="label"]').click();
  const sheet = page.locator('quay-sheet');
  const end = await sheet.evaluate((one) => {
    one.scrollTop = one.scrollHeight;
    return one.scrollTop;
  });
  expect(end).toBeGreaterThan(400);
  // A line unfolds once the person has rested on it.
  await page.waitForTimeout(400);
  expect(await sheet.evaluate((one) => one.scrollTop)).toBeGreaterThan(end - 200);
});
