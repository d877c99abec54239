import { beforeEach, expect, test } from 'vitest';
import { cell, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Axial capacity of a waterside crane pile');
  await showSheet(page, 'Pile and soil');
});

const outside = 'outside diameter or side';

async function openLink(): Promise<void> {
  await page.locator('quay-side-panel').getByRole('button', { name: 'Take the value from a line' }).click();
}

const windows: Readonly<Record<string, () => Promise<void>>> = {
  'go to': () => page.keyboard.press('Control+g'),
  keys: () => page.keyboard.press('F1'),
  link: openLink,
  'go to, with nothing found': async () => {
    await page.keyboard.press('Control+g');
    await page.keyboard.type('zzzz');
  },
};

test.each(Object.keys(windows))(
  'while the window of “%s” is open no key reaches the sheet behind it',
  async (name) => {
    const value = cell(page, outside, 'value');
    await value.click();
    const before = await value.textContent();
    await windows[name]?.();
    const dialog = page.locator('dialog[open]');
    await dialog.waitFor();
    for (let tab = 0; tab < 9; tab += 1) {
      await page.keyboard.press('Tab');
      const isIn = await dialog.evaluate(
        (element) => element.matches(':focus-within') || element.matches(':focus'),
      );
      // Behind the last field the focus may stand on nothing for a moment, and a key then only brings it back.
      if (!isIn) await page.keyboard.press('7');
    }
    // As after a browser that has lost the focus altogether.
    await page.evaluate(() => {
      let active: Element | null | undefined = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      if (active instanceof HTMLElement) active.blur();
    });
    await page.keyboard.press('3');
    await page.keyboard.press('Control+z');
    expect(await dialog.evaluate((element) => element.matches(':focus-within'))).toBe(true);
    expect(await page.locator('quay-sheet quay-cell-editor').count()).toBe(0);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await value.textContent()).toBe(before);
    await value.click();
    await page.keyboard.type('37');
    expect(await page.locator('quay-sheet quay-cell-editor').count()).toBe(1);
  },
);

test('a dialog that goes with its book leaves the keys to the next one', async () => {
  await page.keyboard.press('Control+g');
  await page.locator('dialog[open]').waitFor();
  await page.goBack();
  await page.getByRole('button', { name: 'Berthing energy and fenders', exact: true }).waitFor();
  await startFrom(page, 'Berthing energy and fenders');
  const value = page.locator('quay-line.given [data-field="value"]').first();
  await value.click();
  await page.evaluate(() => {
    let active: Element | null | undefined = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    if (active instanceof HTMLElement) active.blur();
  });
  await page.keyboard.type('3');
  expect(await page.locator('quay-sheet quay-cell-editor').count()).toBe(1);
});
