import { mkdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { blankBook, type Part, writeBook } from '../../src/document/index.ts';
import { axeFindings, cell, drawn } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { toPaper } from './on-paper.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'b', kind: 'given', name: 'b', label: 'width', entry: '3', unit: 'm' },
      { id: 's', kind: 'calc', name: 'soil', label: 'ground', formula: 'IF(b > 2 m; "clay"; "sand")' },
      {
        id: 'f',
        kind: 'calc',
        name: 'f',
        label: 'friction',
        unit: 'kPa',
        by: 'soil',
        methods: [
          { id: 'c', for: ['clay'], formula: '20 kPa' },
          { id: 'e', formula: '0 kPa' },
        ],
      },
      { id: 'U', kind: 'given', name: 'U', label: 'uplift', entry: '0', unit: 'kN' },
      {
        id: 'u',
        kind: 'check',
        name: 'c_up',
        label: 'uplift check',
        formula: 'U <= -1 kN',
        applies: 'U > 0 kN',
        unit: 'kN',
      },
      { id: 'd', kind: 'check', name: 'c_b', label: 'depth check', formula: 'b <= 4 m', unit: 'm' },
    ],
  },
];

/** Heights of which the double is calculated; what is stated in two of its cells. */
const table: Part = {
  id: 't',
  kind: 'table',
  name: 't',
  title: 'Doubles',
  length: 3,
  columns: [
    { id: 'h', kind: 'given', name: 'h', label: 'height', unit: 'm', chunks: [[1, 2, 3]] },
    {
      id: 'v',
      kind: 'calc',
      name: 'v_2',
      label: 'double',
      formula: 'h * 2',
      unit: 'm',
      stated: [
        { row: 2, entry: '10 ft', reason: 'measured at low water' },
        { row: 3, entry: '7', reason: '' },
      ],
    },
  ],
};

async function open(): Promise<void> {
  await openPage();
  await openBookFile(
    page,
    writeBook({ ...blankBook(), sheets: [{ key: 's', title: 'Stated', parts: [...parts, table] }] }),
  );
  await drawn(page);
}

const words = async (label: string, field = 'value'): Promise<string> =>
  ((await cell(page, label, field).textContent()) ?? '').replace(/\s+/g, ' ').trim();

const panelWords = async (): Promise<string> =>
  (
    (await page.locator('quay-side-panel').evaluate(({ shadowRoot }) => shadowRoot?.textContent)) ?? ''
  ).replace(/\s+/g, ' ');

/** A picture for whoever asks for them. */
async function picture(name: string): Promise<void> {
  const folder = process.env.QUAYBOOK_SCREENS;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/remarks-${name}.png` });
}

test('a text that chooses methods and that none knows is refused as it is typed, and mended by one key', async () => {
  await open();
  await cell(page, 'ground', 'value').click();
  await page.keyboard.type('caly');
  await page.getByText('“clay”, “sand” choose a method of s.f; “caly” is none of them').waitFor();
  await picture('text');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'value of soil' }).waitFor();
  // Said once, where what mends it stands.
  const said = page.getByText('“caly” is none of them').filter({ visible: true });
  await page.getByRole('alert').filter({ has: said }).waitFor();
  expect(await said.count()).toBe(1);
  expect(await page.locator('.refusal').isVisible()).toBe(false);
  expect(await words('friction')).toContain('20');
  await page.keyboard.press('Alt+Enter');
  await page.getByText('states clay in place of the computed clay').waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect.poll(() => words('ground')).toContain('stated clay');
});

test('why a value is refused is said once, with the offers beside it, and is no refusal once one is taken', async () => {
  await open();
  await cell(page, 'depth check', 'value').click();
  await page.keyboard.type('9 m');
  await page.keyboard.press('Enter');
  const refusal = page.getByRole('alert').filter({ visible: true });
  await refusal.getByText('could be stated for the demand or for the capacity').waitFor();
  expect(await page.getByText('could be stated for the demand').filter({ visible: true }).count()).toBe(1);
  await refusal.getByRole('button', { name: 'state the capacity', exact: true }).waitFor();
  await picture('offers');
  await page.keyboard.press('Alt+Enter');
  await expect.poll(() => refusal.count()).toBe(0);
  await page.getByText(/states 9\sm as the demand/).waitFor();
});

test('the reason for a value typed over another is asked for again, and says what it was given for until it is confirmed', async () => {
  await open();
  await cell(page, 'friction', 'value').click();
  await page.keyboard.type('12');
  await page.keyboard.press('Enter');
  await page.keyboard.type('letter of 3 May');
  await page.keyboard.press('Enter');
  await cell(page, 'friction', 'value').click();
  await page.keyboard.type('15');
  await page.keyboard.press('Enter');
  await page
    .getByText('this was given for 12: Enter confirms it, Escape leaves it to be confirmed')
    .waitFor();
  await picture('reason');
  await page.keyboard.press('Escape');
  const margin = () => words('friction', 'reference');
  await expect.poll(margin).toBe('stated: letter of 3 May, given for 12, to be confirmed');
  await expect.poll(panelWords).toContain('letter of 3 May given for 12, to be confirmed');
  await picture('reason-open');
  await page.locator('quay-side-panel').getByRole('button', { name: 'Confirm the reason' }).click();
  await expect.poll(margin).toBe('stated: letter of 3 May');
  await page.keyboard.press('Control+z');
  await expect.poll(margin).toContain('given for 12');
});

test('a reason that is filled down with its value is confirmed for the whole column at once', async () => {
  await open();
  const v = (row: number) => page.locator(`quay-table [data-item=r${row}] .cell[data-field=v]`);
  await v(1).click();
  await page.keyboard.press('Alt+ArrowUp');
  await v(0).click();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await v(2).click();
  await expect.poll(panelWords).toContain('measured at low water given for v_2 in row 1, to be confirmed');
  await page
    .locator('quay-side-panel')
    .getByRole('button', { name: 'Confirm the reasons of all 2 rows' })
    .click();
  await expect.poll(panelWords).not.toContain('to be confirmed');
});

test('a row and a line are put in above, and the sheet of keys names each key of the menu', async () => {
  await open();
  const heights = () => page.locator('quay-table [data-item^=r] .cell[data-field=h]').allTextContents();
  await page.locator('quay-table [data-item=r0] .cell[data-field=h]').click();
  await page.keyboard.press('Control+Shift+Enter');
  await expect.poll(heights).toEqual(['', '1', '2', '3']);
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await expect.poll(heights).toEqual(['7', '1', '2', '3']);
  await cell(page, 'friction', 'value').click();
  const lines = await page.locator('quay-line').count();
  await page.keyboard.press('Control+Shift+Enter');
  await expect.poll(() => page.locator('quay-line').count()).toBe(lines + 1);
  const names = (await page.locator('quay-line [data-field=label]').allTextContents()).map((text) =>
    text.trim(),
  );
  expect(names.indexOf('friction')).toBe(3);
  await cell(page, 'friction', 'value').click();
  await page.keyboard.press('Shift+F10');
  const menu = page.getByRole('menu', { name: 'insert and change' });
  const keys = await menu.locator('kbd').allTextContents();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Keys' }).click();
  const told = (await page.getByRole('dialog', { name: 'Keys' }).locator('dt').allTextContents()).join(', ');
  expect(keys.length).toBeGreaterThan(3);
  expect(keys.filter((key) => !told.includes(key))).toEqual([]);
});

test('a check that does not apply says why on the page, in the list and on paper, and is counted apart', async () => {
  await open();
  const bar = page.locator('quay-status-bar');
  // The condition is set as mathematics, whose gaps are no letters.
  const why = /does not apply, for this is not so:\s*U\s*>\s*0\s*kN/;
  expect(await words('uplift check')).toMatch(why);
  await bar.getByRole('button', { name: '1 check holds, 1 does not apply' }).waitFor();
  await picture('applies');
  await bar.getByRole('button', { name: '1 check holds' }).click();
  const table = page.locator('quay-overview table').first();
  await table.locator('.quiet', { hasText: /applies where\s*U\s*>\s*0\s*kN/ }).waitFor();
  await table.getByText('does not apply').waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await picture('applies-list');
  await table.getByRole('button', { name: 'uplift check' }).click();
  await cell(page, 'uplift', 'value').click();
  await page.keyboard.type('2');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('uplift check')).toContain('fails');
  await bar.getByRole('button', { name: '1 of 2 checks fail' }).waitFor();
  await page.keyboard.press('Control+z');
  await expect.poll(() => words('uplift check')).toMatch(why);
  await cell(page, 'uplift check', 'label').click();
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Details' }).click();
  const condition = page.getByRole('textbox', { name: 'Applies where' });
  expect(await condition.inputValue()).toBe('U > 0 kN');
  await condition.fill('');
  await page.getByRole('button', { name: 'Keep' }).click();
  await expect.poll(() => words('uplift check')).toContain('fails');
});

test('a short text that is a result stands in one line', async () => {
  await open();
  const number = cell(page, 'ground', 'value').locator('.number');
  expect((await number.boundingBox())?.height).toBeLessThan(30);
});

test('paper says which cells are stated, and below the table what is computed and why each is stated', async () => {
  await open();
  await toPaper(page);
  const texts = (of: string) =>
    page
      .locator(of)
      .evaluateAll((found) =>
        found.map(({ textContent }) => (textContent ?? '').replace(/\s+/g, ' ').trim()),
      );
  await expect
    .poll(() => texts('.printed-table tbody tr'))
    .toEqual(['1 12.000', '2 23.048 (stated)', '3 37.000 (stated)']);
  // 10 ft are 3.048 m; the doubles of 2 m and 3 m are 4 m and 6 m.
  expect(await texts('.printed-stated td, .printed-stated tbody th')).toEqual([
    ...[
      '2',
      expect.stringMatching(/^v.?2$/),
      '3.048 m (as typed: 10 ft)',
      '4 m',
      '−0.952 m (−23.8 %)',
      'measured at low water',
    ],
    ...['3', expect.stringMatching(/^v.?2$/), '7 m', '6 m', '+1 m (+16.7 %)', 'reason open'],
  ]);
  const [box, sheet] = [
    await page.locator('.printed-stated').boundingBox(),
    await page.locator('quay-printed-sheet').boundingBox(),
  ];
  expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual((sheet?.x ?? 0) + (sheet?.width ?? 0));
  await picture('paper');
});
