import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { tell, toPaper } from './on-paper.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Quantities and loads');
});

const table = () => page.locator('quay-table').first();
const frame = () => table().locator('.table-frame');
const row = (item: string) => table().locator(`.table-row[data-item="${item}"]`);
const head = (symbol: string) => table().getByRole('columnheader').filter({ hasText: symbol });
const status = () => page.locator('quay-change-notice').getByRole('status');

async function box(of: Locator) {
  const found = await of.boundingBox();
  if (!found) throw new Error('it is not in sight');
  return { left: found.x, right: found.x + found.width, top: found.y, bottom: found.y + found.height };
}

/** The selected cell of a row of the table. */
const here = (item: string) => row(item).locator('[aria-selected="true"]');

describe('a table wider than the paper', () => {
  test('says how many columns lie at the right, and leads there with the pointer', async () => {
    const more = table().getByRole('button', { name: /more columns at the right/ });
    const before = Number.parseInt((await more.textContent()) ?? '', 10);
    const columns = await table().getByRole('columnheader').count();
    expect(before).toBeGreaterThan(0);
    expect(before).toBeLessThan(columns);
    expect(await frame().getAttribute('class')).toContain('goes-on');
    await more.click();
    await expect.poll(async () => Number.parseInt((await more.textContent()) ?? '', 10)).toBeLessThan(before);
  });

  test('keeps its first column in sight, and each cell the keys lead to', async () => {
    const first = row('r2').locator('[data-field]').first();
    await first.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    await first.click();
    const stays = await box(first);
    const paper = await box(frame());
    await page.keyboard.press('End');
    await expect
      .poll(() =>
        table()
          .getByRole('button', { name: /more column/ })
          .count(),
      )
      .toBe(0);
    expect(await frame().getAttribute('class')).toContain('scrolled');
    expect(await axeFindings(page)).toEqual([]);
    for (let steps = await row('r2').locator('[data-field]').count(); steps > 1; steps -= 1) {
      await expect.poll(async () => (await box(here('r2'))).left).toBeGreaterThanOrEqual(stays.right);
      const cell = await box(here('r2'));
      expect(cell.right).toBeLessThanOrEqual(paper.right);
      expect((await box(first)).left).toBe(stays.left);
      await page.keyboard.press('ArrowLeft');
      const field = await row('r2')
        .locator('[data-field]')
        .nth(steps - 2)
        .getAttribute('data-field');
      await expect.poll(() => here('r2').getAttribute('data-field')).toBe(field);
    }
    expect((await box(here('r2'))).left).toBe(stays.left);
  });

  test('on paper stands in bands, each with the first column, that together have every column', async () => {
    const columns = await table().locator('.head [data-field]').count();
    const paper = await toPaper(page);
    const bands = paper.locator('.printed-table').first().locator('table');
    await expect.poll(() => bands.count()).toBeGreaterThan(1);
    const titles: string[] = [];
    for (const band of await bands.all()) {
      const [first, ...others] = await band.locator('thead th').allTextContents();
      expect(first).toContain('item');
      titles.push(...others);
      const { right } = await box(paper.locator('.page'));
      expect((await box(band)).right).toBeLessThanOrEqual(right);
      expect(await band.locator('tbody tr').count()).toBe(5);
    }
    expect(titles).toHaveLength(columns - 1);
    expect(await frame().isVisible()).toBe(false);
    await tell(page, 'afterprint');
    await expect.poll(() => bands.count()).toBe(0);
  });
});

describe('the formula of a column', () => {
  test('opens from any of its cells, is tried in that row, and is changed in all', async () => {
    // The column of masses, in short tons.
    const cells = (item: string) => row(item).locator('[data-field="c32"]');
    await cells('r1').click();
    await page.keyboard.press('7');
    await page.getByText('states 7').waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('F2');
    await page.locator('quay-formula-field .cm-content').waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('thick * 12 (ST/in)');
    await page.locator('quay-formula-field').getByText('in row 2').waitFor();
    await page.keyboard.press('Enter');
    // Fourteen and four inches at twelve tons an inch.
    await expect.poll(() => cells('r1').textContent()).toBe('168');
    expect(await cells('r0').textContent()).toBe('48');
    await expect.poll(() => here('r2').count()).toBe(1);
  });
});

describe('what is deleted', () => {
  test('is told with the way back, until the next change', async () => {
    const columns = await table().getByRole('columnheader').count();
    await head('thickness').first().click();
    await page.keyboard.press('Shift+F10');
    await page.getByRole('menuitem', { name: 'Delete the column' }).click();
    await expect.poll(() => table().getByRole('columnheader').count()).toBe(columns - 1);
    await expect.poll(() => status().textContent()).toContain('column thick deleted; Ctrl+Z undoes it');
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => table().getByRole('columnheader').count()).toBe(columns);
    expect((await status().textContent())?.trim()).toBe('');
  });

  test('is told on its sheet alone, and what lost something by it on every sheet', async () => {
    await head('thickness').first().click();
    await page.keyboard.press('Shift+F10');
    await page.getByRole('menuitem', { name: 'Delete the column' }).click();
    await expect.poll(() => status().textContent()).toContain('deleted; Ctrl+Z undoes it');
    await page.keyboard.press('Control+PageDown');
    await expect
      .poll(async () => (await status().textContent())?.trim().replace(/\s+/g, ' '))
      .toMatch(/^3 lines lost what they used: \S/);
  });

  test('may be a sheet', async () => {
    await page
      .locator('quay-sheet-list')
      .getByRole('button', { name: 'Dust and water' })
      .click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Remove' }).click();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect.poll(() => status().textContent()).toContain('sheet Dust and water deleted');
  });
});

describe('a long table', () => {
  const rows = 2500;

  beforeEach(async () => {
    await page.locator('quay-sheet-list').getByRole('button', { name: 'Add a sheet' }).click();
    await page.keyboard.type('Survey');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'A table' }).click();
    await table().locator('.part-title .cell.title').click({ button: 'right' });
    await page.getByRole('menuitem', { name: 'Paste or open CSV' }).click();
    const lines = Array.from({ length: rows }, (_, at) => `point ${at + 1},${at + 1}`);
    await page.locator('input[type=file]').setInputFiles({
      name: 'survey.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(['item,quantity', ...lines, ''].join('\n')),
    });
    await page.getByRole('button', { name: 'Take the rows' }).click();
    await table().getByText('2500 rows').waitFor();
  });

  test('has each row the keys lead to below its head, up and down', async () => {
    await row('r0').locator('[data-field]').first().click();
    for (const [key, times, item] of [
      ['ArrowDown', 60, 'r60'],
      ['ArrowUp', 45, 'r15'],
    ] as const) {
      for (let step = 0; step < times; step += 1) await page.keyboard.press(key);
      await expect.poll(() => here(item).count()).toBe(1);
      // Keys are taken faster than frames are drawn on a busy machine: where it comes to rest counts.
      await expect
        .poll(async () => {
          const [cell, top, window] = [await box(here(item)), await box(row('head')), await box(frame())];
          return { below: cell.top >= top.bottom, above: cell.bottom <= window.bottom };
        })
        .toEqual({ below: true, above: true });
    }
  });

  test('is printed row by row up to a bound that is told, its head on every page', async () => {
    expect(await table().locator('.table-row:not(.head)').count()).toBeLessThan(100);
    const printed = (await toPaper(page)).locator('.printed-table');
    await expect.poll(() => printed.locator('tbody tr').count()).toBe(2000);
    expect(await printed.textContent()).toContain(
      'This table has 2500 rows; rows 1 to 2000 are printed; the table saved as CSV has all.',
    );
    expect(await printed.locator('tbody tr').last().textContent()).toContain('point 2000');
    const repeated = await printed.locator('thead').evaluate((element) => getComputedStyle(element).display);
    expect(repeated).toBe('table-header-group');
    await tell(page, 'afterprint');
    // As the browser's own print does: no script has a say between its command and the paper.
    const paper = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(paper.match(/\/Type \/Page\b/g)?.length).toBeGreaterThan(30);
  });
});
