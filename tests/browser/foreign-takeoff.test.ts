import { beforeEach, expect, test } from 'vitest';
import { axeFindings, chooseFromMenu, resultOf, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  await showSheet(page, 'Programme and cost');
  await page.locator('quay-table').first().locator('.part-title .cell.title').click();
  await chooseFromMenu(page, 'Paste or open CSV');
  await dialog().waitFor();
});

const dialog = () => page.getByRole('dialog', { name: /CSV/ });
const take = () => dialog().getByRole('button', { name: 'Take the rows' });
const found = () => dialog().getByRole('status').textContent();
const rows = () => page.locator('quay-table').first().locator('.table-row:not(.head)');
const goesTo = (column: string) => dialog().getByRole('combobox', { name: `${column} goes to` });

async function paste(text: string): Promise<void> {
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await page.keyboard.press('Control+v');
}

/** Goes on to the next thing in the dialog, and types what it is to be. */
async function next(typed: string): Promise<void> {
  await page.keyboard.press('Tab');
  await page.keyboard.type(typed);
}

/** Mends the text where it stands in the dialog. */
async function correct(wrong: string, right: string): Promise<void> {
  const text = dialog().getByRole('textbox', { name: 'Rows' });
  await text.fill((await text.inputValue()).replace(wrong, right));
}

/** Goes on until this has the focus, as somebody would who looks for it. */
async function tabTo(name: string): Promise<void> {
  const wanted = dialog().getByRole('button', { name });
  const there = () => wanted.evaluate((element) => element.matches(':focus'));
  for (let step = 0; step < 20 && !(await there()); step += 1) await page.keyboard.press('Tab');
  expect(await there()).toBe(true);
}

test('a takeoff with foreign headers is mapped by keyboard, taken, totalled and undone', async () => {
  await paste(
    [
      'Pos\tWorks\tNo.\tRate (USD)\tRemarks',
      '1\tdivers, half a day\t6\t1,850.00\tquoted',
      '2\thoarding\t420\t32.50\t',
      '3\tnight lights\tten\t75\t',
      '',
    ].join('\n'),
  );
  await expect
    .poll(found)
    .toContain('the table has no column called “Pos”, “Works”, “No.”, “Rate (USD)” or “Remarks”');
  expect(await take().isDisabled()).toBe(true);
  expect(await axeFindings(page)).toEqual([]);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await next('left');
  await next('line');
  await next('qty');
  await page.keyboard.press('Tab');
  await next('price');
  await expect
    .poll(() =>
      dialog()
        .getByRole('textbox', { name: /^unit of .*Rate/ })
        .inputValue(),
    )
    .toBe('USD');
  await page.keyboard.press('Tab');
  await expect.poll(found).toContain('the table has no column called “Remarks”');
  await page.keyboard.press('Tab');
  // What another column of the text goes to is not to be had twice.
  const taken = goesTo('“Remarks”').locator('option[value="qty"]');
  expect(await taken.textContent()).toContain('taken by “No.”');
  expect(await taken.isDisabled()).toBe(true);
  await page.keyboard.type('left');
  await expect
    .poll(found)
    .toContain('3 rows are taken; 18 cells: 3 headings, 8 taken, 1 marked, 6 left out.');
  expect(await found()).toContain('line 4, column C “No.”: “ten”');
  expect(await found()).toContain('“Pos” and “Remarks” of the text stay out');
  expect(await axeFindings(page)).toEqual([]);
  await correct('ten', '10');
  await expect.poll(found).toContain('18 cells: 3 headings, 9 taken, 6 left out.');
  await tabTo('Take the rows');
  expect(await rows().first().textContent()).toContain('mobilisation');
  await page.keyboard.press('Enter');
  await page.locator('quay-change-notice').getByText('3 rows taken').waitFor();
  await expect.poll(() => rows().count()).toBe(3);
  // 6 × 1,850 + 420 × 32.50 + 10 × 75
  await expect.poll(() => resultOf(page, 'other lines')).toBe('25500');
  await page.keyboard.press('Control+z');
  await expect.poll(() => rows().first().textContent()).toContain('mobilisation');
  // 1 × 28,000 + 12 × 2,400 + 1 × 9,500
  await expect.poll(() => resultOf(page, 'other lines')).toBe('66300');
});

test('rows without a header go by position, and a corrected cell keeps what was chosen', async () => {
  await paste('divers,6,1850\nhoarding,420,32..5\n');
  await expect.poll(found).toContain('or say that the first row is data');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await expect
    .poll(found)
    .toContain('column 1 (“divers”), column 2 (“6”) and column 3 (“1850”) have no header');
  await next('line');
  await next('qty');
  await page.keyboard.press('Tab');
  await next('price');
  await expect.poll(found).toContain('2 rows are taken; 6 cells: 5 taken, 1 marked.');
  await correct('32..5', '32.5');
  await expect.poll(found).toContain('6 cells: 6 taken.');
  await tabTo('Take the rows');
  await page.keyboard.press('Enter');
  await expect.poll(() => rows().count()).toBe(2);
  // 6 × 1,850 + 420 × 32.50
  await expect.poll(() => resultOf(page, 'other lines')).toBe('24750');
});

test('all that goes nowhere yet is left out at once, and the keyboard stays in the dialog', async () => {
  await paste('line,Crew,No.,Yard\ndivers,A,6,north\n');
  await expect.poll(found).toContain('“Crew”, “No.” or “Yard”');
  await goesTo('“No.”').selectOption('qty');
  await tabTo('Leave out the 2 that go nowhere yet');
  await page.keyboard.press('Enter');
  await expect.poll(found).toContain('1 row is taken; 8 cells: 2 headings, 2 taken, 4 left out.');
  expect(
    await dialog()
      .getByRole('status')
      .evaluate((element) => element.matches(':focus')),
  ).toBe(true);
  expect(await goesTo('“Crew”').inputValue()).toBe('-');
});

test('what stands in front of decimals is asked where the numbers do not tell', async () => {
  await paste('line;qty;price\ncrew;1.250;40\n');
  await expect.poll(found).toContain('“1.250” in line 2, column B (qty), can be 1.250 or 1250');
  expect(await take().isDisabled()).toBe(true);
  expect(await axeFindings(page)).toEqual([]);
  await dialog().getByRole('radio', { name: 'a comma' }).check();
  await expect.poll(found).toContain('1 row is taken');
  await take().click();
  await expect.poll(() => rows().first().textContent()).toContain('1250');
});

/** Pastes a text over all that stands in the field. */
async function pasteOver(text: string): Promise<void> {
  await dialog().getByRole('textbox', { name: 'Rows' }).focus();
  await page.keyboard.press('Control+a');
  await paste(text);
}

test('of another text pasted over the first all is asked anew, and where the rows go stays', async () => {
  await dialog().getByRole('radio', { name: 'behind the rows there' }).check();
  await dialog()
    .locator('input[type=file]')
    .setInputFiles({
      name: 'first.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('line;qty;price\ncrew;1.250;(40)\ncabin;-;1.300\nTotal;1.250;1.340\n'),
    });
  await expect.poll(found).toContain('can be 1.250 or 1250');
  await dialog().getByRole('radio', { name: 'a comma' }).check();
  await dialog().getByRole('radio', { name: 'a minus' }).check();
  await dialog().getByRole('radio', { name: 'blank: no number is known' }).check();
  await dialog().getByRole('radio', { name: 'left out' }).check();
  await dialog().getByRole('textbox', { name: 'Lines of the text to leave out' }).fill('3');
  await dialog().getByRole('textbox', { name: 'unit of “price”' }).fill('EUR');
  await pasteOver(
    'line;qty;price\nboat hire;1.500;12.750\ndiving;2.250;-\nsurvey;3.125;(9)\nTotal;6.875;12.750\n',
  );
  await expect.poll(found).toContain('“1.500” in line 2, column B (qty), can be 1.500 or 1500');
  expect(await found()).toContain('seems to be a total');
  expect(await take().isDisabled()).toBe(true);
  for (const name of ['a comma', 'a minus', 'blank: no number is known', 'left out'])
    expect(
      await dialog()
        .getByRole('radio', { name, exact: name === 'left out' })
        .isChecked(),
    ).toBe(false);
  expect(await dialog().getByRole('textbox', { name: 'Lines of the text to leave out' }).inputValue()).toBe(
    '',
  );
  expect(await dialog().getByRole('textbox', { name: 'unit of “price”' }).inputValue()).toBe('');
  expect(await dialog().locator('input[type=file]').inputValue()).toBe('');
  expect(await dialog().getByRole('radio', { name: 'behind the rows there' }).isChecked()).toBe(true);
});

test('a heading corrected keeps what was chosen for its column, and all else that was said', async () => {
  await paste('Zeile;Menge;price\ncrew;1.250;40\ncabin;2.500;75\n');
  await goesTo('“Zeile”').selectOption('line');
  await goesTo('“Menge”').selectOption('qty');
  await dialog().getByRole('radio', { name: 'a point' }).check();
  await expect.poll(found).toContain('2 rows are taken');
  await correct('Menge', 'Mengen');
  await expect.poll(() => goesTo('“Mengen”').inputValue()).toBe('qty');
  expect(await goesTo('“Zeile”').inputValue()).toBe('line');
  expect(await dialog().getByRole('radio', { name: 'a point' }).isChecked()).toBe(true);
  await expect.poll(found).toContain('2 rows are taken');
});

test('that the encoding of a file is guessed is said, until another text is there', async () => {
  const upload = (buffer: Buffer) =>
    dialog().locator('input[type=file]').setInputFiles({ name: 'rows.csv', mimeType: 'text/csv', buffer });
  // Shift-JIS for 床版, which is gibberish in Windows-1252.
  await upload(
    Buffer.from([...Buffer.from('line,qty,price\n'), 0x8f, 0xb0, 0x94, 0xc5, ...Buffer.from(',1,2\n')]),
  );
  await dialog()
    .getByText('rows.csv: this is no text, but perhaps a spreadsheet file or an encoding that is not known')
    .waitFor();
  await upload(
    Buffer.from([
      ...Buffer.from('line,qty,price\n'),
      0x83,
      0x58,
      0x83,
      0x89,
      0x83,
      0x75,
      ...Buffer.from(',1,2\n'),
    ]),
  );
  await expect
    .poll(found)
    .toContain('the text is not UTF-8 and is read as Windows-1252: line 2 has “ƒXƒ‰ƒu,1,2”');
  expect(await found()).toContain('1 row is taken');
  await pasteOver('line\tqty\tprice\nboat hire\t1\t2\n');
  await expect.poll(found).toContain('1 row is taken');
  expect(await found()).not.toContain('Windows-1252');
});

test('a row that is the sum of those above is asked for, whatever it is called', async () => {
  await paste('line\tqty\nboat hire\t6\ndiving\t4\nAggregat\t10\n');
  await expect
    .poll(found)
    .toContain(
      'line 4 has numbers that are the sums of the rows above, as far as they are rounded: “Aggregat, 10”',
    );
  expect(await take().isDisabled()).toBe(true);
  await dialog()
    .getByRole('group', { name: 'Rows that are sums of those above' })
    .getByRole('radio', { name: 'left out' })
    .check();
  await expect.poll(found).toContain('2 rows are taken');
  await take().click();
  await expect.poll(() => rows().count()).toBe(2);
});

/** A text with everything that is asked of rows and numbers. */
const ASKING = [
  'Rev. C',
  'line,qty,price',
  '1,2,3',
  'slab,-,10.5',
  'caps,(12),20',
  'piles,1,250',
  ',7,30',
  'wall,4',
  'All deck,99,1',
  'Total,99,61.5',
].join('\n');

test('every question about rows and numbers is answered in the dialog', async () => {
  await dialog().getByRole('textbox', { name: 'Rows' }).fill(ASKING);
  await expect.poll(found).toContain('line 1 stands above the headers');
  expect(await axeFindings(page)).toEqual([]);
  const answer = (question: string, words: string) =>
    dialog().getByRole('group', { name: question }).getByLabel(words).check();
  await answer('Totals among the rows', 'left out');
  await answer('Notes among the rows and above the headers', 'left out');
  await answer('Rows of numbers without words', 'left out');
  await answer('Dashes and words for none among numbers', '0: there is none');
  await answer('Parentheses around a number', 'a minus');
  await answer('Commas between digits', 'each parts two cells');
  expect(await take().isEnabled()).toBe(true);
  await answer('Lines that end early', 'their last cells are blank');
  // An answer that stands alone can be taken back.
  await dialog().getByRole('group', { name: 'Commas between digits' }).getByRole('checkbox').uncheck();
  expect(await take().isDisabled()).toBe(true);
  await answer('Commas between digits', 'each parts two cells');
  await dialog().getByRole('textbox', { name: 'Lines of the text to leave out' }).fill('8');
  // What is only called like a total is an item, and that is said.
  await expect.poll(found).toContain('line 9 is called like a total and is taken as a row like the others');
  await dialog().getByRole('textbox', { name: 'Lines of the text to leave out' }).fill('8, 9');
  await expect.poll(found).toContain('3 rows are taken');
  await take().click();
  await expect.poll(() => rows().count()).toBe(3);
  const texts = await rows().allTextContents();
  expect(texts.map((text) => /slab|caps|piles/.exec(text)?.[0])).toEqual(['slab', 'caps', 'piles']);
  expect(texts[1]).toMatch(/[−-]12/);
});

test('a text of no rows is taken where that is meant', async () => {
  await dialog().getByRole('textbox', { name: 'Rows' }).fill('line,qty,price\n');
  await expect.poll(found).toContain('no rows');
  expect(await take().isDisabled()).toBe(true);
  await dialog().getByLabel('there are none, and that is meant').check();
  await expect.poll(() => take().isEnabled()).toBe(true);
});

test.each([
  [1440, 900],
  [1024, 768],
  [700, 600],
  [400, 700],
])(
  'in a window of %i × %i the buttons stay in sight, and nothing in focus lies behind them',
  async (width, height) => {
    await page.setViewportSize({ width, height });
    await dialog().getByRole('textbox', { name: 'Rows' }).fill(ASKING);
    await dialog().getByRole('group', { name: 'Totals among the rows' }).waitFor();
    const inSight = async () => {
      const box = await take().boundingBox();
      return box !== null && box.y >= 0 && box.y + box.height <= height && box.x + box.width <= width;
    };
    expect(await inSight()).toBe(true);
    const foot = (await dialog().locator('.buttons').boundingBox())?.y ?? 0;
    const reached: string[] = [];
    for (let step = 0; step < 40; step += 1) {
      await page.keyboard.press('Tab');
      const [name, bottom, isButton] = await dialog().evaluate((element) => {
        const root = element.getRootNode() as ShadowRoot;
        const active = root.activeElement;
        const edge = active?.getBoundingClientRect().bottom ?? 0;
        return [
          active?.closest('fieldset, .field, .buttons, .found')?.className ?? '',
          edge,
          active?.tagName === 'BUTTON',
        ] as const;
      });
      if (isButton && name === 'buttons') {
        reached.push(name);
        break;
      }
      reached.push(name);
      // What is read is longer than the window may be.
      if (name !== 'found') expect(bottom).toBeLessThanOrEqual(foot + 1);
    }
    expect(reached.at(-1)).toBe('buttons');
    expect(reached).toContain('choices');
    expect(await inSight()).toBe(true);
  },
);

test('in a narrow window nothing of what the columns are taken as lies beyond its edge', async () => {
  await page.setViewportSize({ width: 420, height: 800 });
  await paste('line\tqty\tprice (USD)\ndivers\t6\t1850\nhoarding\t420\t32.50\n');
  const mapping = dialog().getByRole('table', { name: 'What the columns of the text go to' });
  const sum = mapping.getByRole('cell').filter({ hasText: 'Sum' }).filter({ hasText: '426' });
  await sum.waitFor();
  await sum.scrollIntoViewIfNeeded();
  for (const cell of await mapping.getByRole('cell').filter({ visible: true }).all()) {
    const box = await cell.boundingBox();
    expect(box && box.x >= 0 && box.x + box.width <= 420, (await cell.textContent()) ?? '').toBe(true);
  }
  expect(await axeFindings(page)).toEqual([]);
});

test('why the rows are not taken stands beside the button, and leads to all that was read', async () => {
  const many = Array.from({ length: 14 }, (_, at) => `h${at}`);
  await page.setViewportSize({ width: 1024, height: 640 });
  await paste(`${many.join('\t')}\n${many.map((_, at) => at).join('\t')}\n`);
  await expect.poll(found).toContain('the table has no column called');
  const why = dialog().getByRole('button', { name: /^Not yet: the table has no column called/ });
  const frame = await dialog().boundingBox();
  const box = await why.boundingBox();
  expect(box && frame && box.y + box.height <= frame.y + frame.height).toBe(true);
  await why.click();
  expect(
    await dialog()
      .getByRole('status')
      .evaluate((element) => element.matches(':focus')),
  ).toBe(true);
  await correct(many.join('\t'), ['line', 'qty', ...many.slice(2)].join('\t'));
  await dialog()
    .getByRole('button', { name: /^Leave out the 12/ })
    .click();
  await expect.poll(() => take().isDisabled()).toBe(false);
  expect(await why.count()).toBe(0);
});
