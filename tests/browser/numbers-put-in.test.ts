import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../make-book.ts';
import { axeFindings, cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { toPaper } from './on-paper.ts';
import { openBookFile } from './open-book-file.ts';

/** Seven piles: N is 10 to 70 kN, each 2 m; the stress of the last is the greatest, and row 3 is stated. */
const book = bookOf({
  s: [
    blockOf(
      'p',
      { ...given('q', '4 kN/m', 'kN/m'), label: 'line load' },
      { ...calc('total', { formula: 'SUM(piles.N)', unit: 'kN' }), label: 'all loads' },
      { ...calc('u_max', { formula: 'MAX(piles.u)', unit: '-' }), label: 'greatest use' },
      {
        ...calc('N_q', { formula: 'INTERPOLATE(2.5 m; curve.d; curve.F)', unit: '-' }),
        label: 'bearing factor',
      },
    ),
    {
      ...tableOf(
        'piles',
        7,
        { ...numbers('N', 'kN', [10, 20, 30, 40, 50, 60, 70]), label: 'load' },
        { ...numbers('L', 'm', [2, 2, 2, 2, 2, 2, 2]), label: 'length' },
        {
          ...calcColumn('u', { formula: 'N / (q * L)', unit: '-', label: 'use' }),
          stated: [{ row: 3, entry: '5', reason: 'letter' }],
        },
      ),
      title: 'Piles',
    },
    {
      ...tableOf(
        'curve',
        3,
        { ...numbers('d', 'm', [1, 2, 4]), label: 'depth' },
        { ...numbers('F', '-', [10, 20, 40]), label: 'factor' },
      ),
      title: 'Curve',
    },
  ],
});

withBrowser();
beforeEach(async () => {
  await openPage();
  await openBookFile(page, writeBook(book));
  await drawn(page);
});

/** A text without its spaces: those between a number and its unit are drawn, not written. */
const plain = (text: string | null | undefined): string => (text ?? '').replace(/[\s\u2061]+/g, '');
/** What the panel shows with the numbers put in. */
const inPanel = async (): Promise<string> =>
  plain(await page.getByRole('group', { name: 'Formula with numbers' }).textContent());
/** What the line of the page with this description shows below its formula. */
test('the panel has the numbers of the row of a column that is chosen, and names it', async () => {
  const inRow = (row: number) => page.locator(`.table-row[data-item="r${row}"] [data-field="u"]`).first();
  await inRow(1).click();
  await expect.poll(inPanel).toBe('row2=20kN4kN/m×2m=2.50');
  await inRow(2).click();
  await expect.poll(inPanel).toBe('row3=30kN4kN/m×2m=3.75stated:5.00');
  expect(await axeFindings(page)).toEqual([]);
});

test('the panel has the first terms of an aggregate, how many more there are, and the row that governs', async () => {
  await cell(page, 'all loads', 'value').click();
  await expect.poll(inPanel).toBe('=10kN+20kN+30kN+…4more');
  await cell(page, 'greatest use', 'value').click();
  await expect.poll(inPanel).toBe('=max(1.25;2.5;5;8.75;…3more)greatestinrow7ofpiles:8.75');
});

test('paper has the numbers of the row that governs below each formula of a table, and says which it is', async () => {
  const paper = await toPaper(page, 'full');
  const onPage = async (label: string): Promise<string> => {
    const described = page.locator('[data-field="label"]').getByText(label, { exact: true });
    return plain(
      await paper.locator('quay-line').filter({ has: described }).locator('.worked').textContent(),
    );
  };
  await expect.poll(() => onPage('use')).toBe('row7,whichgivesumax=70kN4kN/m×2m=8.75');
  expect(await onPage('greatest use')).toBe('=max(1.25;2.5;5;8.75;…3more)greatestinrow7ofpiles:8.75');
  expect(await onPage('bearing factor')).toBe(
    '=20+(40−20)×(2.5m−2m)4m−2m2.5mbetweenrow2(2m;20)androw3(4m;40)ofcurve',
  );
});
