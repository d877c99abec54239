import type { Locator } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { axeFindings, cell, enter, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { countPrinted, tell, toPaper } from './on-paper.ts';
import { openSmallBook } from './small-book.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await openSmallBook(page);
});

const list = () => page.locator('quay-sheet-list');
const checking = () => page.locator('quay-checking-page');
/** The words of an element, with one blank for any between them. */
const words = async (of: Locator): Promise<string> =>
  (await of.textContent())?.replace(/\s+/g, ' ').trim() ?? '';
const row = (label: string) => checking().getByRole('row').filter({ hasText: label });

async function showChecking(): Promise<void> {
  await list().getByRole('button', { name: 'Checked by hand', exact: true }).click();
  await checking().getByRole('heading', { name: 'Checked by hand' }).waitFor();
}

// E_N = m v² / 2 = 1000 t · (0.2 m/s)² / 2 = 20 kN·m.
test('a sheet is gone through with the keyboard alone: entries are seen, a result agrees, and an edit makes both stale', async () => {
  await showChecking();
  await checking().getByLabel('initials').fill('KL');
  await checking().getByLabel('initials').press('Tab');
  await row('mass of the ship')
    .getByRole('button', { name: /^mark as seen/ })
    .focus();
  for (const _ of ['m', 'v', 'C_S', 'C_C']) await page.keyboard.press('Enter');
  // The field of the one result has the focus now.
  await page.keyboard.type('20.1');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => words(row('normal berthing energy').locator('.state')))
    .toMatch(/^agrees \+0\.1 kN·m \(\+0\.5 %\) KL, \d{4}-\d\d-\d\d$/);
  await expect
    .poll(() => checking().getByRole('status').textContent())
    .toContain('Of 5 results and entries: 5 agree or were seen, 0 not checked.');
  expect(await axeFindings(page)).toEqual([]);

  await showSheet(page, 'Berthing energy');
  await enter(page, 'speed across the berth', '0.25');
  await showChecking();
  await expect.poll(() => words(row('normal berthing energy').locator('.state'))).toMatch(/^stale/);
  expect(await words(row('normal berthing energy').locator('.changes'))).toBe('v: 0.2 m/s → 0.25 m/s');
  expect(await words(row('speed across the berth').locator('.state'))).toMatch(/^stale/);
  expect(await words(row('mass of the ship').locator('.state'))).toMatch(/^seen at its source/);

  await page.reload();
  await checking().getByRole('heading', { name: 'Checked by hand' }).waitFor();
  await expect.poll(() => words(row('normal berthing energy').locator('.state'))).toMatch(/^stale/);
});

test('nothing is checked by nobody: the initials are asked for, and what was typed waits', async () => {
  await showChecking();
  const field = row('normal berthing energy').getByRole('textbox');
  await field.fill('21');
  await field.press('Enter');
  await expect
    .poll(() => row('normal berthing energy').getByRole('alert').textContent())
    .toMatch(/^Enter your initials first/);
  expect(await field.inputValue()).toBe('21');
  await checking().getByLabel('initials').fill('KL');
  await field.focus();
  await field.press('Enter');
  await expect.poll(() => words(row('normal berthing energy').locator('.state'))).toMatch(/^differs/);
  await field.fill('');
  await field.press('Enter');
  await expect.poll(() => words(row('normal berthing energy').locator('.state'))).toMatch(/^not checked/);
  expect(await row('normal berthing energy').getByRole('alert').count()).toBe(0);
});

test('a value that cannot be compared is told with its reason, and one in another unit is compared', async () => {
  await showChecking();
  await checking().getByLabel('initials').fill('KL');
  const field = row('normal berthing energy').getByRole('textbox');
  await field.fill('20 kN');
  await field.press('Tab');
  await expect
    .poll(() => row('normal berthing energy').locator('.why').textContent())
    .toContain('is a force');
  await field.fill('14.75 kip-ft');
  await field.press('Tab');
  await expect.poll(() => words(row('normal berthing energy').locator('.state'))).toMatch(/^agrees/);
});

test('the panel takes the hand value of the line in hand, and comments on it until they are closed', async () => {
  await showSheet(page, 'Berthing energy');
  await page
    .locator('quay-line')
    .filter({ hasText: 'normal berthing energy' })
    .locator('[data-field="value"]')
    .click();
  const panel = page.locator('quay-side-panel');
  await panel.getByLabel('initials').fill('KL');
  await panel.getByLabel('initials').press('Tab');
  await panel.getByRole('textbox', { name: /^by hand/ }).fill('20');
  await panel.getByRole('textbox', { name: /^by hand/ }).press('Enter');
  await expect.poll(() => words(panel.locator('.hand .state'))).toMatch(/^agrees/);
  // The line has the checker's mark once the person rests.
  const mark = page.locator('quay-line').filter({ hasText: 'normal berthing energy' }).locator('.checked');
  await expect.poll(() => mark.getAttribute('title')).toBe('checked by hand: agrees (KL)');
  await panel.getByRole('textbox', { name: 'raise a comment' }).fill('Which tide?');
  await panel.getByRole('textbox', { name: 'raise a comment' }).press('Enter');
  await expect.poll(() => words(panel.locator('.comment'))).toContain('Which tide?');
  await panel.getByRole('textbox', { name: 'answer' }).fill('Mean low water.');
  await panel.getByRole('textbox', { name: 'answer' }).press('Enter');
  await expect.poll(() => words(panel.locator('.comment'))).toContain('Mean low water.');
  await panel.getByRole('button', { name: 'close', exact: true }).click();
  await expect.poll(() => panel.locator('.comment').count()).toBe(0);
});

// E_N = m v² / 2 · C_S · C_C with the numbers of the small book: its steps are its four entries.
test('a result is gone to step by step, its value by hand entered there, and the way leads back', async () => {
  await showSheet(page, 'Berthing energy');
  await cell(page, 'normal berthing energy', 'value').click();
  await page.getByRole('complementary').getByRole('button', { name: 'Step by step' }).click();
  const steps = page.locator('quay-steps-page');
  await expect.poll(() => steps.getByRole('listitem').count()).toBe(5);
  const first = steps.getByRole('listitem').first();
  expect(await words(first.locator('.line'))).toBe('normal berthing energy 20 kN·m');
  await expect.poll(() => words(first.locator('.worked'))).toContain('0.2');
  await steps.getByLabel('initials').fill('KL');
  await steps.getByLabel('initials').press('Tab');
  await first.getByRole('textbox').fill('20 kN·m');
  await first.getByRole('textbox').press('Enter');
  await expect.poll(() => words(page.locator('quay-side-panel .hand .state'))).toMatch(/^agrees/);
  expect(await axeFindings(page)).toEqual([]);

  // Printed, it has the title block, the same steps with their numbers, and what was entered by hand.
  const paper = await toPaper(page);
  const printed = paper.locator('quay-steps-page');
  await expect.poll(() => printed.getByRole('listitem').count()).toBe(5);
  expect(await printed.locator('quay-title-block').count()).toBe(1);
  expect(await printed.getByRole('textbox').count()).toBe(
    await printed.locator('quay-title-block').getByRole('textbox').count(),
  );
  expect(await words(printed.getByRole('listitem').first())).toMatch(
    /normal berthing energy 20 kN·m.*20 kN·m agrees, KL/,
  );
  expect(await countPrinted(page)).toBe(1);
  await tell(page, 'afterprint');
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize({ width: 1440, height: 900 });

  await page.reload();
  await expect.poll(() => steps.getByRole('listitem').count()).toBe(5);
  await steps.getByRole('listitem').nth(1).getByRole('button').first().click();
  await page.locator('quay-sheet').waitFor();
  await page.keyboard.press('Alt+ArrowLeft');
  await expect.poll(() => steps.getByRole('listitem').count()).toBe(5);
});
