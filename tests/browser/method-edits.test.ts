import type { Locator } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { writeBook } from '../../src/document/index.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, numbers, tableOf, texts } from '../make-book.ts';
import { axeFindings, cell, chooseFromMenu, drawn, focusedWords } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

const book = bookOf({
  s: [
    blockOf(
      'p',
      {
        ...choice('rule', { value: 'API', label: 'α of API' }, { value: 'USACE', label: 'α of USACE' }),
        label: 'clay rule',
      },
      { ...given('w', '2 m', 'm'), label: 'width' },
      calc('a', { formula: '2*w', unit: 'm', label: 'friction', reference: 'API RP 2GEO' }),
      calc('b', { formula: 'a + 1 m', unit: 'm', label: 'more' }),
    ),
    {
      ...tableOf(
        't',
        3,
        { ...texts('k', ['clay', 'sand', 'clay']), label: 'soil' },
        { ...numbers('x', 'm', [1, 2, 3]), label: 'thickness' },
        calcColumn('v', { formula: 'x + w', unit: 'm', label: 'unit friction', reference: 'A' }),
      ),
      title: 'Layers',
    },
  ],
});

withBrowser();

async function open(width = 1440): Promise<void> {
  await openPage({ width });
  await openBookFile(page, writeBook(book));
  await drawn(page);
}
beforeEach(() => open());

const panel = (): Locator => page.locator('quay-methods');
const words = async (label: string, field = 'value'): Promise<string> =>
  ((await cell(page, label, field).textContent()) ?? '').replace(/\s+/g, ' ').trim();
const method = (id: string): Locator => panel().locator(`[data-method="${id}"]`);
const press = (name: string) => panel().getByRole('button', { name, exact: true }).click();

/** Types what a field of the panel is to hold, once it stands there. */
async function typeInField(text: string, field = 'quay-formula-field'): Promise<void> {
  await panel().locator(field).waitFor();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await panel().locator(field).waitFor({ state: 'detached' });
}

test('a line of one formula gets methods, a new one for a new option, its formula, source and note, and it is in force', async () => {
  await cell(page, 'friction', 'value').click();
  await press('Compute by methods');
  expect(await panel().getByLabel('Chosen by').inputValue()).toBe('rule');
  await panel().getByText('No method is then for “α of USACE”.').waitFor();
  await press('Use methods');
  await expect.poll(() => words('friction')).toContain('method for “α of API”');
  // Which option no method is for is said at the line and where it is chosen.
  await page.locator('quay-side-panel').getByText('no method is for “α of USACE”').waitFor();
  await press('Add a method');
  await panel().getByLabel('Or a new option of rule').fill('own');
  await panel().getByLabel('In words').fill('our own tests');
  await press('Add it and write its formula');
  await panel().locator('quay-formula-field').waitFor();
  await page.keyboard.type('3*w + 1');
  await panel().locator('quay-formula-field').getByText('they cannot be added').waitFor();
  await typeInField('3*w');
  // The focus stays where the formula stands, and goes on to the next of its fields.
  expect(await focusedWords(page)).toBe('3*w');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await typeInField('pile tests, report 12', 'quay-input-field');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await typeInField('two piles', 'quay-prose-editor');
  expect(await axeFindings(page)).toEqual([]);
  expect(await words('friction')).toContain('4');
  await method('m2').getByRole('button', { name: 'menu of the method for “our own tests”' }).click();
  await page.getByRole('menuitem', { name: 'Choose “our own tests” in rule' }).click();
  await expect.poll(() => words('friction')).toContain('method for “our own tests”');
  expect(await words('friction')).toContain('6');
  expect(await words('friction', 'reference')).toBe('pile tests, report 12');
  expect(await words('more')).toContain('7');
  await cell(page, 'clay rule', 'value').click();
  await page.locator('quay-side-panel').getByText('a (friction) has no method for “α of USACE”').waitFor();
});

test('methods are moved, given other options, removed and given up with the keyboard alone, each one step of undo', async () => {
  await cell(page, 'friction', 'value').click();
  await chooseFromMenu(page, 'Methods');
  await panel().getByLabel('Chosen by').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => focusedWords(page)).toBe('Add a method');
  await page.keyboard.press('Enter');
  await panel().getByLabel('α of USACE').waitFor();
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await typeInField('5*w');
  await expect.poll(() => focusedWords(page)).toBe('5*w');
  await page.keyboard.press('Alt+ArrowUp');
  await method('m2').getByText('1 of 2').waitFor();
  // The focus goes with the method, to its menu.
  const menu = method('m2').locator('[data-do="menu m2"]');
  await expect.poll(() => menu.evaluate((one) => one.matches(':focus'))).toBe(true);
  // What it is for: all others in place of one.
  await page.keyboard.press('Enter');
  for (let step = 0; step < 12 && (await focusedWords(page)) !== 'Change what it is for'; step += 1)
    await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await panel().getByLabel('all others').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await method('m2').getByText('for all others').waitFor();
  await method('m2').getByText('2 of 2').waitFor();
  await cell(page, 'friction', 'value').click();
  await press('Back to one formula');
  await expect.poll(() => words('friction')).not.toContain('method');
  expect(await words('friction', 'reference')).toBe('API RP 2GEO');
  await page.keyboard.press('Control+z');
  await method('m2').waitFor({ state: 'attached' });
  for (let step = 0; step < 5; step += 1) await page.keyboard.press('Control+z');
  await panel().getByRole('button', { name: 'Compute by methods' }).waitFor();
  expect(await words('friction')).not.toContain('method');
});

test('what cannot be is said, and nothing is changed', async () => {
  await cell(page, 'friction', 'value').click();
  await press('Compute by methods');
  await panel().getByLabel('α of API').click();
  await press('Use methods');
  await panel().getByRole('alert').getByText('a method of a has to be for an option').waitFor();
  await panel().getByLabel('α of API').click();
  await press('Use methods');
  await press('Add a method');
  await panel().getByLabel('Or a new option of rule').fill('usace ');
  await press('Add it and write its formula');
  await panel().getByRole('alert').getByText('has the option “α of USACE” already').waitFor();
  await page.keyboard.press('Escape');
  await expect.poll(() => focusedWords(page)).toBe('Add a method');
  expect(await words('friction')).toContain('method for “α of API”');
});

test('a column goes by a text column of its table, row by row', async () => {
  await page.locator('quay-table [data-item="r1"] [data-field="v"]').click();
  await press('Compute by methods');
  await panel().getByLabel('Chosen by').selectOption('k');
  await panel().getByLabel('sand').waitFor();
  await press('Use methods');
  await press('Add a method');
  await panel().getByLabel('sand').click();
  await press('Add it and write its formula');
  await typeInField('10*x');
  await expect
    .poll(() => page.locator('quay-table [data-item^=r] .cell[data-field=v]').allTextContents())
    .toEqual(['3', '20', '5']);
});

test('what is typed in the panel is entered by going elsewhere, and is there again after a reload', async () => {
  await cell(page, 'friction', 'value').click();
  await press('Compute by methods');
  await press('Use methods');
  await panel()
    .getByRole('button', { name: /^formula of the method/ })
    .click();
  await panel().locator('quay-formula-field').waitFor();
  await page.keyboard.press('End');
  await page.keyboard.type(' + 1 m');
  await page.reload();
  await panel().locator('quay-formula-field').getByText('2*w + 1 m').waitFor();
  await cell(page, 'width', 'value').click();
  await expect.poll(() => words('friction')).toContain('5');
});

test('in a narrow window the menu of the line brings the panel with its methods', async () => {
  await open(600);
  await cell(page, 'friction', 'value').click();
  await chooseFromMenu(page, 'Methods');
  await press('Use methods');
  await press('Add a method');
  await panel().getByLabel('α of USACE').click();
  await press('Add it and write its formula');
  await typeInField('7*w');
  expect(await focusedWords(page)).toBe('7*w');
  expect(await panel().isVisible()).toBe(true);
});
