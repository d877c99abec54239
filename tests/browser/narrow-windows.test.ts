import type { Locator } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { axeFindings, cell, drawn, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

async function openDemo(width: number, height = 800): Promise<void> {
  await openPage({ width, height });
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
  await drawn(page);
}

const list = () => page.locator('quay-sheet-list');
const panel = () => page.locator('quay-side-panel');
const bar = (name: string) => page.locator('quay-top-bar').getByRole('button', { name, exact: true });

/** By how much the page of the window is wider than the window, in px. */
const beyondWindow = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

/** Whether all of an element lies in the window, and nothing of another part of the page on its middle. */
async function isInSight(one: Locator): Promise<boolean> {
  return one.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    if (left < 0 || right > innerWidth || top < 0 || bottom > innerHeight) return false;
    let at: Element | null = null;
    let root: DocumentOrShadowRoot = document;
    for (let next = root.elementFromPoint((left + right) / 2, (top + bottom) / 2); next && next !== at; ) {
      at = next;
      if (at.shadowRoot) root = at.shadowRoot;
      next = root.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    }
    return at !== null && (element.contains(at) || at.contains(element));
  });
}

/** Commands of the bar that stand in it. */
const inBar = () =>
  page
    .locator('quay-top-bar')
    .getByRole('button')
    .filter({ visible: true })
    .evaluateAll((all) => all.map((one) => one.textContent?.trim() ?? '').filter((words) => words !== ''));

const commands = ['Quaybook', 'Book', 'Go to', 'Save', 'Print', 'Keys'];

describe.each([400, 700, 820, 1024, 1440])('in a window of %i px', (width) => {
  test('the sheet has room, and the number, the unit and the verdict of a line come into sight', async () => {
    await openDemo(width);
    expect(await beyondWindow()).toBe(0);
    const sheet = await page.locator('quay-sheet').boundingBox();
    expect(sheet?.width).toBeGreaterThanOrEqual(Math.min(width, 640));
    await showSheet(page, 'Fender energy');
    for (const field of ['value', 'unit']) {
      await cell(page, 'clearance under the keel', field).click();
      await drawn(page);
      expect(await isInSight(cell(page, 'clearance under the keel', field)), field).toBe(true);
    }
    const verdict = page.locator('quay-line .verdict .word').first();
    await verdict.scrollIntoViewIfNeeded();
    expect(await isInSight(verdict)).toBe(true);
    expect(await beyondWindow()).toBe(0);
  });

  test('every command can be reached, in the bar or in its menu', async () => {
    await openDemo(width);
    const shown = await inBar();
    const offered: string[] = [];
    if (shown.includes('Menu')) {
      await bar('Menu').click();
      const items = page.getByRole('menu', { name: 'book' }).locator('[role^=menuitem] span');
      offered.push(...(await items.allTextContents()));
      expect(await isInSight(items.last())).toBe(true);
      await page.keyboard.press('Escape');
      await expect.poll(() => bar('Menu').evaluate((one) => one.matches(':focus'))).toBe(true);
    }
    for (const command of commands) expect([...shown, ...offered], command).toContain(command);
    for (const button of await page
      .locator('quay-top-bar, quay-status-bar')
      .getByRole('button')
      .filter({ visible: true })
      .all())
      expect(await isInSight(button), (await button.textContent()) ?? '').toBe(true);
  });

  test('the list and the panel are shown and folded by button and by key', async () => {
    await openDemo(width);
    for (const [side, name, key] of [
      [list(), 'List of sheets', 'Shift+F9'],
      [panel(), 'Panel', 'F9'],
    ] as const) {
      const before = await side.isVisible();
      await bar(name).click();
      await expect.poll(() => side.isVisible()).toBe(!before);
      expect(await bar(name).getAttribute('aria-expanded')).toBe(String(!before));
      await page.keyboard.press(key);
      await expect.poll(() => side.isVisible()).toBe(before);
    }
    expect(await axeFindings(page)).toEqual([]);
  });
});

describe.each([360, 420, 600])('a line in a window of %i px', (width) => {
  test.each(['Existing wharf', 'Fender energy', 'Waterside pile'])(
    'has its parts below one another, none beyond the edge: %s',
    async (title) => {
      await openDemo(width);
      await showSheet(page, title);
      await drawn(page);
      const sheet = page.locator('quay-sheet');
      expect(await sheet.evaluate((one) => one.scrollWidth - one.clientWidth)).toBe(0);
      const beyond = await page
        .locator('quay-line .cell:is(.description, .value, .unit, .reference, .mark)')
        .evaluateAll((cells) => {
          const edge = innerWidth;
          return cells
            .filter((one) => one.getBoundingClientRect().right > edge)
            .map((one) => one.textContent?.trim());
        });
      expect(beyond).toEqual([]);
      const tops = await page
        .locator('quay-line')
        .first()
        .evaluate((one) =>
          ['.description', '.value', '.unit'].map(
            (part) => one.querySelector(part)?.getBoundingClientRect().top ?? 0,
          ),
        );
      expect(tops[1]).toBeGreaterThan((tops[0] ?? 0) + 10);
      expect(Math.abs((tops[2] ?? 0) - (tops[1] ?? 0))).toBeLessThan(14);
      if (title === 'Fender energy') expect(await axeFindings(page)).toEqual([]);
    },
  );
});

describe('what lies over the sheet', () => {
  test('makes way for the sheet that is chosen, whose cells take the keys', async () => {
    await openDemo(700);
    await page.keyboard.press('Shift+F9');
    await expect.poll(() => list().isVisible()).toBe(true);
    await list().getByRole('button', { name: 'Fender energy' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => list().isVisible()).toBe(false);
    await expect
      .poll(() =>
        page.locator('quay-sheet').evaluate((one) => one.shadowRoot?.activeElement?.matches('.cell')),
      )
      .toBe(true);
  });

  test('is folded by Escape, and by going on in the sheet', async () => {
    await openDemo(820);
    await cell(page, 'bent spacing', 'value').click();
    await page.keyboard.press('F9');
    await expect.poll(() => panel().getByLabel('Value to try').isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await expect.poll(() => panel().isVisible()).toBe(false);
    await page.keyboard.type('21');
    await page.keyboard.press('Enter');
    await drawn(page);
    expect((await cell(page, 'bent spacing', 'value').textContent())?.trim()).toBe('21');
    await page.keyboard.press('F9');
    await expect.poll(() => panel().isVisible()).toBe(true);
    await page.locator('quay-line [data-field="label"]').first().click();
    await expect.poll(() => panel().isVisible()).toBe(false);
  });

  test('and what was folded beside the sheet stays folded until it is asked for', async () => {
    await openDemo(1440);
    await page.keyboard.press('F9');
    await expect.poll(() => panel().isVisible()).toBe(false);
    await page.setViewportSize({ width: 700, height: 800 });
    await page.setViewportSize({ width: 1440, height: 800 });
    await expect.poll(() => list().isVisible()).toBe(true);
    expect(await panel().isVisible()).toBe(false);
    await page.keyboard.press('F9');
    await expect.poll(() => panel().isVisible()).toBe(true);
  });
});

test.each([400, 700])(
  'the start page lies in a window of %i px, with the template that is chosen',
  async (width) => {
    await openPage({ width, height: 800 });
    expect(await beyondWindow()).toBe(0);
    await page.getByRole('button', { name: 'Berthing energy and fenders' }).click();
    const begin = page.getByRole('button', { name: 'Start from this template' });
    await drawn(page);
    expect(await isInSight(begin)).toBe(true);
  },
);

test('a book and a sheet open with their descriptions in sight, in a window narrower than the paper', async () => {
  await openDemo(420);
  const left = () => page.locator('quay-sheet').evaluate(({ scrollLeft }) => scrollLeft);
  await expect.poll(() => page.locator('quay-sheet [data-field]:focus').count()).toBe(1);
  expect(await left()).toBe(0);
  await showSheet(page, 'Fender energy');
  await drawn(page);
  expect(await left()).toBe(0);
});
