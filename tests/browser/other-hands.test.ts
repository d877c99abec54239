import { describe, expect, test } from 'vitest';
import { axeFindings, cell, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

/** The colour of what an element has around or below it. */
const style = (selector: string, name: 'outlineStyle' | 'outlineWidth' | 'borderBottomWidth') =>
  page
    .locator(selector)
    .first()
    .evaluate((one, property) => getComputedStyle(one)[property], name);

describe.each([
  ['light', false],
  ['dark', true],
] as const)('with the colours of the system forced, %s', (_, dark) => {
  test('what is chosen is seen without its background, and axe finds nothing', async () => {
    await openPage({ forcedColors: true, dark });
    await page.getByRole('button', { name: 'Berthing energy and fenders', exact: true }).click();
    // On a background that is left out, its words must not have the paper's colour.
    const start = page.getByRole('button', { name: 'Start from this template' });
    const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(await start.evaluate((one) => getComputedStyle(one).color)).not.toBe(paper);
    await startFrom(page, 'Berthing energy and fenders');
    expect(await axeFindings(page)).toEqual([]);
    await showSheet(page, 'Berthing energy');
    expect(await style('quay-sheet-list li:has([aria-current="page"])', 'outlineStyle')).toBe('solid');
    expect(await style('quay-top-bar label:has(:checked)', 'borderBottomWidth')).toBe('2px');
    expect(await style('quay-top-bar label:not(:has(:checked))', 'borderBottomWidth')).toBe('0px');
    await cell(page, 'softness factor', 'value').click();
    await page.keyboard.press('Shift+ArrowDown');
    const selected = page.locator('.cell[aria-selected="true"]');
    expect(await selected.count()).toBeGreaterThan(1);
    for (const one of await selected.all())
      expect(await one.evaluate((element) => getComputedStyle(element).outlineWidth)).not.toBe('0px');
    await page.keyboard.press('Shift+F10');
    await page.getByRole('menuitem', { name: 'a given value' }).waitFor();
    expect(await style('quay-sheet-menu button:focus', 'outlineWidth')).toBe('2px');
  });
});

/** What can be touched and is smaller than 24 px one way, as words. */
function smallTargets(): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const look = (root: Document | ShadowRoot): void => {
      for (const one of root.querySelectorAll<HTMLElement>('*')) {
        if (one.shadowRoot) look(one.shadowRoot);
        const touched = 'button, a, input, select, textarea, summary, [role=option], [data-field]';
        if (!one.matches(touched) || !one.checkVisibility({ opacityProperty: true })) continue;
        // A label or a row that leads on is touched as a whole.
        const { width, height } = (one.closest('label, .goes') ?? one).getBoundingClientRect();
        if (Math.min(width, height) < 24)
          found.push(`${one.localName} “${one.textContent?.trim()}” ${width} × ${height}`);
      }
    };
    look(document);
    return found;
  });
}

describe('with fingers', () => {
  test('everything is large enough, and every menu is reached without hovering', async () => {
    await openPage({ touch: true, width: 1024, height: 768 });
    expect(await smallTargets()).toEqual([]);
    await page.getByRole('button', { name: 'Berthing energy and fenders', exact: true }).tap();
    await page.getByRole('button', { name: 'Start from this template' }).tap();
    await page.locator('quay-line').first().waitFor();
    await page.locator('quay-sheet-list').getByRole('button', { name: 'Berthing energy' }).tap();
    await line(page, 'softness factor').waitFor();
    expect(await smallTargets()).toEqual([]);

    const sheet = page.locator('quay-sheet-list li').filter({ hasText: 'Berthing energy' });
    await sheet.getByRole('button', { name: 'sheet menu' }).tap();
    await page.getByRole('menuitem', { name: 'Title, key and group' }).tap();
    await page.getByRole('textbox', { name: 'Title' }).waitFor();
    expect(await smallTargets()).toEqual([]);
    await page.getByRole('button', { name: 'Cancel' }).tap();

    await line(page, 'softness factor').getByRole('button', { name: 'menu of C_S' }).tap();
    await page.getByRole('menuitem', { name: 'Details' }).tap();
    await page.getByRole('dialog', { name: /^Details of/ }).waitFor();
    expect(await smallTargets()).toEqual([]);
    await page.getByRole('button', { name: 'Cancel' }).tap();

    await page
      .locator('quay-status-bar')
      .getByRole('button', { name: /problems/ })
      .tap();
    await page.getByText('No problem anywhere in the book.').waitFor();
    expect(await smallTargets()).toEqual([]);
  });

  test('a value is chosen with one tap, and opened with the next, however slow', async () => {
    await openPage({ touch: true, width: 1024, height: 768 });
    await startFrom(page, 'Berthing energy and fenders');
    await showSheet(page, 'Berthing energy');
    const value = cell(page, 'softness factor', 'value');
    await value.tap();
    await expect.poll(() => value.getAttribute('aria-selected')).toBe('true');
    await page.waitForTimeout(700);
    await value.tap();
    const field = value.getByRole('textbox');
    await field.fill('0.9');
    await field.press('Enter');
    await expect.poll(() => value.textContent()).toContain('0.9');
  });
});
