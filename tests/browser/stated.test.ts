import { mkdirSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { blankBook, writeBook } from '../../src/document/index.ts';
import { axeFindings, cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

const text = writeBook({
  ...blankBook(),
  sheets: [
    {
      key: 's',
      title: 'Stated',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'b', kind: 'given', name: 'b', label: 'width', entry: '3', unit: 'm' },
            {
              id: 'w',
              kind: 'calc',
              name: 'w',
              label: 'load',
              formula: 'b * 2 (kN/m)',
              unit: 'kN',
              stated: { entry: '8', reason: 'client’s letter of 3 May' },
            },
            {
              id: 'n',
              kind: 'calc',
              name: 'n',
              label: 'unknown',
              formula: 'nosuch * 2',
              unit: 'kN',
              stated: { entry: '4', reason: '' },
            },
            {
              id: 'F',
              kind: 'calc',
              name: 'F',
              label: 'double load',
              formula: '2 * w',
              unit: 'kN',
              reference: 'hand book 5',
            },
            {
              id: 'c',
              kind: 'check',
              name: 'c',
              label: 'load check',
              formula: 'w <= 10 kN',
              unit: 'kN',
              stated: { capacity: { entry: '7 kN', reason: 'client’s criteria' } },
            },
            { id: 'Q', kind: 'given', name: 'Q_co', label: 'coring rate', entry: '2', unit: 'm/h' },
            { id: 's', kind: 'calc', name: 'state', label: 'way', formula: 'if(b > 2 m, "driven", "free")' },
          ],
        },
        {
          id: 't',
          kind: 'table',
          name: 't',
          length: 3,
          columns: [
            { id: 'h', kind: 'given', name: 'h', label: 'height', unit: 'm', chunks: [[1, 2, 3]] },
            {
              id: 'v',
              kind: 'calc',
              name: 'v',
              label: 'double',
              formula: 'h * 2',
              unit: 'm',
              stated: [{ row: 2, entry: '10', reason: 'measured' }],
            },
          ],
        },
      ],
    },
  ],
});

withBrowser();
beforeEach(async () => {
  await openPage();
  const chooser = page.waitForEvent('filechooser');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  await page.getByRole('button', { name: 'Open a file' }).click();
  const file = { name: 'stated.quaybook.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await (await chooser).setFiles(file);
  await page.locator('quay-line').first().waitFor();
  await drawn(page);
});

const words = async (label: string, field = 'value'): Promise<string> =>
  ((await cell(page, label, field).textContent()) ?? '').replace(/\s+/g, ' ').trim();
const rowTexts = (): Promise<readonly string[]> =>
  page.locator('quay-table [data-item^=r] .cell[data-field=v]').allTextContents();
const tableCell = (row: number) => page.locator(`quay-table [data-item=r${row}] .cell[data-field=v]`);
const panel = () => page.locator('quay-side-panel');
const panelWords = async (): Promise<string> =>
  ((await panel().evaluate(({ shadowRoot }) => shadowRoot?.textContent)) ?? '').replace(/\s+/g, ' ');

/** A picture for whoever asks for them. */
async function picture(name: string): Promise<void> {
  const folder = process.env.QUAYBOOK_SCREENS;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/stated-${name}.png` });
}

test('the page says what is stated, with the reason and what is computed', async () => {
  expect(await words('load')).toMatch(/stated 8 computed 6 kN, difference \+2 kN \(\+33\.3 %\)$/);
  expect(await words('load', 'reference')).toBe('stated: client’s letter of 3 May');
  expect(await words('load')).not.toContain('= 8');
  expect(await words('unknown')).toMatch(/stated 4.*computed no value: .*nosuch/);
  expect(await words('unknown', 'reference')).toBe('stated, reason open');
  expect(await words('load check')).toMatch(
    /fails.*capacity stated 7 kN, computed 10 kN, difference −3 kN \(−30\.0 %\)/,
  );
  expect(await words('load check', 'reference')).toBe('capacity stated: client’s criteria');
  await expect.poll(rowTexts).toEqual(['2', '10stated', '6']);
  await cell(page, 'load', 'value').click();
  await expect.poll(panelWords).toContain('stated 8 kN reason client’s letter of 3 May computed 6 kN');
  expect(await axeFindings(page)).toEqual([]);
  await picture('sheet');
});

test('an edit elsewhere and a row put in above leave what is stated as it is', async () => {
  await cell(page, 'width', 'value').click();
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('load')).toContain('computed 10 kN, difference −2 kN');
  await page.locator('quay-table [data-item^=r] .cell[data-field=h]').first().click();
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(rowTexts).toEqual(['10stated', '2', '6']);
  await page.keyboard.press('Control+z');
  await expect.poll(rowTexts).toEqual(['2', '10stated', '6']);
});

test('a value typed over a result is stated, its reason is asked for below, and Delete gives the computed one back', async () => {
  await cell(page, 'double load', 'value').click();
  await page.keyboard.type('20');
  await page.getByText(/states 20\skN in place of the computed 16\skN/).waitFor();
  await picture('typing');
  await page.keyboard.press('Enter');
  const reason = page.getByRole('textbox', { name: 'reason of F' });
  await reason.waitFor();
  await page.getByText('Enter leaves it open').waitFor();
  expect(await words('double load')).toContain('stated 20');
  await picture('reason');
  await page.keyboard.type('table 4.2');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('double load', 'reference')).toBe('stated: table 4.2formula: hand book 5');
  // The person goes on below the value.
  await expect.poll(() => cell(page, 'load check', 'value').getAttribute('aria-selected')).toBe('true');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Delete');
  await expect.poll(() => words('double load')).toMatch(/= ?16/);
  await page.keyboard.press('Control+z');
  await expect.poll(() => words('double load', 'reference')).toContain('table 4.2');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => words('double load')).toMatch(/= ?16/);
  await page.keyboard.press('Control+y');
  await expect.poll(() => words('double load', 'reference')).toContain('stated, reason open');
});

test('a side of a check is stated by its name; a value alone is refused with both readings', async () => {
  await cell(page, 'load check', 'value').click();
  await page.keyboard.type('9 kN');
  await page.getByText('could be stated for the demand or for the capacity').waitFor();
  await picture('check');
  await page.keyboard.press('Alt+Enter');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'reason of c' }).waitFor();
  await page.keyboard.type('client’s crane');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => words('load check', 'reference'))
    .toBe('demand stated: client’s cranecapacity stated: client’s criteria');
});

test('a cell of a calculated column is stated where it is typed, asks for its reason and is given back', async () => {
  await tableCell(2).click();
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'reason of t.v' }).waitFor();
  await picture('cell');
  await page.keyboard.type('12');
  await page.keyboard.press('Enter');
  await page.getByText('“12” alone is no reason').first().waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(rowTexts).toEqual(['2', '10stated', '7stated']);
  await expect.poll(panelWords).toContain('reason open');
  await panel().getByRole('button', { name: 'Give the reason' }).click();
  await page.keyboard.type('taped');
  await page.keyboard.press('Enter');
  await tableCell(2).click();
  await expect.poll(panelWords).toContain('reason taped');
  await panel().getByRole('button', { name: 'Use the computed value' }).click();
  await expect.poll(rowTexts).toEqual(['2', '10stated', '6']);
});

test('stated cells are copied with their reasons, and cut ones are computed again', async () => {
  await tableCell(1).click();
  await page.keyboard.press('Control+x');
  await expect.poll(rowTexts).toEqual(['2', '4', '6']);
  await tableCell(0).click();
  await page.keyboard.press('Control+v');
  await expect.poll(rowTexts).toEqual(['10stated', '4', '6']);
  await expect.poll(panelWords).toContain('reason measured');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await expect.poll(rowTexts).toEqual(['10stated', '10stated', '6']);
  await page.keyboard.press('Control+z');
  await expect.poll(rowTexts).toEqual(['10stated', '4', '6']);
});

test('the panel states, changes and gives back, on the page and in its own words', async () => {
  await cell(page, 'double load', 'value').click();
  await panel().getByRole('button', { name: 'State a value' }).click();
  await page.getByRole('textbox', { name: 'value of F' }).waitFor();
  await page.keyboard.type('18');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect
    .poll(panelWords)
    .toContain('stated 18 kN reason open computed 16 kN difference+2 kN (+12.5 %)');
  await picture('panel');
  await panel().getByRole('button', { name: 'Use the computed value' }).click();
  await expect.poll(() => words('double load')).toMatch(/= ?16/);
});

test('words typed over a line that comes to a text are stated, and only an equals sign begins its formula', async () => {
  await cell(page, 'way', 'value').click();
  await page.keyboard.type('coring');
  await page.getByText('states coring in place of the computed driven').waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.type('letter of 3 May');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('way')).toMatch(/stated coring ?computed driven/);
  expect(await words('way', 'reference')).toBe('stated: letter of 3 May');
  await cell(page, 'way', 'value').click();
  await page.keyboard.press('Delete');
  await expect.poll(() => words('way')).not.toContain('stated');
  await panel().getByRole('button', { name: 'State a value' }).click();
  await page.getByRole('textbox', { name: 'value of state' }).waitFor();
  await page.keyboard.type('"cor"');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'reason of state' }).waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => words('way')).toMatch(/stated cor ?computed driven/);
  await page.keyboard.press('Delete');
  await expect.poll(() => words('way')).not.toContain('stated');
  await page.keyboard.type('="bored"');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('way')).toMatch(/bored/);
  expect(await words('way')).not.toContain('stated');
});

test('a page lists all that is stated, each with its line a press away', async () => {
  await page.getByRole('button', { name: '4 stated' }).click();
  const list = page.getByRole('table', { name: 'Stated values' });
  const rows = (await list.getByRole('row').allTextContents()).map((text) =>
    text.replace(/\s+/g, ' ').trim(),
  );
  expect(rows.slice(1)).toEqual([
    expect.stringMatching(/Stated ?w ?load ?8 kN ?6 kN ?\+2 kN \(\+33\.3 %\).*client’s letter.*feeds F, c/),
    expect.stringMatching(/n ?unknown ?4 kN ?no value.*reason open.*feeds nothing.*nosuch/),
    expect.stringMatching(
      /c ?capacity ?load check ?7 kN ?10 kN ?−3 kN.*client’s criteria.*the capacity of this check/,
    ),
    expect.stringMatching(/t.v ?row 2 ?double ?10 m ?4 m ?\+6 m.*measured/),
  ]);
  await page.getByText('1 reason is open.').waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await picture('list');
  await list.getByRole('button', { name: 'double' }).click();
  await expect.poll(() => tableCell(1).getAttribute('aria-selected')).toBe('true');
});
