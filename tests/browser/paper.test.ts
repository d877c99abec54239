import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { cell, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

/** The px of A4 and Letter within the margins, the narrower and the lower of the two. */
const PAPER = { width: 700, height: 948 };

const tell = (event: 'beforeprint' | 'afterprint') =>
  page.evaluate((name) => void dispatchEvent(new Event(name)), event);

/** The page as it is laid out for paper. */
async function toPaper(): Promise<void> {
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize(PAPER);
  await tell('beforeprint');
  await page.waitForFunction(() => document.adoptedStyleSheets.length > 0);
}

async function openDemo(): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo book' }).click();
  await page.locator('quay-line').first().waitFor();
}

async function openOverview(): Promise<void> {
  await page.getByRole('button', { name: /^All checks/ }).click();
  await page.getByRole('heading', { name: 'All checks' }).waitFor();
}

const titleField = (name: string) =>
  page.locator('quay-title-block').getByRole('textbox', { name, exact: true });

async function boxOf(of: Locator) {
  const box = await of.boundingBox();
  if (!box) throw new Error('it is not in sight');
  return box;
}

describe('the foot of a printed page', () => {
  /** The contents of the margin boxes at the foot, as the browser has read them. */
  const foot = () =>
    page.evaluate(() =>
      document.adoptedStyleSheets
        .flatMap((sheet) => Array.from(sheet.cssRules, ({ cssText }) => cssText))
        .flatMap((rule) => [...rule.matchAll(/@(bottom-\w+)[^}]*?content: ("(?:\\.|[^"\\])*".*?);/g)])
        .map(([, place, content]) => `${place}: ${content}`),
    );

  test('names project, job, sheet, revision and page, and leaves with the paper', async () => {
    await openDemo();
    await showSheet(page, 'Fender energy');
    expect(await foot()).toEqual([]);
    await tell('beforeprint');
    const left = 'bottom-left: "Saltings Point, crane upgrade · job 26-118 · Fender energy · revision B"';
    const right = 'bottom-right: "page " counter(page) " of " counter(pages)';
    expect(await foot()).toEqual([left, right]);
    // As the app's own print does: it tells of the paper before the browser does.
    await tell('beforeprint');
    expect(await foot()).toEqual([left, right]);
    await tell('afterprint');
    expect(await foot()).toEqual([]);
    await openOverview();
    await tell('beforeprint');
    expect((await foot())[0]).toContain('· All checks ·');
  });

  test('holds whatever a title is written with', async () => {
    await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
    const project = String.raw`Pier "9" \ 4; } @page { size: A5 }`;
    await titleField('Project').fill(project);
    await page.keyboard.press('Enter');
    await tell('beforeprint');
    const [left, ...others] = await foot();
    expect(others).toHaveLength(1);
    const text = /"(.*)"$/.exec(left ?? '')?.[1]?.replace(/\\(.)/g, '$1');
    expect(text?.startsWith(`${project} · `)).toBe(true);
  });

  test('calls a book without a project by its subject', async () => {
    await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
    await titleField('Project').fill('');
    await titleField('Subject').fill('Shed 4');
    await page.keyboard.press('Enter');
    await tell('beforeprint');
    expect((await foot())[0]).toContain('"Shed 4 · ');
  });
});

describe('a printed sheet', () => {
  beforeEach(async () => {
    await openDemo();
    await showSheet(page, 'Fender energy');
  });

  test('has the numbers put in on every line that has some, and the screen has not', async () => {
    const numbers = page.locator('quay-line:not(.active) .maths.numbers');
    expect(await numbers.count()).toBe(0);
    await toPaper();
    // Values of another sheet, which the paper in hand does not have.
    await expect
      .poll(() => line(page, 'contact from midship, quarter point').locator('.numbers').textContent())
      .toMatch(/262\s*m\s*4/);
    expect(await numbers.count()).toBeGreaterThan(10);
    const soft = await numbers.first().evaluate((element) => {
      const { color, fontSize } = getComputedStyle(element.querySelector('math') ?? element);
      return { color, fontSize: Number.parseFloat(fontSize) };
    });
    expect(soft.color).toBe('rgb(61, 71, 75)');
    expect(soft.fontSize).toBeLessThan(14);
    await tell('afterprint');
    await expect.poll(() => numbers.count()).toBe(0);
  });

  test('has the numbers of a check whose side is calculated, and none that repeat its sides', async () => {
    await toPaper();
    const check = (sides: string) => page.locator('quay-line.check').filter({ hasText: sides });
    await expect
      .poll(() => check('1.34 m').locator('.numbers').textContent())
      .toMatch(/2\.602\s*m\s*≥\s*10\s*%\s*×\s*13\.4\s*m/);
    expect(await check('0.662').locator('.maths.numbers').count()).toBe(0);
  });

  test('has no numbers below a formula of columns alone, which would be itself again', async () => {
    await page.locator('quay-sheet-list').getByRole('button', { name: 'Debris by layer' }).click();
    await page.locator('quay-sheet').getByRole('heading', { name: 'Debris by layer' }).waitFor();
    await toPaper();
    await expect.poll(() => page.locator('.maths.numbers').count()).toBeGreaterThan(0);
    const repeated = await page.locator('quay-line').evaluateAll(
      (lines) =>
        lines.filter((one) => {
          const [symbols, put] = ['.symbols', '.numbers'].map(
            (kind) => one.querySelector(`.maths${kind} .lines`)?.textContent,
          );
          return put !== undefined && put === symbols;
        }).length,
    );
    expect(repeated).toBe(0);
  });

  test('is without the marks that only a pointer needs', async () => {
    const chevron = line(page, 'added mass after').locator('.choice .sign');
    const table = page.getByText('the same as a table').first();
    await expect.poll(() => chevron.isVisible()).toBe(true);
    expect(await table.count()).toBe(1);
    await toPaper();
    expect(await chevron.isVisible()).toBe(false);
    expect(await table.isVisible()).toBe(false);
    expect(await line(page, 'added mass after').locator('.entry.choice').isVisible()).toBe(true);
  });
});

test('the title block is a whole box on paper, its texts wrapped', async () => {
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  const subject =
    'Demolition of the timber apron, haul to the stockpile beyond the rail yard and recycling of the concrete';
  await titleField('Subject').fill(subject);
  await page.keyboard.press('Enter');
  const block = page.locator('quay-title-block');
  const printed = block.getByText(subject);
  expect(await printed.isVisible()).toBe(false);
  await toPaper();
  expect(await titleField('Subject').isVisible()).toBe(false);
  const [text, field, whole] = [await boxOf(printed), await boxOf(printed.locator('..')), await boxOf(block)];
  expect(text.x + text.width).toBeLessThanOrEqual(field.x + field.width);
  expect(text.y + text.height).toBeLessThanOrEqual(field.y + field.height);
  expect(field.y + field.height).toBeLessThan(whole.y + whole.height);
  const sides = await block.evaluate((element) => {
    const style = getComputedStyle(element);
    return [style.borderTopWidth, style.borderRightWidth, style.borderBottomWidth, style.borderLeftWidth];
  });
  expect(new Set(sides).size).toBe(1);
  expect(Number.parseFloat(sides[0] ?? '')).toBeGreaterThan(0);
});

describe('the printed overview', () => {
  test('begins with the bars below its title, and is as wide as the paper', async () => {
    await openDemo();
    await openOverview();
    await toPaper();
    const paper = await boxOf(page.locator('quay-overview .page'));
    const bars = await boxOf(page.locator('quay-overview .quay-figure').first());
    const table = await boxOf(page.locator('quay-overview table').first());
    expect(paper.width).toBeCloseTo(PAPER.width, 0);
    expect(bars.height).toBeGreaterThan(300);
    expect(bars.y + bars.height - paper.y).toBeLessThan(PAPER.height);
    expect(table.x + table.width).toBeLessThanOrEqual(paper.x + paper.width + 1);
    const pdf = (await page.pdf({ format: 'Letter', preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)?.length).toBe(4);
  });
});

describe('after the print', () => {
  /** All that a print could leave changed. */
  const screen = () =>
    page.locator('quay-sheet').evaluate((sheet) => {
      const paper = sheet.shadowRoot?.querySelector('.page');
      const lines = [...(paper?.querySelectorAll<HTMLElement>('quay-line') ?? [])];
      const seen = lines.filter((one) => {
        const { top, bottom } = one.getBoundingClientRect();
        return top > 0 && bottom < innerHeight;
      });
      return {
        columns: paper?.getAttribute('style'),
        width: paper?.getBoundingClientRect().width,
        numbers: lines.filter((one) => one.querySelector('.numbers')).length,
        tops: seen.map((one) => [one.dataset.item, Math.round(one.getBoundingClientRect().top)]),
        rules: document.adoptedStyleSheets.length,
      };
    });

  /** The screen, when two looks at it agree. */
  async function settled() {
    let last = '';
    await expect
      .poll(async () => {
        const before = last;
        last = JSON.stringify(await screen());
        return last === before;
      })
      .toBe(true);
    return JSON.parse(last) as Awaited<ReturnType<typeof screen>>;
  }

  /** Where lines stand may differ by a pixel: a page is scrolled by whole ones, and its lines have parts of them. */
  async function expectAsBefore({ tops: topsBefore, ...before }: Awaited<ReturnType<typeof screen>>) {
    const { tops, ...after } = await settled();
    expect(after).toEqual(before);
    expect(tops.map(([item]) => item)).toEqual(topsBefore.map(([item]) => item));
    const shifts = tops.map(([, top], at) => Math.abs(Number(top) - Number(topsBefore[at]?.[1])));
    expect(Math.max(...shifts)).toBeLessThanOrEqual(1);
  }

  beforeEach(async () => {
    await openDemo();
    await showSheet(page, 'Fender energy');
    await cell(page, 'berthing energy, normal', 'value').click();
  });

  test('the screen is as it was, from the button, though the browser prints nothing', async () => {
    const before = await settled();
    expect(before.tops.length).toBeGreaterThan(4);
    await page.evaluate(() => {
      window.print = () => {
        document.body.dataset.printed = String(document.adoptedStyleSheets.length);
      };
    });
    await page.getByRole('button', { name: 'Print' }).click();
    await expect.poll(() => page.locator('body').getAttribute('data-printed')).toBe('1');
    await expectAsBefore(before);
  });

  test('the screen is as it was, from the browser', async () => {
    const before = await settled();
    await page.pdf({ format: 'A4' });
    await expectAsBefore(before);
    // A preview shows the page in the paper's width meanwhile.
    await tell('beforeprint');
    await page.emulateMedia({ media: 'print' });
    await expect.poll(async () => (await screen()).width).not.toBe(before.width);
    await page.emulateMedia({ media: 'screen' });
    await tell('afterprint');
    await expectAsBefore(before);
  });
});
