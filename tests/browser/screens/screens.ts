import { showSheet } from '../app-page.ts';
import type { Screen } from './take.ts';
import { choose, enter, openDemo, openTemplate, retype, titles } from './walks.ts';

type TemplateId = keyof typeof titles;
const templates = Object.keys(titles) as readonly TemplateId[];

/** A takeoff that calls its columns otherwise than the table does. */
const foreignTakeoff = `Ref,Description,Material,Qty (cy),Unit,Remarks
1.01,deck slab,concrete,"1,185",cy,
1.02,pile caps,concrete,4l0,cy,drawing S-204
1.03,timber fendering,treated timber,45,cy,
`;

/** A sheet of each template beyond its first, the one with the most on it. */
const deeper: Readonly<Record<TemplateId, string>> = {
  'bollard-pull': 'Bollards',
  'debris-haul': 'Truck, loader and fleet',
  'fender-energy': 'Berthing energy',
  'pile-bearing': 'Demand and checks',
};

const starts = templates.map(
  (id): Screen => ({
    name: `start-${id}`,
    go: (page) => page.getByRole('button', { name: titles[id], exact: true }).click(),
  }),
);

const sheets = templates.flatMap((id): readonly Screen[] => [
  { name: `${id}-first`, go: (page) => openTemplate(page, id) },
  { name: `${id}-deeper`, go: (page) => openTemplate(page, id, deeper[id]) },
  { name: `${id}-printed`, print: true, go: (page) => openTemplate(page, id, deeper[id]) },
]);

const angle = 'angle between R and the velocity';

const states: readonly Screen[] = [
  {
    name: 'new-book',
    go: async (page) => {
      await page.getByRole('button', { name: 'New book' }).click();
      await page.locator('quay-sheet').waitFor();
    },
  },
  {
    name: 'line-selected',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await choose(page, 'normal berthing energy');
    },
  },
  {
    name: 'formula-completion',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await retype(page, angle, '90 deg - γ + a');
      await page.getByRole('listbox').first().waitFor();
    },
  },
  {
    name: 'formula-problem',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await retype(page, angle, '90 - α');
      await page
        .getByText(/“deg” or “rad”|degrees/)
        .first()
        .waitFor();
    },
  },
  {
    name: 'problem-committed',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await retype(page, angle, '90 - α');
      await page.keyboard.press('Enter');
      await choose(page, angle);
    },
  },
  {
    name: 'formula-to-write',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await choose(page, angle);
      await page.keyboard.press('Control+Enter');
    },
  },
  {
    name: 'problem-list',
    go: async (page) => {
      await openDemo(page, 'Fender energy');
      await retype(page, 'reaction into the wharf', 'LOOKUP(size_of; fenders.size; "exact")');
      await page.keyboard.press('Enter');
      await enter(page, 'approach angle', '6 ton');
      await page
        .locator('quay-status-bar')
        .getByRole('button', { name: /problem/ })
        .click();
    },
  },
  {
    name: 'sheet-hovered',
    go: async (page) => {
      await openDemo(page, 'Fender energy');
      await page.locator('quay-sheet-list').getByRole('button', { name: 'Fender energy' }).hover();
    },
  },
  {
    name: 'unit-choice',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await choose(page, 'normal berthing energy', 'unit');
      await page.keyboard.press('F2');
    },
  },
  {
    name: 'line-menu',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await choose(page, angle);
      await page.keyboard.press('Shift+F10');
    },
  },
  {
    name: 'table-edited',
    go: async (page) => {
      await openTemplate(page, 'debris-haul', 'Quantities and loads');
      const thickness = page.locator('quay-table [data-item="r1"] [data-field]').nth(3);
      await thickness.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      await thickness.click();
      await page.keyboard.press('F2');
    },
  },
  {
    name: 'table-scrolled',
    go: async (page) => {
      await openTemplate(page, 'debris-haul', 'Quantities and loads');
      const mass = page.locator('quay-table [data-item="r2"] [data-field]').nth(16);
      await mass.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      await mass.click();
      await page.keyboard.press('F2');
      await page.locator('quay-formula-field .cm-content').waitFor();
    },
  },
  {
    name: 'table-csv-columns',
    go: async (page) => {
      await openTemplate(page, 'debris-haul', 'Quantities and loads');
      await page.locator('quay-table .part-title .cell.title').click();
      await page.keyboard.press('Shift+F10');
      await page.getByRole('menuitem', { name: 'Paste or open CSV' }).click();
      await page.getByRole('textbox', { name: 'Rows' }).fill(foreignTakeoff);
      await page.getByRole('combobox', { name: '“Description”' }).selectOption('item');
      await page.getByRole('combobox', { name: '“Qty' }).selectOption('V_s');
    },
  },
  {
    name: 'go-to',
    go: async (page) => {
      await openTemplate(page, 'fender-energy');
      await page.keyboard.press('Control+g');
      await page.keyboard.type('energy');
    },
  },
  {
    name: 'keys',
    go: async (page) => {
      await openTemplate(page, 'fender-energy');
      await page.locator('quay-top-bar').getByRole('button', { name: 'Keys' }).click();
    },
  },
  {
    name: 'units-us',
    go: async (page) => {
      await openTemplate(page, 'fender-energy', 'Berthing energy');
      await page.locator('quay-top-bar').getByText('US', { exact: true }).click();
    },
  },
  { name: 'demo-first', go: (page) => openDemo(page) },
  { name: 'demo-deeper', go: (page) => openDemo(page, 'Waterside pile') },
  {
    name: 'demo-figure',
    go: async (page) => {
      await openDemo(page, 'Fender energy');
      const figure = page.locator('quay-words.picture').first();
      await figure.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    },
  },
  {
    name: 'demo-failing-check',
    go: async (page) => {
      await openDemo(page, 'Fender energy');
      await choose(page, 'reaction the wharf can take');
    },
  },
  {
    name: 'demo-printed',
    print: true,
    go: async (page) => {
      await openDemo(page);
      await showSheet(page, 'Waterside pile');
    },
  },
];

/** Every screen of the app. */
export const screens: readonly Screen[] = [...starts, ...sheets, ...states];
