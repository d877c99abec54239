import type { Page } from 'playwright-core';
import { cell, line, showSheet, startFrom } from '../../tests/browser/app-page.ts';
import { type Keystroke, press } from './recorder.ts';

/** What a keystroke did. */
export type Act = 'move' | 'type a value' | 'type a formula' | 'commit' | 'undo' | 'nothing';

/** A keystroke with what it did. */
export interface Pressed extends Keystroke {
  readonly act: Act;
  readonly key: string;
}

/** A given value and a formula of one sheet, by their descriptions, and what is typed there. */
interface Work {
  readonly given: string;
  readonly entries: readonly string[];
  readonly calc: string;
  readonly formula: string;
}

/** What is done at each shipped template. */
export const templates: readonly (Work & { readonly title: string; readonly sheet: string })[] = [
  {
    title: 'Berthing energy and fenders',
    sheet: 'Berthing energy',
    given: 'angle between ship and berth at contact',
    entries: ['8', '10'],
    calc: 'angle between R and the velocity',
    formula: '84 deg - ASIN(ship.B / (2 * R))',
  },
  {
    title: 'Axial capacity of a waterside crane pile',
    sheet: 'Demand and checks',
    given: 'pile spacing along the rail',
    entries: ['15', '4 m'],
    calc: 'uniform live',
    formula: 's_p * b_d * q_l * 1.05',
  },
  {
    title: 'Demolition debris: quantities, haul fleet, cost',
    sheet: 'Truck, loader and fleet',
    given: 'payload',
    entries: ['22', '18 t'],
    calc: 'hourly cost',
    formula: '(n_L * C_L + n_k * C_T + c_X) * 1.02',
  },
  {
    title: 'Bollard pull and mooring lines',
    sheet: 'Wind on the ship',
    given: 'wind speed',
    entries: ['40', '20 m/s'],
    calc: 'speed at 10 m',
    formula: 'V_h * (10 m / h_w)^(1/7) * 1.01',
  },
];

/** A realistic hour at each shipped template, in a few dozen keystrokes, and keys that do nothing in the same minutes. */
export async function workOnTemplates(page: Page, address: string): Promise<readonly Pressed[]> {
  const samples: Pressed[] = [];
  for (const { title, sheet, ...work } of templates) {
    await page.goto(address);
    await startFrom(page, title);
    await showSheet(page, sheet);
    samples.push(...(await workOn(page, work)), ...(await pressNothing(page)));
  }
  return samples;
}

/** The same at the open book with the large table, and in the table itself. */
export async function workOnLargeTable(page: Page): Promise<readonly Pressed[]> {
  const lines = await workOn(page, {
    given: 'rate of work',
    entries: ['45', '50', '35 m^3/h', '60', '1 m^3/min', '42'],
    calc: 'K',
    formula: 'SUM(t.cost) * (1 + markup) * 1.02',
  });
  const first = page.locator('quay-table [data-item="r2"] [data-field="c1"]');
  await first.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await first.click();
  const samples: Pressed[] = [];
  for (const value of ['12', '7.5', '30', '4', '55.5', '21']) {
    for (const key of value) samples.push(await timed(page, 'type a value', key));
    samples.push(await timed(page, 'commit', 'Enter'));
  }
  for (let step = 0; step < 6; step += 1) samples.push(await timed(page, 'undo', 'Control+z'));
  for (const key of repeat(['PageDown', 'ArrowDown', 'ArrowRight', 'ArrowUp', 'ArrowLeft'], 30))
    samples.push(await timed(page, 'move', key));
  return [...lines, ...samples];
}

/** Keys that mean nothing where the person is: what a frame takes by itself. */
async function pressNothing(page: Page): Promise<readonly Pressed[]> {
  const samples: Pressed[] = [];
  for (let step = 0; step < 25; step += 1) samples.push(await timed(page, 'nothing', 'F7'));
  return samples;
}

async function workOn(page: Page, { given, entries, calc, formula }: Work): Promise<readonly Pressed[]> {
  const samples: Pressed[] = [];
  const keys = async (act: Act, pressed: readonly string[]) => {
    for (const key of pressed) samples.push(await timed(page, act, key));
  };
  // What the page has put off until it stands: the formula editor, the first recheck.
  await page.waitForTimeout(2500);
  await cell(page, given, 'value').click();
  await keys('move', repeat(['ArrowDown', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'ArrowUp'], 20));
  for (const entry of entries) {
    await line(page, given).evaluate((element) => element.scrollIntoView({ block: 'center' }));
    await cell(page, given, 'value').click();
    await keys('type a value', [...entry]);
    await keys('commit', ['Enter']);
  }
  await keys('undo', repeat(['Control+z'], entries.length));
  await keys('undo', repeat(['Control+y'], entries.length));
  const wanted = cell(page, calc, 'value');
  await wanted.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await wanted.click();
  await page.keyboard.press('F2');
  await page.locator('quay-formula-field .cm-content').waitFor();
  await page.keyboard.press('Control+a');
  await keys('type a formula', [...formula]);
  await page.keyboard.press('Escape');
  if (await page.locator('quay-cell-editor').count()) await page.keyboard.press('Escape');
  await wanted.click();
  await page.keyboard.press('F2');
  await page.locator('quay-formula-field .cm-content').waitFor();
  await page.keyboard.press('End');
  await page.keyboard.type(' * 1');
  await keys('commit', ['Enter']);
  await keys('undo', ['Control+z']);
  return samples;
}

async function timed(page: Page, act: Act, key: string): Promise<Pressed> {
  return { ...(await press(page, key)), act, key };
}

function repeat(keys: readonly string[], count: number): readonly string[] {
  return Array.from({ length: count }, (_, at) => keys[at % keys.length] ?? '');
}
