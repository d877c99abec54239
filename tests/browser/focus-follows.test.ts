import { beforeEach, describe, expect, test } from 'vitest';
import { cell, computed, drawn, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
});

const spacing = 'bent spacing';
const field = () => page.locator('quay-side-panel').getByLabel('Value to try');

/** Goes to the field of the panel in which another value is tried for the bent spacing. */
async function toThePanel(): Promise<void> {
  await cell(page, spacing, 'value').click();
  await field().click();
  await expect.poll(() => field().evaluate((one) => one.matches(':focus'))).toBe(true);
}

/** The field and the part of the description of the cell that has the focus; empty where none has. */
function focusedCell(): Promise<string> {
  return page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const name = at?.closest('quay-line')?.querySelector('[data-field="label"]')?.textContent?.trim();
    return name === undefined ? '' : `${name}, ${at?.getAttribute('data-field')}`;
  });
}

async function goTo(words: string): Promise<void> {
  await page.keyboard.press('Control+g');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
}

describe('whoever is led to a place types there next, also from the field of the panel', () => {
  test('to another line by Go to, where the next figures begin an entry', async () => {
    await toThePanel();
    await goTo('length of berths 4 and 5');
    await expect.poll(focusedCell).toBe('length of berths 4 and 5, value');
    await page.keyboard.type('190 m');
    await page.keyboard.press('Enter');
    await drawn(page);
    expect((await cell(page, 'length of berths 4 and 5', 'value').textContent())?.trim()).toContain('190');
  });

  test('to the line the panel is about', async () => {
    await toThePanel();
    await goTo(spacing);
    await expect.poll(focusedCell).toBe(`${spacing}, value`);
  });

  test('to a line of another sheet, which stands in sight', async () => {
    await toThePanel();
    await goTo('clearance to keep, share');
    await expect.poll(focusedCell).toBe('clearance to keep, share of the projection, value');
    const seen = await page.evaluate(() => {
      let at: Element | null = document.activeElement;
      while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
      const box = at?.getBoundingClientRect();
      return box !== undefined && box.top > 0 && box.bottom < innerHeight;
    });
    expect(seen).toBe(true);
  });

  test('to another sheet by its title, on the line where they were, which has a value to try too', async () => {
    await showSheet(page, 'Fender energy');
    await cell(page, 'fender', 'value').click();
    await showSheet(page, 'Existing wharf');
    await toThePanel();
    await goTo('Fender energy');
    await expect.poll(focusedCell).toBe('fender, value');
  });

  test('to a sheet never seen, on its first line', async () => {
    await toThePanel();
    await page.keyboard.press('Control+PageDown');
    await expect.poll(focusedCell).toMatch(/, value$/);
  });

  test('to the next failing check', async () => {
    await toThePanel();
    await computed(page);
    await page.keyboard.press('F8');
    await expect.poll(focusedCell).toMatch(/, value$/);
    expect(await focusedCell()).not.toBe(`${spacing}, value`);
  });
});
