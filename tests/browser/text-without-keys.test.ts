import type { CDPSession, Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { axeFindings, drawn, showSheet } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openPartOfDemo } from './part-of-demo.ts';

withBrowser();

let driver: CDPSession;

/** Input methods, dictation and symbol pickers press no keys: the browser's driver writes as they do. */
async function openBook(): Promise<void> {
  await openPage();
  await openPartOfDemo(page, ['wharf', 'debris', 'fender']);
  await showSheet(page, 'Debris by layer');
  driver = await page.context().newCDPSession(page);
}

const give = (text: string) => driver.send('Input.insertText', { text });
const compose = (text: string) =>
  driver.send('Input.imeSetComposition', { text, selectionStart: text.length, selectionEnd: text.length });

const tableCell = (row: number, column: number): Locator =>
  page.locator('quay-table').first().locator(`[data-item="r${row}"] [data-field]`).nth(column);
const calculated = () =>
  page.locator('quay-table').first().locator('[data-item="r0"] .cell.computed').first();
const given = (field: string): Locator =>
  page.locator('quay-line.given').first().locator(`[data-field="${field}"]`);
const formulaLine = () => page.locator('quay-line.calc').first().locator('[data-field="value"]');

const places: Readonly<
  Record<string, { readonly at: () => Locator; readonly text: string; readonly shows: RegExp }>
> = {
  'a value': { at: () => given('value'), text: '1.25', shows: /1\.25/ },
  'a description': { at: () => given('label'), text: '岸壁 “A” → B', shows: /岸壁 “A” → B/ },
  'a source': { at: () => given('reference'), text: '№ 7', shows: /№ 7/ },
  'a cell of a table': { at: () => tableCell(1, 2), text: '1.77', shows: /1\.77/ },
  'a paragraph': {
    at: () => page.locator('quay-words').first().locator('[data-field="text"]'),
    text: 'Two lines,\nas they were said.',
    shows: /Two lines,\s*as they were said\./,
  },
  'the title of a block': {
    at: () => page.locator('quay-words.part-title').first().locator('[data-field="title"]'),
    text: 'Ω',
    shows: /^\s*Ω\s*$/,
  },
};

const field = () => page.locator('.edited input, .edited textarea');

describe.each(['in the browser as it is', 'in a browser without edit contexts'])(
  'text without keys, %s',
  (how) => {
    beforeEach(async () => {
      await openBook();
      if (how === 'in the browser as it is') return;
      await page.addInitScript(() => Reflect.deleteProperty(window, 'EditContext'));
      await page.reload();
      await page.locator('quay-line').first().waitFor();
      await showSheet(page, 'Debris by layer');
    });

    test('begins an edit of the chosen cell with that text, and goes on in its field', async () => {
      for (const [what, { at, text, shows }] of Object.entries(places)) {
        const before = await at().textContent();
        await at().click();
        await give(text.slice(0, 3));
        await expect.poll(() => field().inputValue(), { message: what }).toBe(text.slice(0, 3));
        await give(text.slice(3));
        await expect.poll(() => field().inputValue(), { message: what }).toBe(text);
        await page.keyboard.press('Enter');
        await expect.poll(() => at().textContent(), { message: what }).toMatch(shows);
        await page.keyboard.press('Control+z');
        await expect.poll(() => at().textContent(), { message: `${what} undone` }).toBe(before);
      }
    });

    test('is the formula of a line, and never that of a column by chance', async () => {
      await formulaLine().click();
      await give('12 m * 3');
      await expect.poll(() => page.locator('.cm-content').textContent()).toBe('12 m * 3');
      await page.keyboard.press('Escape');
      const column = calculated();
      const before = await column.textContent();
      await column.click();
      await give('52 m + 2 m');
      // It would be stated for this row alone, and is no value.
      await expect.poll(() => field().inputValue()).toBe('52 m + 2 m');
      await page.keyboard.press('Escape');
      await expect.poll(() => page.locator('.edited').count()).toBe(0);
      expect(await column.textContent()).toBe(before);
    });

    test('leaves keys, the keyboard and the page as they were', async () => {
      await given('value').click();
      expect(await axeFindings(page)).toEqual([]);
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('ArrowUp');
      await page.keyboard.type('1.3');
      await expect.poll(() => field().inputValue()).toBe('1.3');
      await page.keyboard.press('Enter');
      await expect.poll(() => given('value').textContent()).toMatch(/1\.3/);
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
      await page.keyboard.press('Escape');
      await drawn(page);
      expect(await page.locator('.edited').count()).toBe(0);
    });
  },
);

describe('on blank paper', () => {
  beforeEach(openBook);

  /** Moves the pointer between two blocks. */
  async function pointBetween(): Promise<void> {
    const title = page.locator('quay-words.part-title').first();
    await title.scrollIntoViewIfNeeded();
    const box = await title.boundingBox();
    await page.mouse.move((box?.x ?? 0) + 300, (box?.y ?? 0) - 10);
  }
  async function press(): Promise<void> {
    await page.mouse.down();
    await page.mouse.up();
  }

  test('text goes to the chosen cell, also in the moment of the press and while the button is down', async () => {
    for (const pressed of [press, () => page.mouse.down()]) {
      await given('value').click();
      await pointBetween();
      await pressed();
      await give('1.4');
      await expect.poll(() => field().inputValue()).toBe('1.4');
      await page.mouse.up();
      await page.keyboard.press('Escape');
    }
  });

  test('text goes to the chosen cell in the moment of a press on words that belong to no cell', async () => {
    await given('value').click();
    await page.locator('quay-sheet').getByRole('heading', { level: 2 }).click();
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
    await page.keyboard.press('Escape');
  });

  test('text goes to the chosen cell after units were switched on', async () => {
    await given('value').click();
    await page.locator('quay-top-bar').getByText('SI', { exact: true }).click();
    await pointBetween();
    await press();
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
  });

  test('text goes to the first line in sight where no cell was chosen', async () => {
    await page.locator('quay-sheet-list button[data-sheet="fender"]').click();
    await page.locator('quay-sheet').getByRole('heading', { level: 2 }).waitFor();
    expect(await page.locator('quay-sheet [aria-selected="true"]').count()).toBe(0);
    await pointBetween();
    await press();
    const chosen = page.locator('quay-sheet [data-field="value"][aria-selected="true"]');
    expect(await chosen.count()).toBe(1);
    await give('7');
    await page.locator('.edited').waitFor();
  });
});

/** Presses a point of an element, from its left and its top where they are above 0, else from its right and its bottom. */
async function pressAt(element: Locator, x: number, y: number): Promise<void> {
  const box = await element.boundingBox();
  if (!box) throw new Error('there is nothing to press');
  await page.mouse.move(box.x + (x > 0 ? x : box.width + x), box.y + (y > 0 ? y : box.height + y));
  await page.mouse.down();
  await page.mouse.up();
}

describe('beside the page', () => {
  beforeEach(openBook);

  const blanks: Readonly<Record<string, () => Promise<void>>> = {
    'the list of sheets': () => pressAt(page.locator('quay-sheet-list'), 4, -4),
    'the panel': () => pressAt(page.locator('quay-side-panel'), 4, -4),
    'words of the panel': () => pressAt(page.locator('quay-side-panel .label').first(), 4, 4),
    'the bar': () => pressAt(page.locator('quay-top-bar h1'), 4, 4),
    'the status bar': () => pressAt(page.locator('quay-status-bar'), 4, 4),
    'the scroll bar': () => pressAt(page.locator('quay-sheet'), -6, -60),
  };

  test.each(Object.entries(blanks))(
    'text and keys go to the chosen cell after a press on %s',
    async (_what, press) => {
      for (const write of [give, (text: string) => page.keyboard.type(text)]) {
        await given('value').click();
        await press();
        await write('1.4');
        await expect.poll(() => field().inputValue()).toBe('1.4');
        await page.keyboard.press('Escape');
      }
    },
  );

  test('text goes to the chosen cell after a press beside the page, also from a button that has the focus', async () => {
    await given('value').click();
    await page.locator('quay-sheet-list button[data-sheet="fender"]').click();
    await showSheet(page, 'Debris by layer');
    await expect.poll(() => given('value').getAttribute('aria-selected')).toBe('true');
    await pressAt(page.locator('quay-side-panel'), 4, -4);
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
    await page.keyboard.press('Escape');
  });

  test('what is being typed goes on after a press on the scroll bar', async () => {
    await given('value').click();
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
    await pressAt(page.locator('quay-sheet'), -6, -60);
    await give('7');
    await expect.poll(() => field().inputValue()).toBe('1.47');
    expect(await page.locator('.edited').count()).toBe(1);
    await page.keyboard.press('Escape');
  });

  test('what is being typed into the title block goes on after a press on the scroll bar', async () => {
    await given('value').click();
    const revision = page.locator('quay-title-block input[name="revision"]');
    await revision.fill('A');
    await pressAt(page.locator('quay-sheet'), -6, -60);
    await give('1');
    expect(await revision.inputValue()).toBe('A1');
    expect(await page.locator('.edited').count()).toBe(0);
    await page.keyboard.press('Enter');
  });

  test('a press beside the field of a cell leaves the field the keys', async () => {
    await given('label').click();
    await give('Deck');
    await expect.poll(() => field().inputValue()).toBe('Deck');
    const cell = await page.locator('.edited').boundingBox();
    const own = await field().boundingBox();
    if (!cell || !own || own.x - cell.x < 1) throw new Error('the field leaves no edge to press');
    await page.mouse.click(cell.x + 0.5, cell.y + cell.height / 2);
    await give(' 2');
    await expect.poll(() => field().inputValue()).toBe('Deck 2');
    await page.keyboard.press('Escape');
  });
});

describe('an input method', () => {
  beforeEach(openBook);

  test('composes in the chosen cell, and its text goes on in the field', async () => {
    const label = given('label');
    await label.click();
    for (const step of ['g', 'ga', 'がん', '岸']) {
      await compose(step);
      await expect.poll(async () => (await label.textContent())?.trim()).toBe(step);
    }
    await give('岸');
    await expect.poll(() => field().inputValue()).toBe('岸');
    await compose('へき');
    await give('壁');
    await expect.poll(() => field().inputValue()).toBe('岸壁');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await label.textContent())?.trim()).toBe('岸壁');
  });

  test('composes one text after another', async () => {
    for (const at of [given('label'), given('reference'), given('label')]) {
      await at.click();
      await drawn(page);
      for (const step of ['g', 'ga', 'がん', '岸']) await compose(step);
      await give('岸');
      await expect.poll(() => field().inputValue()).toBe('岸');
      await page.keyboard.press('Escape');
      await drawn(page);
    }
  });

  test('is not interrupted by a click elsewhere, and given up leaves what was there', async () => {
    const label = given('label');
    const before = await label.textContent();
    await label.click();
    await compose('岸');
    await compose('');
    await expect.poll(() => page.locator('.edited').count()).toBe(0);
    expect(await label.textContent()).toBe(before);
    await compose('岸壁');
    await tableCell(0, 2).click();
    await expect.poll(async () => (await label.textContent())?.trim()).toBe('岸壁');
    expect(await page.locator('.edited').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => label.textContent()).toBe(before);
  });
});

describe('the cell that waits for text', () => {
  beforeEach(openBook);

  test('is copied, cut and pasted into wherever the keys and the pointer led to it', async () => {
    const clipboard = () => page.evaluate(() => navigator.clipboard.readText());
    await given('reference').click();
    await page
      .locator('quay-line.given')
      .nth(1)
      .locator('[data-field="unit"]')
      .click({ modifiers: ['Shift'] });
    await drawn(page);
    await page.keyboard.press('Control+c');
    expect((await clipboard()).split('\n').filter((line) => line !== '')).toHaveLength(2);
    await given('label').click();
    await page.keyboard.press('ArrowRight');
    await drawn(page);
    await page.keyboard.press('Control+c');
    expect(await clipboard()).not.toMatch(/\t/);
    await given('label').click();
    await page.keyboard.press('Shift+ArrowDown');
    await drawn(page);
    await page.keyboard.press('Control+c');
    expect((await clipboard()).split('\n').filter((line) => line !== '')).toHaveLength(2);
  });

  test('has the text after a dialog that was opened while something was typed', async () => {
    await given('label').click();
    await page.keyboard.press('F2');
    await field().waitFor();
    await page.keyboard.press('Control+g');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await drawn(page);
    await drawn(page);
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
    await page.keyboard.press('Escape');
  });

  test('has the text after a press on a button that does nothing more', async () => {
    await given('value').click();
    await page.keyboard.type('1.3');
    await page.keyboard.press('Enter');
    await page.locator('quay-top-bar').getByRole('button', { name: 'Undo', exact: true }).click();
    await drawn(page);
    await give('1.4');
    await expect.poll(() => field().inputValue()).toBe('1.4');
    await page.keyboard.press('Escape');
  });
});
