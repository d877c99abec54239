import { expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, given } from '../make-book.ts';
import { cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { tell, toPaper } from './on-paper.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

const check = {
  id: 'c',
  kind: 'check',
  name: 'c_w',
  label: 'width of the wall',
  formula: 'w <= 1 m',
} as const;
const book = writeBook(
  bookOf({
    wall: [
      blockOf(
        'p',
        { ...given('t', '30', 'mm'), label: 'thickness', range: { min: '5', max: '20' } },
        given('a', '10', 'mm'),
        calc('w', 'MAX(t; 100 mm)'),
        check,
        { ...check, id: 'd', name: 'c_a', label: 'gap', formula: 'a <= 1 m' },
      ),
    ],
  }),
);
const says = 'rests on t beyond its permitted range';
const line = () => page.locator('quay-line').filter({ hasText: 'width of the wall' });
const counts = () =>
  page
    .locator('quay-status-bar')
    .getByRole('button', { name: /^\d.* checks? / })
    .textContent();

test('a check that rests on a value beyond its range says so on its sheet, in the panel, in the list of all checks, at the foot and on paper', async () => {
  await openPage();
  await openBookFile(page, book);
  await drawn(page);
  expect(await line().textContent()).toContain(says);
  expect(await page.locator('quay-line').filter({ hasText: 'gap' }).textContent()).not.toContain('rests on');
  expect((await counts())?.trim()).toBe('1 of 2 checks hold, 1 beyond a permitted range');
  await cell(page, 'width of the wall', 'value').click();
  await expect.poll(() => page.locator('quay-side-panel').getByText(says).count()).toBe(1);
  expect(await page.locator('quay-side-panel .value').textContent()).toContain('holds, beyond range');
  expect(await (await toPaper(page)).locator('quay-line').getByText(says).isVisible()).toBe(true);
  await tell(page, 'afterprint');
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize({ width: 1440, height: 900 });
  await page
    .locator('quay-status-bar')
    .getByRole('button', { name: /^\d.* checks? / })
    .click();
  const row = page.locator('quay-overview tr').filter({ hasText: 'width of the wall' });
  expect(await row.textContent()).toContain(says);
  expect(await row.locator('.verdict .holds').count()).toBe(0);
});

test('the mark comes and goes with the value, though nothing the check compares has changed', async () => {
  await openPage();
  await openBookFile(page, book);
  await cell(page, 'thickness', 'value').click();
  await page.keyboard.type('12');
  await page.keyboard.press('Enter');
  await expect.poll(() => line().textContent()).not.toContain('rests on');
  await expect.poll(counts).toContain('2 checks hold');
  await page.keyboard.press('Control+z');
  await expect.poll(() => line().textContent()).toContain(says);
});

test('in a narrow window the list of all checks keeps within its paper, demand and capacity below what they are of', async () => {
  const long = { ...check, id: 'e', name: 'c_E', label: 'design energy within the energy that is available' };
  const large = bookOf({
    wall: [blockOf('p', given('E', '1363145.25', 'kN·m'), { ...long, formula: 'E <= 80743000.5 (kN*m)' })],
  });
  await openPage({ width: 1024, height: 800 });
  await openBookFile(page, writeBook(large));
  await page
    .locator('quay-status-bar')
    .getByRole('button', { name: /^\d.* checks? / })
    .click();
  const row = page.locator('quay-overview tr').filter({ hasText: 'design energy' });
  await row.waitFor();
  expect(await row.textContent()).toMatch(/demand 1\D?363\D?145\skN·m,\s*capacity/);
  const widths = await page.locator('quay-overview').evaluate(({ shadowRoot }) => {
    const [paper, table] = ['.page', 'table'].map((one) => shadowRoot?.querySelector(one)?.clientWidth ?? 0);
    const symbol = shadowRoot?.querySelector('td.name')?.getBoundingClientRect().left ?? 0;
    const paperLeft = shadowRoot?.querySelector('.page')?.getBoundingClientRect().left ?? 0;
    return { paper, table, margin: symbol - paperLeft };
  });
  expect(widths.table).toBeLessThanOrEqual(widths.paper ?? 0);
  // The margin of the paper is 108 px wide there.
  expect(widths.margin).toBeGreaterThanOrEqual(107);
});
