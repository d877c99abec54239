import { readFile } from 'node:fs/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import {
  axeFindings,
  cell,
  chooseFromMenu,
  drawn,
  line,
  resultOf,
  showSheet,
  startFrom,
} from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Axial capacity of a waterside crane pile');
});

const dialog = () => page.getByRole('dialog', { name: 'A new sheet' });
const list = () => page.locator('quay-sheet-list');

/** Opens the dialog that brings sheets, and says from where. */
async function addFrom(source: string): Promise<void> {
  await list().getByRole('button', { name: 'Add a sheet' }).click();
  await dialog().getByRole('radio', { name: source }).check();
}

/** Brings sheets of a template: all, or those named alone. */
async function bringTemplate(name: string, sheets?: readonly string[]): Promise<void> {
  await addFrom('from a template');
  await dialog().getByRole('combobox', { name: 'Template' }).selectOption({ label: name });
  await dialog().getByRole('group', { name: 'Sheets to bring' }).waitFor();
  if (sheets) {
    await dialog().getByRole('button', { name: 'none' }).click();
    for (const sheet of sheets) await dialog().getByRole('checkbox', { name: sheet }).check();
  }
  await dialog()
    .getByRole('button', { name: /^Add( \d+ sheets)?$/ })
    .click();
  await dialog().waitFor({ state: 'hidden' });
}

const titles = () => list().locator('[data-sheet] span:first-child').allTextContents();
const status = () => page.locator('quay-status-bar');

describe('sheets of a template', () => {
  test('are brought in one step, which undo takes back and redo brings again', async () => {
    const before = await titles();
    await addFrom('from a template');
    await dialog().getByRole('combobox').selectOption({ label: 'Berthing energy and fenders' });
    await expect
      .poll(() => dialog().getByRole('status').textContent())
      .toContain('All that they take from one another comes along.');
    expect(await axeFindings(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Add 7 sheets' }).click();
    await page
      .locator('quay-sheet')
      .getByRole('heading', { name: 'Design ship, water and added mass' })
      .waitFor();
    await expect.poll(async () => (await titles()).length).toBe(before.length + 7);
    await page.keyboard.press('Control+z');
    await expect.poll(titles).toEqual(before);
    await page.keyboard.press('Control+y');
    await expect.poll(async () => (await titles()).length).toBe(before.length + 7);
    await page.reload();
    await page.locator('quay-line').first().waitFor();
    await expect.poll(async () => (await titles()).length).toBe(before.length + 7);
  });

  test('chosen alone hold what they take from the others, to be linked', async () => {
    await bringTemplate('Berthing energy and fenders', ['Fender: energy and reaction']);
    await page.locator('quay-sheet').getByRole('heading', { name: 'Fender: energy and reaction' }).waitFor();
    await status()
      .getByRole('button', { name: /to be linked$/ })
      .click();
    const table = page.locator('quay-overview').getByRole('table', { name: 'Linked values' });
    await expect.poll(() => table.textContent()).toContain('of “Berthing energy and fenders”');
    await table.getByRole('button').first().click();
    await expect
      .poll(() => page.locator('quay-line .to-link').first().textContent())
      .toContain('to be linked');
  });

  test('bring what their template says of itself, and cautions only where they belong', async () => {
    const cautions = () => page.locator('quay-side-panel .caution').allTextContents();
    const ofPile = await cautions();
    await bringTemplate('Berthing energy and fenders');
    await drawn(page);
    const ofFender = await cautions();
    expect(ofPile.length).toBeGreaterThan(0);
    expect(ofFender.length).toBeGreaterThan(0);
    expect(ofFender.filter((words) => ofPile.includes(words))).toEqual([]);
    await list().getByRole('button', { name: 'Purpose, limits and cautions' }).click();
    const about = page.locator('quay-about-page');
    await about.getByRole('heading', { name: 'Sheets from “Berthing energy and fenders”' }).waitFor();
    await about.getByRole('heading', { name: 'Sheets of this book itself' }).waitFor();
    for (const words of [ofPile[0], ofFender[0]]) await about.getByText(words ?? '').waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });
});

test('a sheet of lines and tables that is shown stands as it did under another key', async () => {
  const menu = async (at: 'first' | 'last', words: string) => {
    const found = list().getByRole('button', { name: /^Demand and checks/ });
    await found[at]().click({ button: 'right' });
    await page.getByRole('menuitem', { name: words }).click();
  };
  await menu('first', 'Duplicate');
  await page.locator('quay-sheet').getByRole('heading', { name: 'Demand and checks, copy' }).waitFor();
  const lines = () => page.locator('quay-sheet [role="rowgroup"]').allTextContents();
  const before = await lines();
  await menu('last', 'Title, key and group');
  await page.getByRole('textbox', { name: /^Key/ }).fill('rowB');
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.getByRole('textbox', { name: /^Key/ }).waitFor({ state: 'hidden' });
  await drawn(page);
  expect(await lines()).toEqual(before);
});

test('sheets of a saved file are brought, and a file that is no book is refused', async () => {
  // The picker of the browser cannot be answered by a program; without one the page asks through a file input.
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  const before = await titles();
  await addFrom('from a file');
  const choose = async (text: string): Promise<void> => {
    const asked = page.waitForEvent('filechooser');
    await dialog().getByRole('button', { name: 'Choose a file' }).click();
    const buffer = Buffer.from(text);
    await (await asked).setFiles({ name: 'book.quaybook.json', mimeType: 'application/json', buffer });
  };
  await choose('{"format": "quaybook", "version": 2}');
  await expect.poll(() => dialog().getByRole('alert').textContent()).toContain('that book cannot be opened');
  await choose(
    await readFile(new URL('../../templates/bollard-pull/book.quaybook.json', import.meta.url), 'utf8'),
  );
  await dialog().getByRole('button', { name: 'Add 8 sheets' }).click();
  await expect.poll(async () => (await titles()).length).toBe(before.length + 8);
});

test('sheets of another book kept here are brought', async () => {
  const before = await titles();
  await page.goto(page.url().replace(/#.*/, '#'));
  await startFrom(page, 'Bollard pull and mooring lines');
  await addFrom('from a book kept here');
  const kept = dialog().getByRole('combobox', { name: 'Book' });
  await kept.selectOption({ index: 1 });
  await dialog()
    .getByRole('button', { name: `Add ${before.length} sheets` })
    .click();
  await expect.poll(async () => (await titles()).length).toBe(before.length + 8);
});

describe('the load of a pile', () => {
  const linkDialog = () => page.getByRole('dialog', { name: /take the value from$/ });
  const links = () => page.locator('quay-overview').getByRole('table', { name: 'Linked values' });

  /** Puts a given line below the one that is chosen, with neither value nor unit yet. */
  async function addGiven(name: string, label: string): Promise<void> {
    await chooseFromMenu(page, 'a given value');
    await page.keyboard.type(name);
    await page.keyboard.press('Tab');
    await page.keyboard.type(label);
    await page.keyboard.press('Enter');
    await line(page, label).waitFor();
  }

  test('comes from the fender and the bollard beside it, by keyboard, and is unlinked again', {
    timeout: 240_000,
  }, async () => {
    await bringTemplate('Berthing energy and fenders');
    await bringTemplate('Bollard pull and mooring lines');
    await showSheet(page, 'Demand and checks');
    await cell(page, 'earthquake, per pile, up or down', 'value').click();
    await addGiven('H_f', 'lateral load from the fender');
    await addGiven('H_b', 'lateral load from the bollard');
    const link = async (label: string, words: string, option: RegExp): Promise<void> => {
      await cell(page, label, 'value').click();
      await chooseFromMenu(page, 'Take the value from a line');
      await linkDialog().getByRole('combobox').waitFor();
      // Nothing is chosen before anything is typed.
      expect(await linkDialog().getByRole('button', { name: 'Link' }).isDisabled()).toBe(true);
      // What the wharf is held to stands behind all that is calculated.
      await page.keyboard.type('reaction');
      await linkDialog().getByRole('option', { selected: true }).waitFor();
      const listed = await linkDialog().getByRole('option').allTextContents();
      const limit = listed.findIndex((one) => one.includes('the wharf can take at one fender'));
      expect(listed.findLastIndex((one) => one.includes('reaction of one unit into the wharf'))).toBeLessThan(
        limit,
      );
      await linkDialog().getByRole('combobox').fill('');
      await page.keyboard.type(words);
      await linkDialog().getByRole('option', { name: option, selected: true }).waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await page.keyboard.press('Enter');
      await linkDialog().waitFor({ state: 'hidden' });
    };
    await link(
      'lateral load from the fender',
      'reaction of one unit into',
      /reaction of one unit into the wharf/,
    );
    await link('lateral load from the bollard', 'largest pull from', /largest pull from the sharing/);
    const fender = cell(page, 'lateral load from the fender', 'value');
    await expect.poll(() => fender.textContent()).toContain('from Fender: energy and reaction:');
    const linked = await resultOf(page, 'lateral load from the fender');
    await showSheet(page, 'Fender: energy and reaction');
    expect(await resultOf(page, 'reaction of one unit into the wharf')).toBe(linked);
    await status().getByRole('button', { name: '2 linked' }).click();
    await expect
      .poll(() => links().textContent())
      .toMatch(/reaction of one unit.*largest pull from the sharing/s);
    // All that was done is undone and done again, and is there when the page is loaded anew.
    for (let step = 0; step < 12; step += 1) await page.keyboard.press('Control+z');
    await expect.poll(async () => (await titles()).length).toBe(4);
    for (let step = 0; step < 12; step += 1) await page.keyboard.press('Control+y');
    await status().getByRole('button', { name: '2 linked' }).waitFor();
    await page.reload();
    await page.locator('quay-line').first().waitFor();
    await status().getByRole('button', { name: '2 linked' }).click();
    await links().getByRole('button', { name: 'lateral load from the fender' }).click();
    await page.locator('quay-side-panel').getByRole('button', { name: 'Take the link off' }).click();
    await status().getByRole('button', { name: '1 linked' }).waitFor();
    // It holds the value it had, with every digit of it.
    const held = Number.parseFloat((await fender.textContent()) ?? '');
    expect(held.toPrecision(4)).toBe(Number(linked).toPrecision(4));
  });
});

describe('lines and parts copied into another book', () => {
  test('come with what they take from elsewhere, to be linked', { timeout: 120_000 }, async () => {
    await showSheet(page, 'Demand and checks');
    await cell(page, 'dead', 'reference').click();
    await page.keyboard.press('Shift+End');
    await page.keyboard.press('Control+c');
    await page.goto(page.url().replace(/#.*/, '#'));
    await startFrom(page, 'Bollard pull and mooring lines');
    await cell(page, 'steepest vertical angle', 'value').click();
    await page.keyboard.press('Control+v');
    await line(page, 'dead').waitFor();
    await expect.poll(() => resultOf(page, 'dead')).toBe('157.5');
    await expect
      .poll(() => cell(page, 'dead load of the deck', 'reference').textContent())
      .toContain('to be linked');
    await status()
      .getByRole('button', { name: /to be linked$/ })
      .waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => line(page, 'dead').count()).toBe(0);
  });

  test('cells of whole lines come as lines to a sheet of their book that has nothing yet', async () => {
    await showSheet(page, 'Demand and checks');
    await cell(page, 'dead', 'name').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+End');
    await page.keyboard.press('Control+c');
    const value = await resultOf(page, 'dead');
    await list().getByRole('button', { name: 'Add a sheet' }).click();
    await dialog().getByRole('button', { name: 'Add' }).click();
    await dialog().waitFor({ state: 'hidden' });
    await page.locator('quay-sheet').focus();
    await page.keyboard.press('Control+v');
    await expect.poll(() => page.locator('quay-sheet quay-line').count()).toBe(2);
    expect(await resultOf(page, 'dead')).toBe(value);
  });

  test('a whole sheet is copied with its words, tables and pictures', { timeout: 120_000 }, async () => {
    await showSheet(page, 'Tables of factors');
    await page.locator('quay-sheet [data-field]').first().click();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+c');
    const shown = await page.locator('quay-sheet h3').allTextContents();
    await page.goto(page.url().replace(/#.*/, '#'));
    await startFrom(page, 'Bollard pull and mooring lines');
    await list().getByRole('button', { name: 'Add a sheet' }).click();
    await dialog().getByRole('button', { name: 'Add' }).click();
    await page.locator('quay-sheet').focus();
    await page.keyboard.press('Control+v');
    await expect.poll(() => page.locator('quay-sheet h3').allTextContents()).toEqual(shown);
    await status().getByRole('button', { name: '0 problems' }).waitFor();
  });
});
