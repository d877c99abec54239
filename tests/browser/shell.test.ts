import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, cell, computed, enter, focusedWords, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Berthing energy and fenders');
  await showSheet(page, 'Berthing energy');
});

const status = (words: RegExp) => page.locator('quay-status-bar').getByRole('button', { name: words });
const listed = (name: string) => page.locator('quay-overview').getByRole('table', { name });
const inHand = () => page.locator('quay-side-panel .label').textContent();

describe('the list of problems', () => {
  test('is opened from the count by keyboard, tells what would mend, and leads to the line', async () => {
    await enter(page, 'softness factor', '0.9 ton');
    await status(/^1 problem$/).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedWords(page)).toBe('Problems');
    const row = listed('Problems').locator('tbody tr');
    expect(await row.count()).toBe(1);
    const told = (await row.first().textContent())?.replace(/\s+/g, ' ') ?? '';
    expect(told).toContain('Berthing energy');
    expect(told).toContain('“ton” is one of three masses; write “t”, “ST” or “LT”');
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(inHand).toBe('softness factor');
    await expect
      .poll(() => cell(page, 'softness factor', 'value').getAttribute('aria-selected'))
      .toBe('true');
  });

  test('has remarks apart from problems', async () => {
    await enter(page, 'speed, stated', '20 m/s');
    await status(/^1 remark$/).click();
    await listed('Remarks').getByRole('button').first().click();
    await expect.poll(inHand).toBe('speed, stated');
  });

  test('says plainly that there is nothing to mend', async () => {
    await status(/^0 problems$/).click();
    await page.getByText('No problem anywhere in the book.').waitFor();
    await page.keyboard.press('F8');
    await page.getByText('No problem anywhere in the book.').waitFor();
  });

  test('F8 goes through problems and failing checks and back, over sheets', async () => {
    const gravity = 'acceleration of gravity used by the weight form';
    await enter(page, gravity, '9.8 ton');
    await enter(page, 'least speed accepted for design', '0.2 m/s');
    await showSheet(page, 'Design ship, water and added mass');
    await enter(page, 'least clearance as a share of the draught', '90 %');
    await page.keyboard.press('Control+Home');
    await computed(page);
    for (const label of ['clearance under the keel', 'design speed is not too low', gravity]) {
      await page.keyboard.press('F8');
      await expect.poll(inHand).toBe(label);
    }
    await page.keyboard.press('Shift+F8');
    await expect.poll(inHand).toBe('design speed is not too low');
    await expect.poll(() => focusedWords(page)).toMatch(/fails$/);
  });
});

describe('a formula that is still to be written', () => {
  test('is told quietly, counts as no problem, and what needs it waits on it', async () => {
    await cell(page, 'energy to design the fender for', 'value').click();
    await page.keyboard.press('Control+Enter');
    await page.keyboard.type('E_2');
    await page.keyboard.press('Tab');
    await page.keyboard.type('energy for each of two fenders');
    await page.keyboard.press('Enter');
    const drafted = line(page, 'energy for each of two fenders');
    await drafted.getByText('no formula yet').waitFor();
    await cell(page, 'energy for each of two fenders', 'value').click();
    await page.locator('quay-side-panel .problem.waits').getByText('there is no formula yet').waitFor();
    await status(/^0 problems$/).waitFor();
    await page.keyboard.press('Control+Enter');
    await page.keyboard.type('E_3');
    await page.keyboard.press('Tab');
    await page.keyboard.type('energy of one in three');
    await page.keyboard.press('Tab');
    await page.keyboard.type('E_2 / 3');
    await page.keyboard.press('Enter');
    await line(page, 'energy of one in three')
      .getByText(/waits on/)
      .waitFor();
    expect(await line(page, 'energy of one in three').locator('.number').count()).toBe(0);
    await status(/^0 problems$/).waitFor();
  });
});

describe('the bars', () => {
  test('a hovered sheet keeps its state in sight beside its menu', async () => {
    await enter(page, 'least speed accepted for design', '0.2 m/s');
    const entry = page.locator('quay-sheet-list li').filter({ hasText: 'Berthing energy' });
    const state = entry.locator('.state');
    await expect.poll(() => state.textContent()).toMatch(/fails?$/);
    await entry.hover();
    const menu = entry.getByRole('button', { name: 'sheet menu' });
    await expect.poll(() => menu.evaluate((one) => getComputedStyle(one).opacity)).toBe('1');
    expect(await state.evaluate((one) => getComputedStyle(one).opacity)).toBe('1');
    const [stateBox, menuBox] = [await state.boundingBox(), await menu.boundingBox()];
    if (!stateBox || !menuBox) throw new Error('state or menu is not on the page');
    expect(stateBox.x + stateBox.width).toBeLessThanOrEqual(menuBox.x);
  });
});

test('the check that governs the sheet and a line by choice stay in sight while others are edited', async () => {
  const inSight = page.locator('quay-in-sight');
  const words = async () =>
    (await inSight.getByRole('button').allTextContents()).map((one) => one.replace(/\s+/g, ' ').trim());
  await cell(page, 'normal berthing energy', 'value').click();
  await page.getByRole('button', { name: 'follow below' }).click();
  await expect.poll(async () => (await words()).length).toBe(2);
  const [governing, kept] = await words();
  expect(governing).toMatch(/^governs .* holds$/);
  expect(kept).toMatch(/ = \S+ kN·m$/);
  await enter(page, 'speed, stated', '2 m/s');
  await expect.poll(async () => (await words())[1]).not.toBe(kept);
  await expect.poll(async () => (await words())[0]).toMatch(/ fails$/);
  await inSight.getByRole('button').nth(1).click();
  await expect.poll(inHand).toBe('normal berthing energy');
  await page.reload();
  await expect.poll(async () => (await words()).length).toBe(2);
  await cell(page, 'normal berthing energy', 'value').click();
  await page.getByRole('button', { name: 'followed below' }).click();
  await expect.poll(async () => (await words()).length).toBe(1);
  expect(await axeFindings(page)).toEqual([]);
});

test('the window keeps its height whatever the panel holds', async () => {
  await page.keyboard.press('Control+g');
  await page.keyboard.type('F_AB');
  await page.keyboard.press('Enter');
  await expect.poll(inHand).toBe('abnormal factor');
  const panel = await page.locator('quay-side-panel').evaluate((one) => one.scrollHeight);
  const [whole, window] = await page.evaluate(() => [document.scrollingElement?.scrollHeight, innerHeight]);
  expect(panel).toBeGreaterThan(window);
  expect(whole).toBe(window);
});
