import { beforeEach, describe, expect, test } from 'vitest';
import {
  axeFindings,
  cell,
  drawn,
  enter,
  focusedWords,
  line,
  resultOf,
  secondEngine,
  showSheet,
  startFrom,
} from './app-page.ts';
import { openAnew, openBeside, openPage, page, withBrowser } from './each-test.ts';

const fenders = 'Berthing energy and fenders';

withBrowser();
beforeEach(async () => {
  await openPage();
});

describe('the design engineer', () => {
  test('starts from a template, whose limits and cautions are shown first, and changes an input', async () => {
    await page.getByRole('button', { name: fenders, exact: true }).click();
    const about = page.getByRole('article');
    await about.getByText('Limits', { exact: true }).waitFor();
    await about.getByText('Cautions', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Start from this template' }).click();
    await showSheet(page, 'Berthing energy');
    const before = await resultOf(page, 'normal berthing energy');
    await enter(page, 'softness factor', '0.9');
    await expect.poll(() => resultOf(page, 'normal berthing energy')).not.toBe(before);
  });

  test('adapts a formula, breaks it, and mends it with the remedy offered', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    const label = 'angle between R and the velocity';
    await cell(page, label, 'value').click();
    await page.keyboard.press('F2');
    await page.locator('quay-cell-editor').waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('90 - α');
    await page
      .getByText(/degrees|“deg” or “rad”/)
      .first()
      .waitFor();
    await page.keyboard.press('Alt+Enter');
    await page.keyboard.press('Enter');
    await expect.poll(() => resultOf(page, label)).toBe('84');
  });

  test('what is selected in the plain field stays selected when the formula editor takes its place', async () => {
    let come = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      come = resolve;
    });
    await openAnew();
    await page.route('**/quay-formula-field-*.js', async (route) => {
      await held;
      await route.continue();
    });
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    const label = 'angle between R and the velocity';
    await cell(page, label, 'value').click();
    await page.keyboard.press('F2');
    await page.locator('quay-cell-editor input').waitFor();
    await page.keyboard.press('Control+a');
    come();
    await page.locator('quay-formula-field .cm-content').waitFor();
    await page.keyboard.type('90 deg - α');
    await page.keyboard.press('Enter');
    await expect.poll(() => resultOf(page, label)).toBe('84');
  });

  test('renames a symbol, and every formula that uses it follows', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    const before = await resultOf(page, 'normal berthing energy');
    await cell(page, 'angle between R and the velocity', 'name').click();
    await page.keyboard.press('F2');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('ψ_v');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => cell(page, 'angle between R and the velocity', 'name').textContent())
      .toContain('ψ');
    expect(await resultOf(page, 'normal berthing energy')).toBe(before);
    await page.locator('quay-status-bar').getByText('0 problems').waitFor();
  });

  test('undoes all the way and does it again', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    const start = await resultOf(page, 'normal berthing energy');
    const label = 'softness factor';
    for (const entry of ['0.9', '0.95', '0.8']) await enter(page, label, entry);
    const changed = await resultOf(page, 'normal berthing energy');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
    await expect.poll(() => resultOf(page, 'normal berthing energy')).toBe(start);
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+y');
    await expect.poll(() => resultOf(page, 'normal berthing energy')).toBe(changed);
  });

  test('sees every quantity in one system without touching what was entered', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    await page.locator('quay-top-bar').getByText('US', { exact: true }).click();
    await expect.poll(() => cell(page, 'normal berthing energy', 'unit').textContent()).toContain('kip');
    await page.locator('quay-top-bar').getByText('as written', { exact: true }).click();
    await expect.poll(() => cell(page, 'normal berthing energy', 'unit').textContent()).toContain('kN');
  });
});

describe('the estimator', () => {
  test('types and pastes in the units shown, from a column jumped to on', async () => {
    await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
    await page.locator('quay-top-bar').getByText('SI', { exact: true }).click();
    await page.keyboard.press('Control+g');
    await page.keyboard.type('takeoff.thick');
    await page.keyboard.press('Enter');
    const thick = (row: string) => page.locator(`quay-table [data-item="${row}"] [data-field]`).nth(3);
    await expect.poll(() => thick('r0').getAttribute('aria-selected')).toBe('true');
    await page.keyboard.type('100');
    await page.keyboard.press('Enter');
    // The numbers of a column share their decimals on the screen.
    await expect.poll(() => thick('r0').textContent()).toMatch(/^100(\.0+)?$/);
    await expect.poll(() => thick('r1').getAttribute('aria-selected')).toBe('true');
    await page.evaluate(() => navigator.clipboard.writeText('120\n1 250'));
    await page.keyboard.press('Control+v');
    await expect.poll(() => thick('r1').textContent()).toMatch(/^120(\.0+)?$/);
    await expect.poll(() => thick('r2').textContent()).toMatch(/^1.?250(\.0+)?$/);
    await page.keyboard.press('Control+c');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('120 mm');
    await page.keyboard.press('F2');
    await expect.poll(() => page.locator('quay-cell-editor input').inputValue()).toBe('120 mm');
  });
});

describe('the checker', () => {
  test('follows a number to what it depends on, and to what it feeds', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    await cell(page, 'normal berthing energy', 'value').click();
    const panel = page.locator('quay-side-panel');
    await panel.getByText('Depends on', { exact: true }).waitFor();
    await panel.getByText('Feeds', { exact: true }).waitFor();
    await drawn(page);
    const marked = (words: string) =>
      page
        .locator(`quay-line[aria-description="${words}"] .description`)
        .evaluateAll((cells) => cells.map((one) => one.textContent?.trim()));
    expect(await marked('goes into the value in hand')).toEqual([
      'kinetic energy with the added mass',
      'share of it that reaches the fender',
    ]);
    expect(await marked('takes the value in hand')).toEqual(['energy to design the fender for']);
    await panel.getByRole('list').first().getByRole('button').first().click();
    await expect.poll(() => panel.locator('.label').textContent()).not.toBe('normal berthing energy');
  });

  test('hears what the second engine has come to, and that it is at work again after an edit', async () => {
    await openPage({ secondEngine: true });
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    const second = secondEngine(page);
    await expect.poll(() => second.textContent(), { timeout: 30_000 }).toMatch(/\d+ values agree/);
    expect(await second.getAttribute('aria-busy')).toBe('false');
    expect(await second.getAttribute('role')).toBe('status');
    const told = await second.evaluateHandle((one) => {
      const states: string[] = [];
      new MutationObserver(() => states.push(`${one.textContent} busy ${one.ariaBusy}`)).observe(one, {
        attributes: true,
        characterData: true,
        childList: true,
        subtree: true,
      });
      return states;
    });
    await enter(page, 'softness factor', '0.92');
    await expect.poll(() => told.jsonValue(), { timeout: 10_000 }).toContain('recheck under way… busy true');
    await expect
      .poll(() => told.jsonValue(), { timeout: 30_000 })
      .toContainEqual(expect.stringMatching(/\d+ values agree busy false$/));
  });
});

describe('the keyboard alone', () => {
  test('keys that come faster than the page is drawn find their cells', async () => {
    await startFrom(page, fenders);
    await showSheet(page, 'Berthing energy');
    await cell(page, 'softness factor', 'value').click();
    // One after the other, with no frame between them.
    await Promise.all(
      ['0', '.', '8', 'Enter', 'ArrowUp', '0', '.', '7', 'Enter', 'ArrowUp'].map((key) =>
        page.keyboard.press(key),
      ),
    );
    await expect.poll(() => cell(page, 'softness factor', 'value').textContent()).toContain('0.7');
    await page.keyboard.press('Control+z');
    await expect.poll(() => cell(page, 'softness factor', 'value').textContent()).toContain('0.8');
  });

  test('goes from the start page to an own number in a template, in at most twelve actions', async () => {
    let actions = 0;
    const press = async (key: string) => {
      actions += 1;
      await page.keyboard.press(key);
    };
    const type = async (text: string) => {
      actions += 1;
      await page.keyboard.type(text);
    };
    const focused = () => focusedWords(page);
    while ((await focused()) !== fenders && actions < 20) await press('Tab');
    await press('Enter');
    await expect.poll(focused).toBe('Start from this template');
    await press('Enter');
    await page.locator('quay-line').first().waitFor();
    await press('Control+g');
    await type('C_S');
    await press('Enter');
    await type('0.9');
    await press('Enter');
    await expect.poll(() => cell(page, 'softness factor', 'value').textContent()).toContain('0.9');
    expect(actions).toBeLessThanOrEqual(12);
  });

  test('is on the first line of a book that opens', async () => {
    await startFrom(page, fenders);
    const water = cell(page, 'water', 'value');
    await expect.poll(() => water.getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => water.getAttribute('aria-selected')).toBe('false');
  });
});

describe('manners', () => {
  test.each([
    ['light', 1440, false],
    ['dark', 1024, true],
  ] as const)('axe finds nothing, %s at %i', async (_, width, dark) => {
    const shown = await openBeside({ width, dark });
    expect(await axeFindings(shown.page)).toEqual([]);
    await startFrom(shown.page, fenders);
    await line(shown.page, 'water').waitFor();
    expect(await axeFindings(shown.page)).toEqual([]);
    await shown.page.keyboard.press('Control+g');
    expect(await axeFindings(shown.page)).toEqual([]);
    await shown.page.keyboard.press('Escape');
  });
});
