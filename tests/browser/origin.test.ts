import { beforeEach, expect, test } from 'vitest';
import { axeFindings, cell, drawn, line, resultOf, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await page.locator('quay-start-page').getByRole('button', { name: 'Demolition debris' }).dblclick();
  await page.locator('quay-sheet').waitFor();
});

const origin = () => page.locator('quay-origin-page');
const sheetList = () => page.locator('quay-sheet-list');

async function showOrigin(): Promise<void> {
  const button = sheetList().getByRole('button', { name: 'Origin', exact: true });
  await button.focus();
  await page.keyboard.press('Enter');
  await origin().getByRole('heading', { name: 'Origin', exact: true }).waitFor();
}

async function changeFormula(label: string, formula: string): Promise<void> {
  await cell(page, label, 'value').click();
  await page.keyboard.press('F2');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(formula);
  await page.keyboard.press('Enter');
  await drawn(page);
}

test('a changed formula is marked, shown beside what it was, and what a case fails through, by keyboard alone', {
  timeout: 180_000,
}, async () => {
  await showOrigin();
  await expect
    .poll(() => origin().getByRole('status').first().textContent())
    .toContain('Every line is as it came');
  expect(await axeFindings(page)).toEqual([]);
  await showSheet(page, 'Truck, loader and fleet');
  await changeFormula('truck cycle', 't_l + t_x + 2 * t_a');
  await line(page, 'truck cycle').getByRole('img', { name: 'not as it came: formula changed' }).waitFor();
  await cell(page, 'truck cycle', 'value').click();
  await expect
    .poll(() => page.locator('quay-side-panel dl.sides').textContent())
    .toMatch(/formula as it came.*formula here/s);
  await showOrigin();
  const lines = origin().getByRole('table', { name: 'Lines that are not as they came' });
  await expect.poll(() => lines.getByRole('row').filter({ hasText: 'truck cycle' }).count()).toBe(1);
  const run = origin().getByRole('button', { name: 'Run the cases' });
  await run.focus();
  await page.keyboard.press('Enter');
  await run.waitFor({ timeout: 120_000 });
  const cases = origin().getByRole('table', { name: 'Cases of the template' });
  await expect.poll(() => cases.getByRole('row').filter({ hasText: 'no longer' }).count()).toBeGreaterThan(0);
  await expect
    .poll(() => cases.getByRole('row').filter({ hasText: 'no longer' }).first().textContent())
    .toContain('haul.t_c');
  expect(await axeFindings(page)).toEqual([]);
  // Undone, nothing is marked.
  await page.keyboard.press('ControlOrMeta+z');
  await showOrigin();
  await expect
    .poll(() => origin().getByRole('status').first().textContent())
    .toContain('Every line is as it came');
  await expect.poll(() => origin().getByRole('status').last().textContent()).toContain('run them again');
});

test('the inputs of a case stand on the sheets, which says so on every page, and are taken back', {
  timeout: 120_000,
}, async () => {
  await showSheet(page, 'Truck, loader and fleet');
  const before = await resultOf(page, 'truck cycle');
  await showOrigin();
  const cases = origin().getByRole('table', { name: 'Cases of the template' });
  const put = cases.getByRole('button', { name: /^put on the sheets/ }).first();
  await put.waitFor();
  await put.focus();
  await page.keyboard.press('Enter');
  const note = page.locator('quay-example-note').getByRole('status');
  await note.waitFor();
  await expect.poll(() => cases.getByText('on the sheets', { exact: true }).count()).toBe(1);
  expect(await axeFindings(page)).toEqual([]);
  // Kept in the book, it is there after a reload too, when there is no step to undo.
  await page
    .getByText(/^all kept/)
    .first()
    .waitFor();
  await page.reload();
  await note.waitFor();
  await note.getByRole('button', { name: 'Take them back' }).click();
  await note.waitFor({ state: 'detached' });
  await showSheet(page, 'Truck, loader and fleet');
  expect(await resultOf(page, 'truck cycle')).toBe(before);
  await page.keyboard.press('ControlOrMeta+z');
  await note.waitFor();
});
