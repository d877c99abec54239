import type { Page } from 'playwright-core';
import { computedTwice } from '../app-page.ts';
import type { Screen } from './take.ts';
import { choose, enter, openTemplate, retype, titles } from './walks.ts';

const takeoff = `item,material,from,thick (in),V_s (cy)
asphalt paving,asphalt,whole strip,3.5,
base course,aggregate base,whole strip,12,
deck slab,concrete,whole strip,16,
pile caps and beams,concrete,volume,,380
timber fendering,treated timber,volume,,45
kerbs and plinths,concrete,volume,,20
`;

const energySheet = (page: Page) => openTemplate(page, 'fender-energy', 'Berthing energy');

/** The paper alone, where the bars and the panel have nothing to add. */
const paper = (page: Page) => page.locator('main');

/** The pictures of docs/guide.md, in its order; each is the state that its step leads to. */
export const guidePictures: readonly Screen[] = [
  {
    name: 'start',
    height: 640,
    go: (page) => page.getByRole('button', { name: titles['fender-energy'], exact: true }).click(),
  },
  {
    name: 'line',
    height: 640,
    go: async (page) => {
      await energySheet(page);
      await choose(page, 'normal berthing energy');
    },
  },
  {
    name: 'entry',
    part: paper,
    height: 560,
    go: async (page) => {
      await energySheet(page);
      await choose(page, 'speed, stated');
      await page.keyboard.type('0.3 ft/s');
    },
  },
  {
    name: 'own-line',
    part: paper,
    height: 560,
    go: async (page) => {
      await energySheet(page);
      await enter(page, 'speed, stated', '0.15 m/s');
      await choose(page, 'energy to design the fender for');
      await page.keyboard.press('Control+Enter');
      await page.keyboard.type('E_2');
      await page.keyboard.press('Tab');
      await page.keyboard.type('energy for each of two fenders');
      await page.keyboard.press('Tab');
      await page.keyboard.type('E_A / 2', { delay: 20 });
    },
  },
  {
    name: 'remedy',
    height: 480,
    go: async (page) => {
      await energySheet(page);
      await retype(page, 'angle between R and the velocity', '90 - α');
      await page
        .getByText(/“deg” or “rad”/)
        .first()
        .waitFor();
    },
  },
  {
    name: 'methods',
    height: 900,
    go: async (page) => {
      await openTemplate(page, 'pile-bearing', 'Pile and soil');
      await choose(page, 'resistance inside');
      await page.getByText(/^Other methods/).click();
    },
  },
  {
    name: 'table',
    part: paper,
    height: 640,
    go: async (page) => {
      await openTemplate(page, 'debris-haul', 'Quantities and loads');
      await page.evaluate((text) => navigator.clipboard.writeText(text), takeoff);
      const first = page.locator('quay-table [data-item="r0"] [data-field]').first();
      await first.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      await first.click();
      await page.keyboard.press('Control+v');
      await page.getByText('6 rows').first().waitFor();
    },
  },
  {
    name: 'checks',
    height: 640,
    go: async (page) => {
      await energySheet(page);
      await enter(page, 'speed, stated', '0.15 m/s');
      await page.getByRole('button', { name: 'All checks' }).click();
      await computedTwice(page);
    },
  },
];
