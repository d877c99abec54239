import { expect, test } from 'vitest';
import { axeFindings } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

const start = () => page.locator('quay-start-page');

test('a template is chosen by its sketch or its title, and each says what it answers', async () => {
  await openPage();
  const widths = await start()
    .locator('li .picture')
    .evaluateAll((all) =>
      Promise.all(
        all.map(async (one) => {
          const picture = new Image();
          picture.src = /url\("(.*)"\)/.exec(getComputedStyle(one).backgroundImage)?.[1] ?? '';
          await picture.decode();
          return picture.naturalWidth > 0;
        }),
      ),
    );
  expect(widths).toEqual([true, true, true, true]);
  expect(await start().locator('li p').allTextContents()).toEqual(
    expect.arrayContaining([expect.stringMatching(/\?$/)]),
  );
  await start().locator('li', { hasText: 'Bollard pull and mooring lines' }).locator('.picture').click();
  const chosen = start().getByRole('article').getByRole('heading');
  await expect.poll(() => chosen.textContent()).toBe('Bollard pull and mooring lines');
  await start().getByRole('button', { name: 'Berthing energy and fenders', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => chosen.textContent()).toBe('Berthing energy and fenders');
  await expect
    .poll(() =>
      start()
        .getByRole('button', { name: 'Start from this template' })
        .evaluate((one) => one.matches(':focus')),
    )
    .toBe(true);
  expect(await axeFindings(page)).toEqual([]);
});

test('a recent book is listed with its last change and how many sheets it has', async () => {
  await openPage();
  await page.getByRole('button', { name: 'New book' }).click();
  await page.locator('quay-sheet').waitFor();
  await page.goBack();
  await expect
    .poll(() => page.locator('quay-start-page #recent + ul li span').first().textContent())
    .toMatch(/^\d{4}-\d{2}-\d{2} \d{2}:\d{2} · 1 sheet$/);
});
