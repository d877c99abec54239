import { beforeEach, describe, expect, test } from 'vitest';
import { cell, drawn, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  await startFrom(page, 'Axial capacity of a waterside crane pile');
  await showSheet(page, 'Pile and soil');
});

const list = () => page.getByRole('listbox');
const kindOf = (row: number) => page.locator(`quay-table [data-item="r${row}"] [data-field="k65"]`).first();

/** A cell that the list does not lie over. */
const beside = () => page.locator('quay-table [data-item="r3"] [data-field]').first();

describe('typed into a choice', () => {
  test.each([
    [1, 'dense sand-silt'],
    [3, 'medium sand'],
    [1, 'Dense Silt'],
  ])('in row %i “%s” is the option called so, and no other', async (row, typed) => {
    await kindOf(row).click();
    await page.keyboard.type(typed, { delay: 60 });
    await list().getByRole('option', { name: typed.toLowerCase(), exact: true, selected: true }).waitFor();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await kindOf(row).textContent())?.trim()).toBe(typed.toLowerCase());
  });

  test('what no option is called is told and takes none, and corrected it takes that one', async () => {
    const held = (await kindOf(1).textContent())?.trim();
    await kindOf(1).click();
    await page.keyboard.type('dense clay');
    await page.keyboard.press('Enter');
    await page.getByText('“dense clay” is not one of the choices').waitFor();
    await drawn(page);
    expect(await list().count()).toBe(1);
    await page.keyboard.press('Escape');
    expect((await kindOf(1).textContent())?.trim()).toBe(held);
    await page.keyboard.type('dense clay');
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('Backspace');
    await page.keyboard.type('sand');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await kindOf(1).textContent())?.trim()).toBe('dense sand');
  });

  test('what no option is called stays in hand over a click elsewhere, and is corrected there', async () => {
    const held = (await kindOf(1).textContent())?.trim();
    await kindOf(1).click();
    await page.keyboard.type('dense sandx');
    await beside().click();
    await page.getByText('“dense sandx” is not one of the choices').waitFor();
    expect(await page.getByRole('combobox').textContent()).toBe('dense sandx');
    expect(await list().count()).toBe(1);
    await page.keyboard.press('Control+a');
    expect(await page.evaluate(() => String(getSelection()))).toBe('');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await kindOf(1).textContent())?.trim()).toBe('dense sand');
    expect(held).not.toBe('dense sand');
  });

  test('the beginning of several options is none of them for a click, and the marked one for Enter', async () => {
    const held = (await kindOf(1).textContent())?.trim();
    await kindOf(1).click();
    await page.keyboard.type('very');
    await beside().click();
    await page.getByText('“very” is not one of the choices').waitFor();
    await page.keyboard.press('Escape');
    expect((await kindOf(1).textContent())?.trim()).toBe(held);
    await page.keyboard.type('very');
    const marked = await list().getByRole('option', { selected: true }).textContent();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await kindOf(1).textContent())?.trim()).toBe(marked?.trim());
  });

  test('what no option is called is there again after a reload', async () => {
    await kindOf(1).click();
    await page.keyboard.type('dense sandx');
    await page.getByText('“dense sandx” is not one of the choices').waitFor();
    await drawn(page);
    await page.reload();
    await page.getByText('“dense sandx” is not one of the choices').waitFor();
    await page.keyboard.press('Escape');
  });

  test('on a line the value that formulas see will do, as well as its words', async () => {
    await cell(page, 'friction in clay', 'value').click();
    await page.keyboard.type('USACE');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => cell(page, 'friction in clay', 'value').textContent())
      .toContain('α 1.0 up to 500 psf');
  });
});
