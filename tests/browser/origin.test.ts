import { beforeEach, expect, test } from 'vitest';
import { startedFrom } from '../../src/app/shipped/started-from.ts';
import { templateBook } from '../../src/cli/books.ts';
import {
  applyEdit,
  type Book,
  type Edit,
  removeSheet,
  setColumnField,
  writeBook,
} from '../../src/document/index.ts';
import { bringSheets, openNotebook } from '../../src/notebook/index.ts';
import { axeFindings, cell, drawn, line, resultOf, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

async function startDebris(): Promise<void> {
  await page.locator('quay-start-page').getByRole('button', { name: 'Demolition debris' }).dblclick();
  await page.locator('quay-sheet').waitFor();
}

const origin = () => page.locator('quay-origin-page');
const sheetList = () => page.locator('quay-sheet-list');

async function showOrigin(): Promise<void> {
  const button = sheetList().getByRole('button', { name: 'Origin', exact: true });
  await button.focus();
  await page.keyboard.press('Enter');
  await origin().getByRole('heading', { name: 'Origin', exact: true }).waitFor();
}

async function changeFormula(label: string, formula: string): Promise<void> {
  await cell(page, label, 'value').click();
  await page.keyboard.press('F2');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(formula);
  await page.keyboard.press('Enter');
  await drawn(page);
}

test('a changed formula is marked, shown beside what it was, and what a case fails through, by keyboard alone', {
  timeout: 180_000,
}, async () => {
  await startDebris();
  await showOrigin();
  await expect
    .poll(() => origin().getByRole('status').first().textContent())
    .toContain('Every line is as it came');
  expect(await axeFindings(page)).toEqual([]);
  await showSheet(page, 'Truck, loader and fleet');
  await changeFormula('truck cycle', 't_l + t_x + 2 * t_a');
  await line(page, 'truck cycle').getByRole('img', { name: 'not as it came: formula changed' }).waitFor();
  await cell(page, 'truck cycle', 'value').click();
  await expect
    .poll(() => page.locator('quay-side-panel dl.sides').textContent())
    .toMatch(/formula as it came.*formula here/s);
  await showOrigin();
  const lines = origin().getByRole('table', { name: 'Lines that are not as they came' });
  await expect.poll(() => lines.getByRole('row').filter({ hasText: 'truck cycle' }).count()).toBe(1);
  const run = origin().getByRole('button', { name: 'Run the cases' });
  await run.focus();
  await page.keyboard.press('Enter');
  await run.waitFor({ timeout: 120_000 });
  const cases = origin().getByRole('table', { name: 'Cases of the template' });
  await expect.poll(() => cases.getByRole('row').filter({ hasText: 'no longer' }).count()).toBeGreaterThan(0);
  await expect
    .poll(() => cases.getByRole('row').filter({ hasText: 'no longer' }).first().textContent())
    .toContain('haul.t_c');
  expect(await axeFindings(page)).toEqual([]);
  // It is open at sign-off.
  await sheetList().getByRole('button', { name: 'Signatures and revisions', exact: true }).click();
  await expect
    .poll(() => page.locator('quay-signing-page ul.open').textContent())
    .toMatch(/[1-9]\d* cases? of (a template that no longer agrees|templates that no longer agree)/);
  // Undone, nothing is marked.
  await page.keyboard.press('ControlOrMeta+z');
  await showOrigin();
  await expect
    .poll(() => origin().getByRole('status').first().textContent())
    .toContain('Every line is as it came');
  await expect.poll(() => origin().getByRole('status').last().textContent()).toContain('run them again');
});

test('the inputs of a case stand on the sheets, which says so on every page, and are taken back', {
  timeout: 120_000,
}, async () => {
  await startDebris();
  await showSheet(page, 'Truck, loader and fleet');
  const before = await resultOf(page, 'truck cycle');
  await showOrigin();
  const cases = origin().getByRole('table', { name: 'Cases of the template' });
  const put = cases.getByRole('button', { name: /^put on the sheets/ }).first();
  await put.waitFor();
  await put.focus();
  await page.keyboard.press('Enter');
  const note = page.locator('quay-example-note').getByRole('status');
  await note.waitFor();
  await expect.poll(() => cases.getByText('on the sheets', { exact: true }).count()).toBe(1);
  expect(await axeFindings(page)).toEqual([]);
  // Kept in the book, it is there after a reload too, when there is no step to undo.
  await page
    .getByText(/^all kept/)
    .first()
    .waitFor();
  await page.reload();
  await note.waitFor();
  await note.getByRole('button', { name: 'Take them back' }).click();
  await note.waitFor({ state: 'detached' });
  await showSheet(page, 'Truck, loader and fleet');
  expect(await resultOf(page, 'truck cycle')).toBe(before);
  await page.keyboard.press('ControlOrMeta+z');
  await note.waitFor();
});

/** Sheets of two templates in one book, without one of the first; the head of a column differs. */
function ofTwoTemplates(): Book {
  const applied = (book: Book, edit: Edit): Book => {
    const done = applyEdit(book, edit);
    if (!done.ok) throw new Error('not applied');
    return done.value.book;
  };
  const book = startedFrom(templateBook('debris-haul'), 'debris-haul');
  const other = openNotebook(startedFrom(templateBook('pile-bearing'), 'pile-bearing'));
  const brought = bringSheets(book, other, ['loads'], book.sheets.length);
  if (!brought.ok) throw new Error('not brought');
  const less = applied(applied(book, brought.value.edit), removeSheet('dust'));
  const table = less.sheets
    .find(({ key }) => key === 'haul')
    ?.parts.find((part) => part.kind === 'table' && part.name === 'speeds');
  const [column] = table?.kind === 'table' ? table.columns : [];
  if (!table || !column) throw new Error('no column');
  return applied(
    less,
    setColumnField({ sheet: 'haul', table: table.id, column: column.id }, 'label', 'called otherwise'),
  );
}

test('sheets of two templates have the cases of each, which can be stopped and end with the book', {
  timeout: 180_000,
}, async () => {
  await openBookFile(page, writeBook(ofTwoTemplates()));
  await showSheet(page, 'Truck, loader and fleet');
  await page
    .getByRole('columnheader', { name: 'called otherwise' })
    .getByRole('img', { name: 'not as it came: description changed' })
    .waitFor();
  await showOrigin();
  const lacking = origin().locator('.lacking li');
  await expect.poll(() => lacking.count()).toBe(2);
  expect(await lacking.first().textContent()).toContain('Dust');
  const loads = origin().getByRole('table', { name: /^Cases of the template .*pile/i });
  await loads.waitFor();
  expect(await origin().getByRole('table', { name: 'Cases of the template' }).count()).toBe(2);
  expect(await axeFindings(page)).toEqual([]);
  const runs = (): number => page.workers().filter((one) => /cases/.test(one.url())).length;
  await origin()
    .getByRole('radio', { name: /^all \d+ cases/ })
    .first()
    .check();
  await origin().getByRole('button', { name: 'Run the cases' }).first().click();
  const first = origin().locator('quay-template-cases').first();
  await expect
    .poll(() => first.getByRole('status').textContent(), { timeout: 60_000 })
    .toMatch(/[1-9]\d* of \d+ run/);
  expect(runs()).toBe(1);
  // Who leaves the page and comes back sees it go on.
  await page.locator('quay-sheet-list [data-sheet]').first().click();
  await page.locator('quay-sheet-list').getByRole('button', { name: 'Origin', exact: true }).click();
  const found = await first.getByRole('status').textContent();
  await expect.poll(() => first.getByRole('status').textContent(), { timeout: 30_000 }).not.toBe(found);
  expect(runs()).toBe(1);
  await first.getByRole('button', { name: 'Stop' }).click();
  await expect.poll(runs).toBe(0);
  const stopped = await first.getByRole('status').textContent();
  expect(stopped).toMatch(/\d+ of \d+ run/);
  await page.waitForTimeout(500);
  expect(await first.getByRole('status').textContent()).toBe(stopped);
  await first.getByRole('button', { name: 'Run the cases' }).click();
  await expect.poll(runs).toBe(1);
  await page.goto(`${page.url().replace(/#.*/, '')}#`);
  await page.locator('quay-start-page').waitFor();
  await expect.poll(runs).toBe(0);
});
