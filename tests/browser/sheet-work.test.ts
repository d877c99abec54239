import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, cell, chooseFromMenu, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Berthing energy and fenders');
  await showSheet(page, 'Berthing energy');
});

const dialog = () => page.getByRole('dialog', { name: /^Details/ });
const value = (label: string) => cell(page, label, 'value');

describe('a number at or below 1 on a line of per cent', () => {
  test('is told with both readings, at one key each, and on the line until either is written out', async () => {
    const tolerance = 'how far they may be apart';
    await showSheet(page, 'Fender: energy and reaction');
    await value(tolerance).click();
    await page.keyboard.type('0.10');
    const note = page.locator('#note.warning');
    await expect.poll(() => note.textContent()).toMatch(/0\.10 is read as 0\.10 %, and would be 10 %/);
    expect(await note.getByRole('button').allTextContents()).toEqual([
      expect.stringMatching(/Alt\+Enter.*write 0\.10 %/s),
      expect.stringMatching(/write 10 %/),
    ]);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => line(page, tolerance).locator('.sentence').textContent())
      .toMatch(/would be 10 %/);
    await value(tolerance).click();
    await page.keyboard.type('0.1');
    await note.getByRole('button', { name: 'write 10 %' }).click();
    await page.keyboard.press('Enter');
    await expect.poll(() => line(page, tolerance).locator('.sentence').count()).toBe(0);
    expect(await value(tolerance).textContent()).toMatch(/^\s*10\b/);
  });
});

describe('what a line has beyond its cells', () => {
  test('the options of a choice are written, and chosen from', async () => {
    await showSheet(page, 'Design ship, water and added mass');
    await value('share of the deadweight on board').click();
    await chooseFromMenu(page, 'a choice');
    await page.keyboard.type('berth_of');
    await page.keyboard.press('Tab');
    await page.keyboard.type('berth the ship comes to');
    await page.keyboard.press('Enter');
    await value('berth the ship comes to').click();
    await chooseFromMenu(page, 'Details');
    const options = dialog().getByRole('textbox', { name: /^Options/ });
    expect(await options.inputValue()).toBe('yes\nno');
    await options.fill('4 = Berth 4, north\n5 = Berth 5, south');
    expect(await axeFindings(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Keep' }).click();
    // What was chosen is no option any more, and the line says so.
    await line(page, 'berth the ship comes to').locator('.sentence').waitFor();
    await value('berth the ship comes to').click();
    await page.keyboard.press('F2');
    await page.locator('quay-sheet').getByRole('option', { name: 'Berth 5, south' }).click();
    await expect.poll(() => value('berth the ship comes to').textContent()).toContain('Berth 5, south');
    expect(await line(page, 'berth the ship comes to').locator('.sentence').count()).toBe(0);
  });

  test('a check is read in another unit, and a unit that does not fit is told', async () => {
    const check = 'design speed is not too low';
    await value(check).click();
    await chooseFromMenu(page, 'Details');
    await dialog().getByRole('textbox', { name: 'Unit' }).fill('ft/s');
    await page.keyboard.press('Enter');
    await expect.poll(() => value(check).textContent()).toMatch(/0\.328\S*\sft\/s/);
    await chooseFromMenu(page, 'Details');
    await dialog().getByRole('textbox', { name: 'Unit' }).fill('kN');
    await page.keyboard.press('Enter');
    await line(page, check).locator('.sentence').waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => value(check).textContent()).toMatch(/0\.328\S*\sft\/s/);
  });

  test('words become a caution, then an open item that the overview lists', async () => {
    const words = page.locator('quay-words').filter({ hasText: 'Kinetic energy of the ship' }).first();
    for (const [role, margin] of [
      ['caution', 'Caution'],
      ['open item', 'Open'],
    ] as const) {
      await words.locator('.cell.text').click();
      await chooseFromMenu(page, 'What these words are');
      await dialog().getByRole('combobox', { name: 'These words are' }).selectOption(role);
      await dialog().getByRole('button', { name: 'Keep' }).click();
      await expect.poll(() => words.locator('.margin').textContent()).toBe(margin);
    }
    await page.getByRole('button', { name: 'All checks' }).click();
    const items = page.locator('quay-overview').getByRole('table', { name: 'Open items' });
    await items.getByRole('button', { name: /^Kinetic energy of the ship/ }).waitFor();
  });
});

describe('a chart, without a pointer', () => {
  const chart = (title: string) =>
    page
      .locator('quay-words')
      .filter({ has: page.locator('svg > title').filter({ hasText: new RegExp(`^${title}$`) }) });
  /** What heads the table that says the same as a chart. */
  const heads = (title: string) => chart(title).locator('th').allTextContents();

  async function goTo(words: string): Promise<void> {
    await page.keyboard.press('Control+g');
    await page.keyboard.type(words);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
  }

  /** Goes on in the dialog until this field has the focus. */
  async function tabTo(role: 'combobox' | 'checkbox' | 'button', name: string): Promise<void> {
    const field = dialog().getByRole(role, { name });
    for (let step = 0; step < 30; step += 1) {
      if (await field.evaluate((one) => one.matches(':focus'))) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab does not reach “${name}”`);
  }

  test('is put below a table, and made to draw bars of other columns', async () => {
    await goTo('Fenders on offer');
    await page.locator('quay-sheet').getByRole('heading', { name: 'Fender: energy and reaction' }).waitFor();
    await chooseFromMenu(page, 'a chart');
    await chart('Line chart of fenders').waitFor();
    expect(await heads('Line chart of fenders')).toEqual(['H height, mm', 'E_rated rated energy, kN·m']);
    await chooseFromMenu(page, 'Details');
    await tabTo('combobox', 'Form');
    await page.keyboard.type('bar');
    await tabTo('combobox', 'Over the column');
    await page.keyboard.type('size');
    await tabTo('checkbox', 'E_rated: rated energy');
    await page.keyboard.press('Space');
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => dialog().getByRole('alert').textContent())
      .toBe('no column of fenders is chosen to be drawn; choose at least one column of numbers');
    expect(await axeFindings(page)).toEqual([]);
    await tabTo('checkbox', 'R_rated: rated reaction');
    await page.keyboard.press('Space');
    await expect.poll(() => dialog().getByRole('alert').count()).toBe(0);
    await tabTo('button', 'Keep');
    await page.keyboard.press('Enter');
    await chart('Bar chart of fenders').waitFor();
    expect(await heads('Bar chart of fenders')).toEqual(['size', 'R_rated rated reaction, kN']);
    await page.keyboard.press('Control+z');
    await chart('Line chart of fenders').waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => chart('Line chart of fenders').count()).toBe(0);
  });

  test('is pointed at another table, and takes the columns usual there', async () => {
    const title = 'Design energy of one unit against speed';
    await goTo(title);
    await chart(title).waitFor();
    await chooseFromMenu(page, 'Details');
    await tabTo('combobox', 'Table');
    await page.keyboard.type('perf');
    await expect
      .poll(() => dialog().getByRole('combobox', { name: 'Over the column' }).inputValue())
      .toBe('d');
    expect(await dialog().getByRole('checkbox', { checked: true }).count()).toBe(1);
    await tabTo('button', 'Keep');
    await page.keyboard.press('Enter');
    await expect.poll(() => heads(title)).toEqual(['d deflection', 'r reaction']);
  });

  test('is refused on a sheet without a table', async () => {
    await goTo('least speed accepted for design');
    await chooseFromMenu(page, 'a chart');
    await page
      .getByText('a chart is drawn from a table, and sheet “Berthing energy” has none; insert a table first')
      .waitFor();
  });
});

describe('from one sheet to another', () => {
  test('an entry is cut and pasted where its unit fits, refused where not, and undo brings both back', async () => {
    await value('least speed accepted for design').click();
    await page.keyboard.press('Control+x');
    await expect
      .poll(() => value('least speed accepted for design').textContent())
      .toContain('to be entered');
    await showSheet(page, 'Fender: energy and reaction');
    await value('units in contact at once').click();
    const held = await value('units in contact at once').textContent();
    await page.keyboard.press('Control+v');
    await page.locator('quay-sheet .refusal:popover-open').waitFor();
    expect(await value('units in contact at once').textContent()).toBe(held);
    await showSheet(page, 'Berthing energy');
    await value('least speed accepted for design').click();
    await page.keyboard.press('Control+v');
    await expect.poll(() => value('least speed accepted for design').textContent()).toContain('0.08');
    await page.keyboard.press('Control+z');
    await expect
      .poll(() => value('least speed accepted for design').textContent())
      .toContain('to be entered');
    await page.keyboard.press('Control+z');
    await expect.poll(() => value('least speed accepted for design').textContent()).toContain('0.08');
  });

  test('whole lines are cut and pasted with their formulas', async () => {
    const moved = 'acceleration of gravity used by the weight form';
    await cell(page, moved, 'reference').click();
    await page.keyboard.press('Shift+End');
    await page.keyboard.press('Control+x');
    await expect.poll(() => line(page, moved).count()).toBe(0);
    await showSheet(page, 'Fender: energy and reaction');
    await value('units in contact at once').click();
    await page.keyboard.press('Control+v');
    await expect.poll(() => value(moved).textContent()).toContain('9.80665');
    expect(await line(page, moved).count()).toBe(1);
  });
});
