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

/** The sheet has room, and the number, the unit and the verdict of a line come into sight. */
async function seeSheet(width: number): Promise<void> {
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
}

/** Every command can be reached, in the bar or in its menu. */
async function reachCommands(): Promise<void> {
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
}

/** The list and the panel are shown and folded by button and by key. */
async function foldSides(): Promise<void> {
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
}

test.each([400, 700, 820, 1024, 1440])(
  'in a window of %i px the sheet has room, every command can be reached, and what is beside it folds',
  async (width) => {
    await openDemo(width);
    await seeSheet(width);
    await reachCommands();
    await foldSides();
  },
);

/** What of a line sticks out of the window, and whether its parts stand below one another. */
async function seeStacked(): Promise<void> {
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
}

/** Has the window another width, and waits until the page is drawn with it. */
async function resize(width: number): Promise<void> {
  await page.setViewportSize({ width, height: 800 });
  // A page takes the width of its window in the frame, and is drawn with it in the next.
  for (let frame = 0; frame < 3; frame += 1) await drawn(page);
}

const narrow = [360, 420, 600];

test.each(['Existing wharf', 'Fender energy', 'Waterside pile'])(
  'a line in a narrow window has its parts below one another, none beyond the edge: %s',
  async (title) => {
    await openDemo(360);
    await showSheet(page, title);
    for (const width of narrow) {
      await resize(width);
      await seeStacked();
      if (title === 'Fender energy') expect(await axeFindings(page), `${width} px`).toEqual([]);
    }
  },
);

test('pages about the book are as wide as their window, and the title block cuts no text', async () => {
  await openDemo(1440);
  for (const [name, element] of [
    [/^All checks/, 'quay-overview'],
    ['Sources', 'quay-sources-page'],
    ['Purpose, limits and cautions', 'quay-about-page'],
  ] as const) {
    await resize(1440);
    await list().getByRole('button', { name }).click();
    const about = page.locator(element);
    await about.waitFor();
    // 960 and 720 px are what a window of 1440 px has at 150 % and 200 %.
    for (const width of [1440, 1024, 960, 768, 720, 390]) {
      await resize(width);
      const over = await about.evaluate((one) => one.scrollWidth - one.clientWidth);
      expect(over, `${element} at ${width} px`).toBeLessThanOrEqual(0);
      const cut = await page
        .locator('quay-title-block .whole')
        .evaluateAll((all) =>
          all
            .filter((one) => one.clientHeight === 0 || one.scrollWidth > one.clientWidth)
            .map((one) => one.textContent),
        );
      expect(cut, `${element} at ${width} px`).toEqual([]);
    }
  }
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
