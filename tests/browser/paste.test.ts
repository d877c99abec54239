import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, cell, drawn, line, resultOf, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();

const dialog = () => page.getByRole('dialog', { name: /CSV/ });
const found = () => dialog().getByRole('status').textContent();
const told = (words: string | RegExp) => page.locator('quay-change-notice').getByText(words).waitFor();
const table = () => page.locator('quay-table').first();
const rows = () => table().locator('.table-row:not(.head)');
/** The cell of a row of the takeoff (from 0), by the name of its column. */
const columns = ['item', 'material', 'area', 'thick', 'V_s'];
const at = (row: number | 'head', column: string) =>
  table()
    .locator(`[data-item="${row === 'head' ? row : `r${row}`}"] [data-field]`)
    .nth(columns.indexOf(column));
const texts = async (column: string) => {
  await drawn(page);
  const count = await rows().count();
  return Promise.all(
    Array.from({ length: count }, async (_, row) => (await at(row, column).textContent())?.trim()),
  );
};

async function paste(text: string): Promise<void> {
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await page.keyboard.press('Control+v');
}

/** Drops a file on an element, as another program does. */
async function drop(on: Locator, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([called, words]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([words], called));
      return transfer;
    },
    [name, text] as const,
  );
  await on.dispatchEvent('drop', { dataTransfer: data });
}

/** The rows that the dialog shows of the columns of a text: header, first value, unit, taken as, sum. */
const shown = async (header: string) => ((await row(header).textContent()) ?? '').replace(/\s+/g, ' ');
const row = (header: string) =>
  dialog()
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: header, exact: true }) });

beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Quantities and loads');
});

describe('onto a table', () => {
  test('a foreign heading on a heading is asked, with the unit it states and what comes of it', async () => {
    const heading = await at('head', 'thick').textContent();
    await at('head', 'thick').click();
    await paste('Thk (mm)\n100\n350\n400');
    await dialog().waitFor();
    expect(await texts('thick')).not.toContain('100');
    await dialog().getByRole('combobox', { name: '“Thk (mm)” goes to' }).selectOption('thick');
    // 100 mm is 3.937 in, and 850 mm are 33.46 in.
    await expect.poll(() => shown('Thk (mm)')).toContain('3.937');
    expect(await shown('Thk (mm)')).toContain('33.46');
    await expect.poll(found).toContain('3 rows are taken; 4 cells: 1 heading, 3 taken');
    expect(await axeFindings(page)).toEqual([]);
    expect(await dialog().getByRole('radio', { name: 'over the rows from row 1 on' }).isChecked()).toBe(true);
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await told(/3 rows pasted.*4 cells: 1 heading, 3 taken/);
    expect((await texts('thick')).slice(0, 3)).toEqual(['100 mm', '350 mm', '400 mm']);
    expect(await at('head', 'thick').textContent()).toBe(heading);
    expect(await rows().count()).toBe(5);
  });

  test('numbers on a heading make rows and stay in the table', async () => {
    const others = await page.locator('quay-line').allTextContents();
    await at('head', 'thick').click();
    await paste('4\n5\n6\n7\n8\n9\n10');
    await told(/7 rows \(2 of them new\) pasted.*7 cells: 7 taken/);
    expect(await texts('thick')).toEqual(['4', '5', '6', '7', '8', '9', '10']);
    const now = await page.locator('quay-line').allTextContents();
    expect(now.length).toBe(others.length);
  });

  test('foreign headings are asked, and figures keep the unit they state', async () => {
    await at(0, 'item').click();
    await paste('Element\tFloor area (m2)\tBuild-up\ndeck east\t250\tasphalt\ndeck west\t410\tasphalt');
    await dialog().waitFor();
    await dialog().getByRole('combobox', { name: '“Element” goes to' }).selectOption('item');
    await dialog().getByRole('combobox', { name: '“Floor area (m2)” goes to' }).selectOption('area');
    await dialog().getByRole('combobox', { name: '“Build-up” goes to' }).selectOption('-');
    // 1 m² is 10.7639 sf.
    await expect.poll(() => shown('Floor area (m2)')).toMatch(/2691.*7104/);
    await expect.poll(found).toContain('9 cells: 2 headings, 4 taken, 3 left out');
    await dialog().getByRole('radio', { name: 'stays in its row' }).check();
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(() => texts('area').then((all) => all.slice(0, 2))).toEqual(['250 m^2', '410 m^2']);
    await page.keyboard.press('Control+z');
    await expect.poll(() => at(0, 'item').textContent()).not.toContain('deck east');
  });

  test('where the rows go is what was chosen, also from the title', async () => {
    await table().locator('.part-title').click();
    await paste('item\tmaterial\tV_s\tfrom\nX\tconcrete\t5\tvolume');
    await dialog().waitFor();
    const names = ['over the rows from row 1 on', 'in place of the rows there', 'behind the rows there'];
    for (const name of [...names, ...names.toReversed()]) {
      await dialog().getByRole('radio', { name }).click();
      for (const other of names)
        expect(await dialog().getByRole('radio', { name: other }).isChecked()).toBe(other === name);
    }
  });

  test('items called otherwise over those there are asked what becomes of what other columns hold of them', async () => {
    const thick = await texts('thick');
    await at('head', 'item').click();
    await paste('item\tarea\nslab north\t700\nslab south\t800');
    await dialog().waitFor();
    const takes = dialog().getByRole('button', { name: 'Take the rows' });
    await dialog()
      .getByRole('group', { name: /^What “.*hold in these rows$/ })
      .waitFor();
    expect(await takes.isDisabled()).toBe(true);
    // What stands in the way leads to the question.
    await dialog().getByRole('button', { name: 'Not yet: say what becomes of the other columns' }).click();
    await page.keyboard.press('Space');
    expect(await dialog().getByRole('radio', { name: 'goes with the item of that name' }).isChecked()).toBe(
      true,
    );
    await dialog()
      .getByText('0 of 2 rows find their item; new, and blank there: “slab north” and “slab south”')
      .waitFor();
    expect(await takes.isDisabled()).toBe(false);
    await dialog().getByRole('radio', { name: 'stays in its row' }).check();
    await dialog()
      .getByText('“slab north” gets that of “asphalt paving”; “slab south” gets that of “base course”.')
      .waitFor();
    const folder = process.env.QUAYBOOK_SCREENS;
    if (folder) await page.screenshot({ path: `${folder}/other-columns.png` });
    await dialog().getByRole('radio', { name: 'in place of the rows there' }).check();
    expect(await takes.isDisabled()).toBe(false);
    await dialog().getByRole('radio', { name: 'over the rows from row 1 on' }).check();
    await dialog().getByRole('radio', { name: 'goes: these cells become blank' }).check();
    await dialog()
      .getByText(/^Blank they count as /)
      .waitFor();
    if (folder) await page.screenshot({ path: `${folder}/other-columns-go.png` });
    await takes.click();
    await told(
      /2 rows pasted; .* (?:is|are) blank now in these rows; 3 rows below stay; 6 cells: 2 headings, 4 taken/,
    );
    // A blank thickness counts as none.
    expect((await texts('thick')).slice(0, 2)).toEqual(['0', '0']);
    expect((await texts('thick')).slice(2)).toEqual(thick.slice(2));
    await page.keyboard.press('Control+z');
    await expect.poll(() => texts('thick')).toEqual(thick);
  });

  test('a list without headings is shown from its beginning, and it is asked whether its first row is data', async () => {
    await at('head', 'item').click();
    const rows = Array.from({ length: 40 }, (_, row) => `slab ${row + 1}\tconcrete\t${row + 700}\t12\tarea`);
    await paste(rows.join('\n'));
    await dialog().waitFor();
    const field = dialog().getByRole('textbox', { name: 'Rows' });
    await expect
      .poll(() => field.evaluate((one: HTMLTextAreaElement) => [one.selectionStart, one.scrollTop]))
      .toEqual([0, 0]);
    await dialog()
      .getByText('The first row has numbers, and few of its cells name a column: is the first row data?')
      .waitFor();
    await dialog().getByRole('button', { name: 'Cancel' }).click();
  });

  test('a revised list takes what other columns hold along with its items', async () => {
    const before = await texts('thick');
    await at('head', 'item').click();
    await paste('item\tarea\ndeck slab\t700\nasphalt paving\t800');
    await dialog().waitFor();
    await dialog().getByRole('radio', { name: 'goes with the item of that name' }).check();
    await dialog()
      .getByText(/^2 of 2 rows find their item; gone with what they hold: “base course”\./)
      .waitFor();
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await told(/2 rows pasted; .*“thickness”.* follow their items?; 2 rows below stay;/);
    // The row of the deck slab, which the list has, is not there twice.
    expect(await rows().count()).toBe(4);
    expect((await texts('thick')).slice(0, 2)).toEqual([before[2], before[0]]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => texts('thick')).toEqual(before);
  });

  test('a file dropped on a cell, and then on the dialog, is read', async () => {
    await drop(at(1, 'area'), 'takeoff.csv', 'item;material;V_s m3;from\nDalle;concrete;1234,5;volume');
    await dialog().waitFor();
    await expect.poll(() => shown('V_s m3')).toContain('1234,5');
    await drop(dialog().getByRole('textbox', { name: 'Rows' }), 'other.csv', 'item;V_s m3\nPoutre;7');
    await expect.poll(() => shown('V_s m3')).toContain('7');
    expect(await dialog().getByRole('textbox', { name: 'Rows' }).inputValue()).toContain('Poutre');
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    const before = await page.locator('quay-line').allTextContents();
    await drop(page.locator('quay-line [data-field="value"]').first(), 'one.csv', '12 ft');
    await page.getByText('drop the file on a table, or on a blank sheet').waitFor();
    expect(await page.locator('quay-line').allTextContents()).toEqual(before);
    await drop(at(1, 'area'), 'old.quaybook.json', '{}');
    await page.getByText('old.quaybook.json was not opened: a book is opened from the start page').waitFor();
  });

  test('under SI a bare number is in the unit shown, pasted or opened as CSV', async () => {
    await page.locator('quay-top-bar').getByText('SI', { exact: true }).click();
    const text = 'item\tV_s\nasphalt paving\t100';
    await at(0, 'item').click();
    await paste(text);
    await told(/1 row pasted/);
    // The numbers of a column share their decimals on the screen.
    await expect.poll(() => at(0, 'V_s').textContent()).toMatch(/^100(\.0+)?$/);
    await table().locator('.part-title .cell.title').click();
    await page.keyboard.press('Shift+F10');
    await page.getByRole('menuitem', { name: 'Paste or open CSV' }).click();
    await dialog().waitFor();
    await paste(text);
    await expect.poll(() => shown('V_s')).toContain('100 m³');
    expect(await dialog().getByRole('textbox', { name: 'unit of “V_s”' }).getAttribute('placeholder')).toBe(
      'm³',
    );
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    await page.locator('quay-top-bar').getByText('as written', { exact: true }).click();
    await expect.poll(() => at(0, 'V_s').textContent()).toMatch(/^100 m(³|\^3)$/);
  });

  test('cells pasted into a half-typed cell are cells, and what was typed is a step of its own', async () => {
    await at(0, 'area').click();
    const before = await texts('area');
    await page.keyboard.type('3');
    await paste('7\n8\n');
    await told(/2 rows pasted/);
    expect((await texts('area')).slice(0, 2)).toEqual(['7', '8']);
    await page.keyboard.press('Control+z');
    await expect.poll(() => texts('area').then(([first]) => first)).toBe('3');
    await page.keyboard.press('Control+z');
    await expect.poll(() => texts('area')).toEqual(before);
    await at(0, 'item').click();
    await page.keyboard.type('xy');
    await paste('item,material,V_s (m3)\nslab,concrete,100\ncaps,concrete,12,5');
    await dialog().waitFor();
    expect((await texts('item'))[0]).toBe('xy');
  });

  test('one line with line ends is pasted into what is being typed without them', async () => {
    await at(0, 'item').click();
    await page.keyboard.type('pile ');
    await paste('\r\ncaps\r\n');
    await page.keyboard.type('!');
    await page.keyboard.press('Enter');
    await expect.poll(() => texts('item').then(([first]) => first)).toBe('pile caps!');
  });

  test('lines of different lengths are asked with their commas, and never become names', async () => {
    const before = await texts('item');
    await at(0, 'item').click();
    await paste('item,material,V_s (cy)\nslab,concrete,120\ncaps,concrete,2,500');
    await dialog().waitFor();
    expect(await dialog().getByRole('radio', { name: 'commas' }).isChecked()).toBe(true);
    expect(await texts('item')).toEqual(before);
  });

  test('digits that may be split are asked, never thousands by silence', async () => {
    await at(0, 'area').click();
    await paste('1,250');
    await dialog().waitFor();
    expect(await texts('area')).not.toContain('1,250');
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    await at(0, 'area').click();
    await paste('12,385\n101,220');
    await dialog().waitFor();
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    expect(await texts('area')).not.toContain('12,385');
  });

  test('one copied value fills the cells selected, and a copied range pastes back equal', async () => {
    await at(0, 'thick').click();
    await page.keyboard.press('Control+c');
    await at(1, 'thick').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+v');
    await expect.poll(async () => new Set((await texts('thick')).slice(0, 4)).size).toBe(1);
    const before = await Promise.all(columns.map(texts));
    await at(0, 'item').click();
    await page.keyboard.press('Shift+ArrowDown');
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+c');
    await at(0, 'item').click();
    await page.keyboard.press('Control+v');
    await told(/2 rows pasted/);
    expect(await Promise.all(columns.map(texts))).toEqual(before);
  });

  test('over a range a text that is asked of begins at its first row and column, whichever end moves', async () => {
    await at(0, 'thick').click();
    await page.keyboard.press('Shift+ArrowDown');
    await paste('4,5\n15,5');
    await dialog().waitFor();
    expect(await dialog().getByRole('radio', { name: 'over the rows from row 1 on' }).isChecked()).toBe(true);
    await expect.poll(found).toContain('2 rows are taken; 2 cells: 2 taken');
    const third = (await texts('thick'))[2];
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(async () => (await texts('thick')).slice(0, 3)).toEqual(['4.5', '15.5', third]);
    await page.keyboard.press('Control+z');

    const volumes = await texts('V_s');
    await at(1, 'area').click();
    await page.keyboard.press('Shift+ArrowRight');
    await paste('4,5\t6,5\n15,5\t7,5');
    await dialog().waitFor();
    await expect.poll(found).toContain('2 rows are taken; 4 cells: 4 taken');
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(async () => (await texts('area')).slice(1, 3)).toEqual(['4.5', '15.5']);
    expect((await texts('thick')).slice(1, 3)).toEqual(['6.5', '7.5']);
    expect(await texts('V_s')).toEqual(volumes);
  });

  test('one number over cells fills them all whichever way its decimals are read', async () => {
    await at(0, 'thick').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await paste('7,5');
    await dialog().waitFor();
    expect(await dialog().getByText('What parts the cells of a line').count()).toBe(0);
    expect(
      await dialog().getByRole('radio', { name: 'repeated over the 3 cells selected' }).isChecked(),
    ).toBe(true);
    await expect.poll(found).toContain('1 cell repeated over 3 cells: 3 taken.');
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(async () => (await texts('thick')).slice(0, 3)).toEqual(['7.5', '7.5', '7.5']);
    await told(/1 cell repeated over 3 cells: 3 taken/);
    await page.keyboard.press('Control+z');

    await at(0, 'thick').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowRight');
    await paste('1,250');
    await expect.poll(found).toContain('can be 1250 or 1.250');
    expect(await dialog().getByText('What parts the cells of a line').count()).toBe(0);
    await dialog().getByRole('radio', { name: 'a comma' }).check();
    await expect.poll(found).toContain('1 cell repeated over 4 cells: 4 taken.');
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(async () => (await texts('V_s')).slice(0, 2)).toEqual(['1.250', '1.250']);
    expect((await texts('thick')).slice(0, 2)).toEqual(['1.250', '1.250']);
  });

  test('of one value over cells those that do not take it are counted', async () => {
    await at(0, 'area').click();
    await page.keyboard.press('Shift+ArrowDown');
    for (let step = 0; step < 2; step += 1) await page.keyboard.press('Shift+ArrowRight');
    await paste('12 in');
    // A length is a thickness, but no area and no volume.
    await told(/1 cell repeated over 6 cells: 2 taken, 4 marked/);
  });

  test('a heading is copied for other programs with the unit of the numbers below it', async () => {
    await at('head', 'thick').click();
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+c');
    const first = (await at(0, 'thick').textContent())?.trim();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(`thickness (in)\n${first}`);
    const heading = table().locator('[data-item="head"]').getByText('mean thickness');
    await heading.scrollIntoViewIfNeeded();
    await heading.click();
    await page.keyboard.press('Control+c');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('mean thickness (in)');
  });

  test('one value over cells and their heading is refused, copied here or elsewhere', async () => {
    const before = await Promise.all(columns.map(texts));
    const heading = await at('head', 'thick').textContent();
    await at(0, 'thick').click();
    await page.keyboard.press('Control+c');
    const own = () => page.keyboard.press('Control+v');
    for (const put of [own, () => paste('7')]) {
      await at('head', 'thick').click();
      await page.keyboard.press('Shift+ArrowDown');
      await page.keyboard.press('Shift+ArrowDown');
      await put();
      await page.locator('.refusal').getByText('they are not all cells of one table').waitFor();
      expect(await Promise.all(columns.map(texts))).toEqual(before);
      expect(await at('head', 'thick').textContent()).toBe(heading);
      await page.keyboard.press('Escape');
    }
  });
});

describe('onto lines', () => {
  test('an estimator’s two columns become new lines, and the table below is as it was', async () => {
    const title = await table().locator('.part-title').textContent();
    const lines = await page.locator('quay-line').count();
    await page.locator('quay-line [data-field="value"]').first().click();
    await paste('pump hire\t1,850.50 USD\nsilt curtain\t410 ft');
    await told(/2 lines pasted; 4 cells: 4 taken/);
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 2);
    expect(await cell(page, 'silt curtain', 'value').textContent()).toContain('410');
    expect(await table().locator('.part-title').textContent()).toBe(title);
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('quay-line').count()).toBe(lines);
  });

  test('on a sheet that has nothing, what stands under headings becomes a table, and nothing is left where its rows are not taken', async () => {
    await page.getByRole('button', { name: 'Add a sheet' }).click();
    await page.keyboard.type('Takeoff');
    await page.keyboard.press('Enter');
    await page.getByText('An empty sheet.').waitFor();
    const takeoff = 'Item\tVolume (m3)\tThk (mm)\nslab\t12.5\t300\ncap\t3\t450';
    await paste(takeoff);
    await dialog().waitFor();
    await expect.poll(found).toContain('2 rows are taken; 9 cells: 3 headings, 6 taken');
    // Nothing is in the book before it is taken.
    expect(await page.getByText('An empty sheet.').count()).toBe(1);
    await dialog().getByRole('button', { name: 'Cancel' }).click();
    await page.getByText('An empty sheet.').waitFor();
    await paste(takeoff);
    await dialog().getByRole('button', { name: 'Take the rows' }).click();
    await expect.poll(() => rows().allTextContents()).toHaveLength(2);
    expect((await rows().allTextContents()).join()).toMatch(/slab.*12\.5.*300.*cap.*3.*450/s);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('An empty sheet.').waitFor();
  });

  test('what finds no place is refused whole', async () => {
    const before = await page.locator('quay-line').allTextContents();
    await page.locator('quay-line [data-field="value"]').first().click();
    await paste('12\n13\n14');
    await page.getByText('3 rows of 1 cell beginning with “12” find no place on these lines').waitFor();
    expect(await page.locator('quay-line').allTextContents()).toEqual(before);
  });

  test('what Quaybook did not copy so is told, and its plain text is used', async () => {
    await page.locator('quay-line [data-field="label"]').first().click();
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.setData('text/plain', 'a plain text');
      data.setData('application/x-quaybook-cells+json', '{"cells":[[{"a":1}]],"lines":[{}]}');
      let target: Element | null = document.activeElement;
      while (target?.shadowRoot?.activeElement) target = target.shadowRoot.activeElement;
      const event = new ClipboardEvent('paste', {
        clipboardData: data,
        bubbles: true,
        composed: true,
        cancelable: true,
      });
      target?.dispatchEvent(event);
    });
    await page.getByText('what was copied is not as Quaybook copies cells').waitFor();
    expect(await line(page, 'a plain text').count()).toBe(1);
  });
});

test('lines cut on one sheet take what refers to them along, in one step', async () => {
  await openPage();
  await startFrom(page, 'Berthing energy and fenders');
  await showSheet(page, 'Berthing energy');
  const energy = await resultOf(page, 'normal berthing energy');
  const problems = async () =>
    (await page.locator('quay-status-bar').textContent())?.match(/(\d+|no) problems?/)?.[0];
  const before = await problems();
  await cell(page, 'softness factor', 'reference').click();
  await page.keyboard.press('Shift+End');
  await page.keyboard.press('Control+x');
  await expect.poll(() => line(page, 'softness factor').count()).toBe(0);
  await showSheet(page, 'Fender: energy and reaction');
  await cell(page, 'units in contact at once', 'value').click();
  await page.keyboard.press('Control+v');
  await line(page, 'softness factor').waitFor();
  await showSheet(page, 'Berthing energy');
  expect(await resultOf(page, 'normal berthing energy')).toBe(energy);
  expect(await problems()).toBe(before);
  await page.keyboard.press('Control+z');
  await expect.poll(() => line(page, 'softness factor').count()).toBe(1);
  expect(await resultOf(page, 'normal berthing energy')).toBe(energy);
});

test('undo works while a switch of the bar has the focus', async () => {
  await at(0, 'thick').click();
  const before = await at(0, 'thick').textContent();
  await page.keyboard.type('77');
  await page.keyboard.press('Enter');
  await expect.poll(() => at(0, 'thick').textContent()).toBe('77');
  await page.locator('quay-top-bar input[type="radio"]').first().focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => at(0, 'thick').textContent()).toBe(before);
});
