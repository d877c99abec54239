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

test('a double click presses no button that its first press brings under the pointer', async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Dust and water');
  const lines = page.locator('quay-line');
  const count = await lines.count();
  const value = page.locator('[data-item="r199"] [data-field="value"]');
  const button = page.getByRole('button', { name: 'add a line' }).first();
  // What is said of the value once it is entered pushes the button down to where the next heading was.
  await value.click();
  await page.keyboard.type('-3');
  await drawn(page);
  const before = await button.boundingBox();
  await page.locator('[data-part="p56"] [data-field="title"]').click();
  await drawn(page);
  const then = await button.boundingBox();
  if (!before || !then || then.y < before.y + before.height)
    throw new Error('the button stands where it was');
  await page.keyboard.press('Control+z');
  await value.click();
  await page.keyboard.type('-3');
  await drawn(page);
  const aim = { x: then.x + then.width / 2, y: then.y + then.height / 2 };
  const aimed = await page.locator('quay-sheet').evaluate((sheet, { x, y }) => {
    const cell = sheet.shadowRoot?.elementFromPoint(x, y)?.closest<HTMLElement>('[data-field]');
    const item = cell?.closest<HTMLElement>('[data-item]')?.dataset.item;
    return `${item === undefined ? '' : `[data-item="${item}"] `}[data-field="${cell?.dataset.field}"]`;
  }, aim);
  await page.mouse.dblclick(aim.x, aim.y);
  await drawn(page);
  expect(await lines.count()).toBe(count);
  expect(await page.locator(`${aimed} quay-cell-editor`).count()).toBe(1);
});

test('a press right after another sheet was turned to means what is on that sheet', async () => {
  const { x, y } = (await label(1).boundingBox()) ?? { x: 0, y: 0 };
  await page.mouse.click(x + 10, y + 10);
  await page.keyboard.press('Control+PageDown');
  await page.mouse.click(x + 10, y + 10, { clickCount: 2 });
  await drawn(page);
  expect(await page.locator('quay-sheet-list [aria-current="page"]').textContent()).not.toContain(
    'Pile and soil',
  );
});

test('a range is drawn from a choice that is chosen, and a press alone opens its list', async () => {
  const choice = page.locator('quay-line:has([data-open]) [data-field="value"]').first();
  const open = choice.locator('[data-open]');
  await open.click();
  await drawn(page);
  const [from, to] = [await open.boundingBox(), await label(2).boundingBox()];
  if (!from || !to) throw new Error('the cells are out of sight');
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + 10, { steps: 4 });
  await page.mouse.up();
  await drawn(page);
  expect(await page.locator('.edited').count()).toBe(0);
  expect(await selected().count()).toBeGreaterThan(2);
  await open.click();
  await open.click();
  await page.locator('.edited').waitFor();
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

test('who scrolls away right after choosing a line is not brought back when it expands', async () => {
  await showSheet(page, 'Demand and checks');
  const formula = page.locator('quay-line.calc').first();
  await formula.locator('[data-field="label"]').click();
  const sheet = page.locator('quay-sheet');
  const end = await sheet.evaluate((one) => {
    one.scrollTop = one.scrollHeight;
    return one.scrollTop;
  });
  expect(end).toBeGreaterThan(400);
  // A line expands once the person has rested on it.
  await page.waitForTimeout(400);
  expect(await sheet.evaluate((one) => one.scrollTop)).toBeGreaterThan(end - 200);
});
