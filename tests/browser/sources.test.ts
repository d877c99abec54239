import { beforeEach, expect, test } from 'vitest';
import { axeFindings, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Berthing energy and fenders');
});

test('the sources of a book are a page of it, the weakest first, and lead to their lines', async () => {
  const list = page.locator('quay-sheet-list');
  await list.getByRole('button', { name: 'Sources', exact: true }).click();
  const sources = page.locator('quay-sources-page');
  await sources.getByRole('heading', { name: 'Sources' }).waitFor();
  const kinds = await sources.locator('h3').allTextContents();
  expect(kinds.indexOf('From memory')).toBeGreaterThanOrEqual(0);
  expect(kinds.indexOf('From memory')).toBeLessThan(kinds.indexOf('Cited'));
  const row = sources
    .getByRole('table', { name: 'References: from memory' })
    .getByRole('row')
    .filter({ hasText: 'PIANC WG 33 (2002), 4.2.5; constants from memory' });
  expect(Number(await row.locator('.number').textContent())).toBeGreaterThan(20);
  expect(await axeFindings(page)).toEqual([]);
  const cited = sources.getByRole('table', { name: 'References: own working' });
  const shown = () => cited.locator('.lines > span:visible').count();
  const before = await shown();
  const more = cited.getByRole('button', { name: /^and \d+ more$/ });
  const hidden = Number((await more.first().textContent())?.match(/\d+/)?.[0]);
  await more.first().click();
  await expect.poll(shown).toBe(before + hidden);
  await row.getByRole('button').first().click();
  await page.locator('quay-sheet').waitFor();
  const chosen = page.locator('[aria-selected="true"]').first();
  await expect.poll(() => chosen.isVisible()).toBe(true);
});
