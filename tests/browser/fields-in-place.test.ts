import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { drawn, line, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage({ width: 1024 });
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
});

/** How far below the top of its cell the field of the cell begins once it is edited, and how far below its foot it ends, in px. */
async function fieldIn(where: Locator): Promise<{ readonly top: number; readonly foot: number }> {
  await where.click();
  await drawn(page);
  const before = await where.boundingBox();
  await page.keyboard.press('F2');
  const field = page.locator('quay-sheet').locator('.edited').locator(':is(input, .field)').first();
  await field.waitFor();
  const [box, now] = [await field.boundingBox(), await where.boundingBox()];
  await page.keyboard.press('Escape');
  if (!before || !box || !now) throw new Error('the cell or its field is not on the page');
  // The cell may have grown with its field, and the page been scrolled for it: what counts is the cell as it is now.
  return { top: box.y - now.y, foot: box.y + box.height - (now.y + before.height) };
}

describe('the field of a cell that is edited lies on the cell', () => {
  test('in the rows of a table, the first column that stays and the others', async () => {
    await showSheet(page, 'Fender energy');
    const row = page.locator('quay-table').first().locator('[data-item="r1"]').locator('[data-field]');
    for (const at of [0, 1, 2]) {
      const { top, foot } = await fieldIn(row.nth(at));
      expect(Math.abs(top), `column ${at}`).toBeLessThanOrEqual(3);
      expect(Math.abs(foot), `column ${at}`).toBeLessThanOrEqual(3);
    }
  });

  test('in a line: its description, its value and its unit', async () => {
    // By its id, for its description is in the field while it is edited.
    const item = await line(page, 'bent spacing').getAttribute('data-item');
    for (const field of ['label', 'value', 'unit']) {
      const { top, foot } = await fieldIn(
        page.locator(`quay-line[data-item="${item}"]`).locator(`[data-field="${field}"]`),
      );
      expect(Math.abs(top), field).toBeLessThanOrEqual(6);
      expect(Math.abs(foot), field).toBeLessThanOrEqual(8);
    }
  });
});
