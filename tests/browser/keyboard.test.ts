import { beforeEach, describe, expect, test } from 'vitest';
import { cell, chooseFromMenu, computed, drawn, focusedWords } from './app-page.ts';
import { app, openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
});

const inHand = () => page.locator('quay-side-panel .label').textContent();
const heading = (title: string) => page.locator('quay-sheet').getByRole('heading', { name: title });

/** Whether what has the focus is within the window of the page. */
const focusInSight = () =>
  page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const box = at?.getBoundingClientRect();
    return box !== undefined && at !== document.body && box.top >= 0 && box.bottom <= innerHeight;
  });

describe('the checker, without a pointer', () => {
  test('comes to a failing check in sight, to what it depends on, and back', async () => {
    await computed(page);
    await page.keyboard.press('F8');
    await expect.poll(inHand).toBe('reaction the wharf can take');
    await expect.poll(focusInSight).toBe(true);
    await page.keyboard.press('F6');
    await expect
      .poll(() => page.locator('quay-side-panel').evaluate((panel) => panel.matches(':focus-within')))
      .toBe(true);
    const first = page.locator('quay-side-panel li button').first();
    for (let step = 0; step < 12 && !(await first.evaluate((one) => one.matches(':focus'))); step += 1)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(inHand).toBe('reaction into the wharf');
    await page.keyboard.press('Alt+ArrowLeft');
    await expect.poll(inHand).toBe('reaction the wharf can take');
    await page.keyboard.press('F6');
    await page.keyboard.press('Shift+F6');
    await page.keyboard.press('ArrowUp');
    await expect.poll(inHand).toBe('reaction into the wharf');
  });

  test('has a line at hand on every sheet that is turned to', async () => {
    await page.keyboard.press('Control+PageDown');
    await heading('Ships and cranes').waitFor();
    await expect.poll(inHand).not.toBe('finished level of the deck');
    await page.keyboard.press('Control+g');
    await page.keyboard.type('Bollard pull');
    await page.keyboard.press('Enter');
    await heading('Bollard pull').waitFor();
    await expect.poll(focusInSight).toBe(true);
    const before = await inHand();
    await page.keyboard.press('ArrowDown');
    await expect.poll(inHand).not.toBe(before);
  });

  test('reads a picture as a table', async () => {
    await page.keyboard.press('Control+g');
    await page.keyboard.type('Ship at the moment');
    await page.keyboard.press('Enter');
    await heading('Fender energy').waitFor();
    await expect.poll(focusedWords.bind(undefined, page)).toContain('Ship at the moment of contact');
    const table = page.locator('quay-sheet').getByRole('table').first();
    expect(await table.isVisible()).toBe(false);
    await chooseFromMenu(page, 'Show or hide it as a table');
    await expect.poll(() => table.isVisible()).toBe(true);
  });

  test('presses nothing else with the key that goes to a name', async () => {
    await page.evaluate(() => {
      window.print = () => console.error('printed');
    });
    await page.getByRole('button', { name: 'Print' }).focus();
    await page.keyboard.press('Control+g');
    await page.keyboard.type('F_AB');
    await page.keyboard.press('Enter');
    await expect.poll(inHand).toBe('abnormal factor');
    await page.waitForTimeout(200);
    expect(app.complaints).toEqual([]);
  });

  test('opens the sheet of keys from a cell without changing it', async () => {
    const level = cell(page, 'finished level of the deck', 'value');
    const before = await level.textContent();
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focusedWords.bind(undefined, page)).toContain('15');
    await page.keyboard.press('F1');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await drawn(page);
    expect(await level.textContent()).toBe(before);
  });
});

describe('the title block', () => {
  test('takes what is typed, and no cell does', async () => {
    const level = cell(page, 'finished level of the deck', 'value');
    const before = await level.textContent();
    const job = page.locator('quay-title-block').getByLabel('Job');
    await job.click();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('J-1047');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.getByText(/all kept/).waitFor();
    await page.reload();
    await expect.poll(() => job.inputValue()).toBe('J-1047');
    await drawn(page);
    expect(await level.textContent()).toBe(before);
  });
});

describe('the pointer', () => {
  test('closes a menu with Escape, sums a column, adds a row, and goes to a row', async () => {
    await page.locator('quay-sheet-list').getByRole('button', { name: 'Debris by layer' }).click();
    const table = page.locator('quay-table').first();
    const given = table.locator('[data-item="r0"] [data-field]').nth(2);
    await given.click({ button: 'right' });
    const menu = page.getByRole('menu').filter({ visible: true });
    await menu.waitFor();
    await page.waitForTimeout(100);
    await page.keyboard.press('Escape');
    await expect.poll(() => menu.count()).toBe(0);
    await given.click();
    await table.getByRole('button', { name: /^\s*sum of/ }).click();
    await expect.poll(() => table.locator('.table-foot output').textContent()).toMatch(/17/);
    await table.getByRole('button', { name: 'add a row' }).click();
    await table.getByText('5 rows').waitFor();
    await table.locator('.row-number').nth(1).click();
    await expect
      .poll(() => table.locator('[data-item="r0"] [data-field]').first().getAttribute('aria-selected'))
      .toBe('true');
  });
});
