import { describe, expect, test } from 'vitest';
import { axeFindings, cell, drawn, focusedWords, line, resultOf, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { toPaper } from './on-paper.ts';

withBrowser();

const open = async (width = 1440): Promise<void> => {
  await openPage({ width });
  await startFrom(page, 'Berthing energy and fenders');
  await showSheet(page, 'Berthing energy');
};

const note = () => page.locator('#note');
const offer = () => note().getByRole('button', { name: /make this line/ });
const described = (label: string) => line(page, label);
const foot = (words: string) => page.locator('.block-foot').last().getByRole('button', { name: words });

/** Writes the description of the new line that the person is on, and goes to its value. */
async function describeNewLine(label: string): Promise<void> {
  await page.keyboard.press('Tab');
  await page.keyboard.type(label);
  await page.keyboard.press('Tab');
  await drawn(page);
}

describe('what is typed on a line of the other kind', () => {
  test('a formula on a given makes it a calculated line by one key, and undo gives the given back', async () => {
    await open();
    const label = 'speed, stated';
    const before = await cell(page, label, 'value').textContent();
    await cell(page, label, 'value').click();
    await page.keyboard.type('=2 * V_B');
    await expect.poll(() => offer().textContent()).toMatch(/Alt\+Enter.*calculated line/s);
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Alt+Enter');
    await described(label).locator('.calculation').waitFor();
    expect(await page.locator('quay-cell-editor').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => cell(page, label, 'value').textContent()).toBe(before);
  });

  test('a value on a calculated line makes it a given by the mouse', async () => {
    await open();
    const label = 'energy to design the fender for';
    await cell(page, label, 'value').click();
    await page.keyboard.press('F2');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('700 kJ');
    await offer().click();
    await expect.poll(() => described(label).locator('.entry').textContent()).toMatch(/700/);
    expect(await page.locator('quay-cell-editor').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => described(label).locator('.entry').count()).toBe(0);
    expect(await resultOf(page, label)).toBe('696.8');
  });
});

describe('at the foot of a block', () => {
  test('a line is added, and what is typed makes it a given or a calculated line', async () => {
    await open();
    const lines = await page.locator('quay-line').count();
    await foot('add a line').click();
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 1);
    await describeNewLine('twice the energy');
    await page.keyboard.type('=2 * E_A');
    await expect.poll(() => note().textContent()).toMatch(/= 1394/);
    await page.keyboard.press('Enter');
    // Twice 696.8 kN·m, as the line above it shows.
    await expect.poll(() => resultOf(page, 'twice the energy')).toBe('1394');
    await foot('add a line').click();
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 2);
    await describeNewLine('energy agreed');
    await page.keyboard.type('640 kJ');
    await page.keyboard.press('Enter');
    await expect.poll(() => described('energy agreed').locator('.entry').textContent()).toMatch(/640/);
    await page.keyboard.press('Control+Enter');
    await describeNewLine('half of it');
    await page.keyboard.type('=E_A / 2');
    await expect
      .poll(() => note().textContent())
      .toMatch(/= 348\.4.*Enter makes this line a calculated line/s);
    await page.keyboard.press('Enter');
    await expect.poll(() => resultOf(page, 'half of it')).toBe('348.4');
  });

  test('below a choice Ctrl+Enter puts a line that takes what is typed', async () => {
    await open();
    await page.locator('quay-line.choice [data-field="value"]').first().click();
    await page.keyboard.press('Escape');
    const lines = await page.locator('quay-line').count();
    await page.keyboard.press('Control+Enter');
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 1);
    await describeNewLine('two and a half');
    await page.keyboard.type('=1 m + 1.5 m');
    await page.keyboard.press('Enter');
    await expect.poll(() => resultOf(page, 'two and a half')).toBe('2.5');
  });

  test('something else is chosen from a menu that offers no change of the line above', async () => {
    await open();
    await foot('add something else').click();
    const items = (await page.getByRole('menuitem').allTextContents()).map((words) => words.trim());
    expect(items).toEqual(expect.arrayContaining(['a check', 'a table', 'a text']));
    expect(items.join()).not.toMatch(/Delete|Duplicate|Move/);
    await page.getByRole('menuitem', { name: 'a table', exact: true }).click();
    await page.locator('quay-table').waitFor();
  });

  test('the last one of the page is reached by Tab behind the last cell, and pressed with Enter', async () => {
    await open();
    const lines = await page.locator('quay-line').count();
    await page.locator('quay-line').last().locator('[data-field="value"]').click();
    // Behind the value stands the unit.
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await expect.poll(() => focusedWords(page)).toBe('add a line');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 1);
    await describeNewLine('by keys alone');
    await described('by keys alone').waitFor();
  });

  test.each([700, 1024, 1440])(
    'stand in sight at %i px, as large as a finger needs, and not on paper',
    async (width) => {
      await open(width);
      await foot('add a line').scrollIntoViewIfNeeded();
      const box = await foot('add a line').boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(24);
      expect(await foot('add a line').evaluate((one) => getComputedStyle(one).opacity)).toBe('1');
      await toPaper(page);
      await expect.poll(() => page.locator('.block-foot').filter({ visible: true }).count()).toBe(0);
      await expect.poll(() => page.getByText('add a column').filter({ visible: true }).count()).toBe(0);
    },
  );
});

describe('at the foot of a table', () => {
  test('a column is added at its right end, and its heading is the next to be typed', async () => {
    await open();
    await showSheet(page, 'Tables');
    const table = page.locator('quay-table').first();
    const heads = table.getByRole('columnheader');
    const before = await heads.count();
    await table.getByRole('button', { name: 'add a column' }).click();
    await expect.poll(() => heads.count()).toBe(before + 1);
    await page.keyboard.type('remark');
    await page.keyboard.press('Enter');
    await expect.poll(() => heads.last().textContent()).toMatch(/remark/);
    expect(await axeFindings(page)).toEqual([]);
  });
});
