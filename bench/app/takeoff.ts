import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { type Book, chunksOfCells, openBook, type Table, writeBook } from '../../src/document/index.ts';
import { chooseFromMenu, showSheet } from '../../tests/browser/app-page.ts';
import { openBookFile } from '../../tests/browser/open-book-file.ts';
import { ROWS } from '../takeoff.ts';
import { type Keystroke, press, recordKeystrokes } from './recorder.ts';

/** What is done to the takeoff of the debris template at 100,000 rows. */
export interface TakeoffTimes {
  /** The keys that accept an entry into a cell. */
  readonly edits: readonly Keystroke[];
  readonly undos: readonly Keystroke[];
  /** From taking the rows of a file that was read to the frame that shows them, in ms. */
  readonly take: number;
}

const SHEET = 'Quantities and loads';

/** Opens the debris template with a long takeoff, edits cells in it, undoes, and takes as many rows from a file. */
export async function measureTakeoff(browser: Browser, address: string): Promise<TakeoffTimes> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await recordKeystrokes(page);
  await page.goto(address);
  await openBookFile(page, writeBook(await longTakeoff()));
  await showSheet(page, SHEET);
  await page.waitForTimeout(2500);
  const { edits, undos } = await editCells(page);
  const take = await takeRows(page);
  await context.close();
  return { edits, undos, take };
}

/** The template, its takeoff as long as it may become: the rows there again and again. */
async function longTakeoff(): Promise<Book> {
  const opened = openBook(await readFile('templates/debris-haul/book.quaybook.json', 'utf8'));
  if (!opened.ok) throw new Error(opened.problems[0]?.message);
  const { book } = opened.value;
  const longer = (table: Table): Table => ({
    ...table,
    length: ROWS,
    columns: table.columns.map((column) => {
      if (column.kind !== 'given') return column;
      const cells = column.chunks.flat();
      return {
        ...column,
        chunks: chunksOfCells(Array.from({ length: ROWS }, (_, row) => cells[row % cells.length] ?? null)),
      };
    }),
  });
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) =>
      part.kind === 'table' && part.name === 'takeoff' ? longer(part) : part,
    ),
  }));
  return { ...book, sheets };
}

async function editCells(page: Page): Promise<Pick<TakeoffTimes, 'edits' | 'undos'>> {
  const table = page.locator('quay-table').filter({ hasText: 'takeoff' }).first();
  const first = table.locator('[data-item="r1"] [data-field="c22"]');
  await first.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await first.click();
  const edits: Keystroke[] = [];
  for (const value of ['12', '15', '9', '18', '11', '13', '10', '8']) {
    await page.keyboard.type(value);
    edits.push(await press(page, 'Enter'));
  }
  const undos: Keystroke[] = [];
  for (const _ of edits) undos.push(await press(page, 'Control+z'));
  return { edits, undos };
}

async function takeRows(page: Page): Promise<number> {
  const title = page.locator('quay-table .part-title [data-field="title"]').filter({ hasText: 'takeoff' });
  await title.click();
  await chooseFromMenu(page, 'Paste or open CSV');
  const dialog = page.getByRole('dialog', { name: 'Rows from CSV or a spreadsheet' });
  await dialog.waitFor();
  const rows = Array.from(
    { length: ROWS },
    (_, row) => `item ${row},concrete,${100 + (row % 400)},${8 + (row % 12)}`,
  );
  const buffer = Buffer.from(['item,material,area (sf),thick (in)', ...rows].join('\n'));
  await dialog
    .locator('input[type="file"]')
    .setInputFiles({ name: 'takeoff.csv', mimeType: 'text/csv', buffer });
  const take = dialog.getByRole('button', { name: 'Take the rows' });
  await take.and(page.locator(':enabled')).waitFor();
  await take.focus();
  // However the rows are taken, they are when the dialog is gone and the frame after that has come.
  const taken = page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        addEventListener(
          'keydown',
          ({ timeStamp }) => {
            const look = (): void => {
              const open = document
                .querySelector('quay-app')
                ?.shadowRoot?.querySelector('quay-table-rows')
                ?.shadowRoot?.querySelector('dialog')?.open;
              if (open === true) requestAnimationFrame(look);
              else requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - timeStamp)));
            };
            requestAnimationFrame(look);
          },
          { capture: true, once: true },
        );
      }),
  );
  await page.waitForTimeout(200);
  await page.keyboard.press('Enter');
  return taken;
}
