import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, cell, drawn, focusedWords, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
  await cell(page, spacing, 'value').click();
  await drawn(page);
});

const spacing = 'bent spacing';
const panel = () => page.locator('quay-side-panel');
const field = () => panel().getByLabel('Value to try');
const moved = () => panel().getByRole('list', { name: 'Checks that move' });
const told = () => panel().locator('.told');

/** What the book has for the bent spacing, on the sheet. */
async function inTheBook(): Promise<string> {
  await drawn(page);
  return ((await cell(page, spacing, 'value').textContent()) ?? '').trim();
}

/** The two values side by side: of the book, and tried. */
const sideBySide = () => panel().locator('.trial dd').allTextContents();

describe('another value is tried', () => {
  test('beside the book: both stand there, and every check that moves, of any sheet', async () => {
    await panel().getByRole('button', { name: 'Smaller' }).click();
    await expect.poll(sideBySide).toEqual(['20 ft', '19 ft']);
    // Three bents between fenders: 60 ft and 57 ft, of 0.15 × 202 m = 99.4 ft.
    await moved().getByText('60 % holds; tried: 57 % holds').waitFor();
    expect(await moved().getByText('Fender energy').count()).toBeGreaterThan(0);
    expect(await moved().getByText('Waterside pile').count()).toBeGreaterThan(0);
    expect(await inTheBook()).toBe('20');
    expect(await axeFindings(page)).toEqual([]);
    await panel().getByRole('button', { name: 'Smaller' }).click();
    await expect.poll(sideBySide).toEqual(['20 ft', '18 ft']);
    expect(await inTheBook()).toBe('20');
  });

  test('and dropped: the book has what it had, and says so until the next move', async () => {
    await field().fill('24 ft');
    await field().press('Enter');
    await expect.poll(sideBySide).toEqual(['20 ft', '24 ft']);
    await panel().getByRole('button', { name: 'Drop it' }).click();
    await expect.poll(() => told().textContent()).toContain('24 ft was tried and is dropped');
    expect(await told().textContent()).toContain('the book has 20 ft');
    expect(await moved().count()).toBe(0);
    expect(await inTheBook()).toBe('20');
    await cell(page, 'length of berths 4 and 5', 'value').click();
    await expect.poll(() => told().textContent()).toBe('');
  });

  test('and kept: one edit, which one undo takes back', async () => {
    for (let step = 0; step < 3; step += 1) await panel().getByRole('button', { name: 'Smaller' }).click();
    await expect.poll(sideBySide).toEqual(['20 ft', '17 ft']);
    await panel().getByRole('button', { name: 'Keep the value tried' }).click();
    await expect.poll(inTheBook).toBe('17');
    await expect.poll(() => told().textContent()).toContain('17 ft is in the book; Ctrl+Z takes it back');
    await cell(page, spacing, 'value').click();
    await page.keyboard.press('Control+z');
    await expect.poll(inTheBook).toBe('20');
    await page.keyboard.press('Control+z');
    expect(await inTheBook()).toBe('20');
  });

  test('by keyboard alone: typed, stepped, dropped with Escape', async () => {
    await page.keyboard.press('F6');
    for (let step = 0; step < 12 && !(await field().evaluate((one) => one.matches(':focus'))); step += 1)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('23');
    await page.keyboard.press('Enter');
    await expect.poll(sideBySide).toEqual(['20 ft', '23 ft']);
    await page.keyboard.press('ArrowUp');
    await expect.poll(sideBySide).toEqual(['20 ft', '24 ft']);
    await page.keyboard.press('Escape');
    await expect.poll(() => told().textContent()).toContain('24 ft was tried and is dropped');
    expect(await field().evaluate((one) => one.matches(':focus'))).toBe(true);
    expect(await inTheBook()).toBe('20');
  });

  test('of a choice: the options are those of the line', async () => {
    await showSheet(page, 'Fender energy');
    await cell(page, 'fender', 'value').click();
    await field().selectOption('1775 soft');
    await expect.poll(sideBySide).toEqual(['1635 soft', '1775 soft']);
    // 1407 and 1326 kN, × 1.1 × 1.08 × 1.05²: 1843 and 1737 kN of 404 kip = 1797 kN.
    await moved().getByText('103 % fails; tried: 97 % holds').waitFor();
    await panel()
      .getByText(/1 comes to hold/)
      .waitFor();
    expect(await cell(page, 'fender', 'value').textContent()).toContain('1635 soft');
  });

  test('and what the line cannot read, or what is beyond its range, is said', async () => {
    await field().fill('5 kip');
    await field().press('Enter');
    await panel().getByRole('alert').waitFor();
    expect(await sideBySide()).toEqual([]);
    await field().fill('60 ft');
    await field().press('Enter');
    await expect.poll(sideBySide).toEqual(['20 ft', '60 ft']);
    expect(await panel().locator('.trial .warning').textContent()).toContain('40 ft');
    expect(await panel().getByRole('alert').count()).toBe(0);
  });
});

describe('a trial that is left is dropped with a word', () => {
  beforeEach(async () => {
    await panel().getByRole('button', { name: 'Smaller' }).click();
    await expect.poll(sideBySide).toEqual(['20 ft', '19 ft']);
  });

  test('for another line', async () => {
    await cell(page, 'length of berths 4 and 5', 'value').click();
    await expect
      .poll(() => told().textContent())
      .toContain('19 ft was tried and is dropped, for you left the line');
    expect(await inTheBook()).toBe('20');
  });

  test('for another sheet', async () => {
    await showSheet(page, 'Fender energy');
    await expect.poll(() => told().textContent()).toContain('the book has 20 ft');
    await showSheet(page, 'Existing wharf');
    expect(await inTheBook()).toBe('20');
  });

  test('for an edit of the book', async () => {
    await cell(page, spacing, 'label').click();
    await page.keyboard.type('bent spacing, old');
    await page.keyboard.press('Enter');
    await expect.poll(() => told().textContent()).toMatch(/19 ft was tried and is dropped/);
    await drawn(page);
    expect((await cell(page, 'bent spacing, old', 'value').textContent())?.trim()).toBe('20');
  });

  test('for the start page, and the book opens again with what it had', async () => {
    const address = page.url();
    await page.getByRole('button', { name: 'Quaybook' }).click();
    await page.getByRole('heading', { name: 'Templates' }).waitFor();
    await page
      .getByText(/19 ft was tried and is dropped, for you left the book; the book has 20 ft/)
      .waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.goto(address);
    await page.locator('quay-line').first().waitFor();
    expect(await inTheBook()).toBe('20');
  });

  test('for a reload', async () => {
    await page.reload();
    await page.locator('quay-line').first().waitFor();
    expect(await inTheBook()).toBe('20');
    expect(await focusedWords(page)).not.toContain('19');
  });
});

test('a book of giant tables is not computed beside itself, and says what to do instead', async () => {
  await page.goto(page.url().replace(/#.*$/, ''));
  await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
  const rows = 60_000;
  const chunks = Array.from({ length: Math.ceil(rows / 1024) }, (_, at) =>
    Array.from({ length: Math.min(1024, rows - at * 1024) }, () => 1),
  );
  const book = {
    format: 'quaybook',
    version: 3,
    title: {
      project: '',
      subject: 'Giant',
      job: '',
      client: '',
      prepared: '',
      checked: '',
      date: '',
      revision: '',
    },
    settings: { system: 'SI', currency: 'USD', units: [], datums: [] },
    sheets: [
      {
        key: 's',
        title: 'Rows',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [{ id: 'a', kind: 'given', name: 'a', label: 'factor', entry: '2', unit: '-' }],
          },
          {
            id: 't',
            kind: 'table',
            name: 'long',
            length: rows,
            columns: [{ id: 'c', kind: 'given', name: 'c', unit: 'm', chunks }],
          },
        ],
      },
    ],
    review: { handValues: [], seen: [], comments: [], signOffs: [], revisions: [], bases: [] },
  };
  const chooser = page.waitForEvent('filechooser');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  await page.getByRole('button', { name: 'Open a file' }).click();
  await (await chooser).setFiles({
    name: 'giant.quaybook.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(book)),
  });
  await page.locator('quay-line').first().waitFor();
  await cell(page, 'factor', 'value').click();
  await panel().getByRole('button', { name: 'Larger' }).click();
  await expect.poll(() => panel().getByRole('alert').textContent()).toContain('have 60000 cells');
  expect(await sideBySide()).toEqual([]);
});
