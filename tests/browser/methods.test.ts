import { mkdirSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, tableOf, texts } from '../make-book.ts';
import { axeFindings, cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

const text = writeBook(
  bookOf({
    s: [
      blockOf(
        'p',
        {
          ...choice('rule', { value: 'API', label: 'α of API' }, { value: 'USACE', label: 'α of USACE' }),
          label: 'clay rule',
        },
        { ...given('w', '2 m', 'm'), label: 'width' },
        calc('a', {
          label: 'friction',
          unit: 'm',
          by: 'rule',
          methods: [
            { id: 'api', for: ['API'], formula: '2*w', reference: 'API RP 2GEO' },
            { id: 'usace', for: ['USACE'], formula: '3*w', reference: 'EM 1110-2-2906' },
          ],
        }),
      ),
      {
        ...tableOf(
          't',
          3,
          { ...texts('k', ['clay', 'sand', 'clay']), label: 'soil' },
          calcColumn('v', {
            label: 'unit friction',
            unit: 'm',
            by: 'k',
            methods: [
              { id: 'c', for: ['clay'], formula: 'w + 1 m', reference: 'A' },
              { id: 's', for: ['sand'], formula: '10*w', reference: 'B' },
            ],
          }),
        ),
        title: 'Layers',
      },
    ],
  }),
);

withBrowser();
beforeEach(async () => {
  await openPage();
  const chooser = page.waitForEvent('filechooser');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  await page.getByRole('button', { name: 'Open a file' }).click();
  const file = { name: 'methods.quaybook.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await (await chooser).setFiles(file);
  await page.locator('quay-line').first().waitFor();
  await drawn(page);
});

const words = async (label: string, field = 'value'): Promise<string> =>
  ((await cell(page, label, field).textContent()) ?? '').replace(/\s+/g, ' ').trim();
const rowTexts = (): Promise<readonly string[]> =>
  page.locator('quay-table [data-item^=r] .cell[data-field=v]').allTextContents();

test('a line shows the method in force, its reference and what it is for, and another choice changes it', async () => {
  expect(await words('friction')).toContain('method for “α of API”');
  expect(await words('friction')).toContain('4');
  expect(await words('friction', 'reference')).toBe('API RP 2GEO');
  await cell(page, 'friction', 'value').click();
  await page.locator('quay-side-panel').getByText('Other methods (1)').click();
  await page.locator('quay-side-panel').getByText('EM 1110-2-2906').waitFor();
  const folder = process.env.QUAYBOOK_SCREENS;
  if (folder) {
    mkdirSync(folder, { recursive: true });
    await page.screenshot({ path: `${folder}/methods.png` });
  }
  expect(await axeFindings(page)).toEqual([]);
  await cell(page, 'clay rule', 'value').click();
  await page.keyboard.press('Enter');
  await page.keyboard.type('USACE');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('friction')).toContain('method for “α of USACE”');
  expect(await words('friction', 'reference')).toBe('EM 1110-2-2906');
});

test('a formula edited on the line is that of the method in force', async () => {
  await cell(page, 'friction', 'value').click();
  await page.keyboard.press('F2');
  await page.locator('quay-formula-field').waitFor();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('5*w');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('friction')).toContain('10');
  expect(await words('friction')).toContain('method for “α of API”');
  await page.keyboard.press('Control+z');
  await expect.poll(() => words('friction')).toContain('4');
});

test('a column shows each method that is used with its rows', async () => {
  const folder = process.env.QUAYBOOK_SCREENS;
  if (folder) await page.screenshot({ path: `${folder}/methods-column.png` });
  await expect.poll(rowTexts).toEqual(['3', '20', '3']);
  const shown = await words('unit friction');
  expect(shown).toContain('method for “clay”, rows 1, 3: A');
  expect(shown).toContain('method for “sand”, row 2: B');
  // One below the other, neither over the other.
  const [first, second] = await Promise.all(
    [0, 1].map((at) => cell(page, 'unit friction', 'value').locator('.method').nth(at).boundingBox()),
  );
  expect((first?.y ?? 0) + (first?.height ?? 0)).toBeLessThanOrEqual(second?.y ?? 0);
  expect(await words('unit friction', 'reference')).toBe('A; B');
});

test('a column whose methods are for different rows says where they are typed, and takes nothing without a word', async () => {
  const own = cell(page, 'unit friction', 'value');
  const refusal = page.locator('quay-sheet .refusal');
  for (const key of ['F2', '4', 'Enter']) {
    await own.click();
    await page.keyboard.press(key);
    await expect
      .poll(() => refusal.textContent())
      .toMatch(/^v has a method for each kind of row; F2 on a cell/);
    expect(await refusal.isVisible()).toBe(true);
    expect(await page.locator('.edited').count()).toBe(0);
    await cell(page, 'width', 'value').click();
    await expect.poll(() => refusal.isVisible()).toBe(false);
  }
});

test('a range drawn from a heading marks the headings in it, as they are cleared with the rest', async () => {
  const at = (item: string) => page.locator(`quay-table [data-item="${item}"] [data-field="k"]`);
  await at('head').click();
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => at('r0').getAttribute('aria-selected')).toBe('true');
  expect(await at('head').getAttribute('aria-selected')).toBe('true');
  expect(
    await page.locator('quay-table [data-item="head"] [data-field="v"]').getAttribute('aria-selected'),
  ).toBe('false');
});
