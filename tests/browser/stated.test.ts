import { mkdirSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { blankBook, writeBook } from '../../src/document/index.ts';
import { axeFindings, cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

const text = writeBook({
  ...blankBook(),
  sheets: [
    {
      key: 's',
      title: 'Stated',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'b', kind: 'given', name: 'b', label: 'width', entry: '3', unit: 'm' },
            {
              id: 'w',
              kind: 'calc',
              name: 'w',
              label: 'load',
              formula: 'b * 2 (kN/m)',
              unit: 'kN',
              stated: { entry: '8', reason: 'client’s letter of 3 May' },
            },
            {
              id: 'n',
              kind: 'calc',
              name: 'n',
              label: 'unknown',
              formula: 'nosuch * 2',
              unit: 'kN',
              stated: { entry: '4', reason: '' },
            },
            {
              id: 'c',
              kind: 'check',
              name: 'c',
              label: 'load check',
              formula: 'w <= 10 kN',
              unit: 'kN',
              stated: { capacity: { entry: '7 kN', reason: 'client’s criteria' } },
            },
          ],
        },
        {
          id: 't',
          kind: 'table',
          name: 't',
          length: 3,
          columns: [
            { id: 'h', kind: 'given', name: 'h', label: 'height', unit: 'm', chunks: [[1, 2, 3]] },
            {
              id: 'v',
              kind: 'calc',
              name: 'v',
              label: 'double',
              formula: 'h * 2',
              unit: 'm',
              stated: [{ row: 2, entry: '10', reason: 'measured' }],
            },
          ],
        },
      ],
    },
  ],
});

withBrowser();
beforeEach(async () => {
  await openPage();
  const chooser = page.waitForEvent('filechooser');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  await page.getByRole('button', { name: 'Open a file' }).click();
  const file = { name: 'stated.quaybook.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await (await chooser).setFiles(file);
  await page.locator('quay-line').first().waitFor();
  await drawn(page);
});

const words = async (label: string): Promise<string> =>
  ((await cell(page, label, 'value').textContent()) ?? '').replace(/\s+/g, ' ').trim();
const rowTexts = (): Promise<readonly string[]> =>
  page.locator('quay-table [data-item^=r] .cell[data-field=v]').allTextContents();

test('the page says what is stated, with the reason and what is computed', async () => {
  expect(await words('load')).toContain('8');
  expect(await words('load')).toContain('stated: client’s letter of 3 May; computed 6 kN, difference +2 kN');
  expect(await words('load')).not.toContain('= 8');
  expect(await words('unknown')).toContain('4');
  expect(await words('unknown')).toContain('stated: the reason is open; computed no value');
  expect(await words('load check')).toContain('fails');
  expect(await words('load check')).toContain(
    'capacity stated: client’s criteria; computed 10 kN, difference −3 kN',
  );
  for (const note of await page.locator('.sentence.stated').all()) {
    const box = await note.boundingBox();
    expect(box?.height).toBeLessThan(60);
  }
  await expect.poll(rowTexts).toEqual(['2', '10stated', '6']);
  await cell(page, 'load', 'value').click();
  await page.locator('quay-side-panel').getByText('stated: client’s letter of 3 May').waitFor();
  expect(await axeFindings(page)).toEqual([]);
  const folder = process.env.QUAYBOOK_SCREENS;
  if (folder) {
    mkdirSync(folder, { recursive: true });
    await page.screenshot({ path: `${folder}/stated.png` });
  }
});

test('an edit elsewhere and a row put in above leave what is stated as it is', async () => {
  await cell(page, 'width', 'value').click();
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('load')).toContain('computed 10 kN, difference −2 kN');
  await page.locator('quay-table [data-item^=r] .cell[data-field=h]').first().click();
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(rowTexts).toEqual(['10stated', '2', '6']);
  await page.keyboard.press('Control+z');
  await expect.poll(rowTexts).toEqual(['2', '10stated', '6']);
});
