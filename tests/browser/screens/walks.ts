import type { Page } from 'playwright-core';
import { cell, showSheet, startFrom } from '../app-page.ts';

/** The title of each template on the start page, by its id. */
export const titles = {
  'bollard-pull': 'Bollard pull and mooring lines',
  'debris-haul': 'Demolition debris: quantities, haul fleet, cost',
  'fender-energy': 'Berthing energy and fenders',
  'pile-bearing': 'Axial capacity of a waterside crane pile',
} as const;

/** Opens the demo book and, if told, one of its sheets. */
export async function openDemo(page: Page, sheet?: string): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
  if (sheet) await showSheet(page, sheet);
}

/** Starts from a template and shows one of its sheets. */
export async function openTemplate(page: Page, id: keyof typeof titles, sheet?: string): Promise<void> {
  await startFrom(page, titles[id]);
  if (sheet) await showSheet(page, sheet);
}

/** Chooses the value of a line, and has the line in the middle of the picture. */
export async function choose(page: Page, label: string, field = 'value'): Promise<void> {
  const wanted = cell(page, label, field);
  const toTheMiddle = () => wanted.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await toTheMiddle();
  await wanted.click();
  // Parts that came into sight have got their true height, and pushed the line away.
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 50))));
  await toTheMiddle();
}

/** Opens the formula of a line and types another in its place. */
export async function retype(page: Page, label: string, formula: string): Promise<void> {
  await choose(page, label);
  await page.keyboard.press('F2');
  await page.locator('quay-formula-field .cm-content').waitFor();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(formula, { delay: 10 });
}

/** Types over the value of a line and commits it. */
export async function enter(page: Page, label: string, entry: string): Promise<void> {
  await choose(page, label);
  await page.keyboard.type(entry);
  await page.keyboard.press('Enter');
}
