import { readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openPage, page, withBrowser } from './each-test.ts';
import { openDemo, openTemplate, titles } from './screens/walks.ts';

const widths = [1024, 1200, 1920] as const;
type BookId = 'demo' | keyof typeof titles;
const books: readonly BookId[] = ['demo', ...(Object.keys(titles) as (keyof typeof titles)[])];

withBrowser();

interface Measured {
  /** How many formulas were looked at. */
  readonly formulas: number;
  /** How many of them are there only with numbers put in. */
  readonly numbered: number;
  /** What of the lines on the page is cut off or sticks out of its cell. */
  readonly faults: readonly string[];
  /** The width of the page (px). */
  readonly paper: number;
}

function measured(page: Page): Promise<Measured> {
  return page.locator('quay-sheet').evaluate(async (element) => {
    // A page takes the width of its window in the frame, and is drawn with it in the next.
    for (let frame = 0; frame < 3; frame += 1) await new Promise((done) => requestAnimationFrame(done));
    type Line = HTMLElement & { active: string; expanded: boolean; updateComplete: Promise<unknown> };
    const sheet = element.shadowRoot ?? element;
    for (const part of sheet.querySelectorAll<HTMLElement>('.part')) part.style.contentVisibility = 'visible';
    const lines = [...sheet.querySelectorAll<Line>('quay-line')];
    const faults: string[] = [];
    let formulas = 0;
    const look = (state: string): void => {
      for (const line of lines) {
        const name = line.querySelector('.symbol')?.textContent?.trim() ?? '';
        for (const set of line.querySelectorAll('.lines')) {
          formulas += 1;
          const over = set.scrollWidth - set.clientWidth;
          if (over > 1) faults.push(`${name} ${state}: ${over} px of a formula are cut off`);
        }
        for (const math of line.querySelectorAll('.cell math')) {
          const [inner, outer] = [math, math.closest('.cell')].map((box) => box?.getBoundingClientRect());
          if (!inner || !outer) continue;
          const out = Math.max(inner.right - outer.right, outer.left - inner.left);
          if (out > 1) faults.push(`${name} ${state}: ${Math.round(out)} px stick out of the cell`);
        }
      }
    };
    look('at rest');
    const atRest = formulas;
    // As if the person rested on each of them, which puts the numbers in.
    const before = lines.map(({ active, expanded }) => ({ active, expanded }));
    for (const line of lines) Object.assign(line, { active: 'value', expanded: true });
    await Promise.all(lines.map((line) => line.updateComplete));
    look('with numbers');
    for (const [at, line] of lines.entries()) Object.assign(line, before[at]);
    await Promise.all(lines.map((line) => line.updateComplete));
    return {
      formulas,
      numbered: formulas - 2 * atRest,
      faults,
      paper: sheet.querySelector('.page')?.clientWidth ?? 0,
    };
  });
}

test('every shipped book is looked at', () => {
  expect([...books].sort()).toEqual(readdirSync('templates').sort());
});

test.each(books)('no formula of %s is cut off in a window of any width', async (id) => {
  await openPage();
  if (id === 'demo') await openDemo(page);
  else await openTemplate(page, id);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const entries = page.locator('quay-sheet-list button[data-sheet]');
  const faults: string[] = [];
  const papers = new Set<number>();
  let formulas = 0;
  let numbered = 0;
  for (let at = 0; at < (await entries.count()); at += 1) {
    await entries.nth(at).click();
    const title = ((await entries.nth(at).locator('span').first().textContent()) ?? '').trim();
    await page.locator('quay-sheet').getByRole('heading', { name: title, exact: true }).first().waitFor();
    for (const width of widths) {
      await page.setViewportSize({ width, height: 900 });
      const found = await measured(page);
      formulas += found.formulas;
      numbered += found.numbered;
      papers.add(found.paper);
      faults.push(...found.faults.map((fault) => `${title}, ${width} px: ${fault}`));
    }
  }
  expect(papers.size).toBeGreaterThanOrEqual(3);
  expect(formulas).toBeGreaterThan(20 * widths.length);
  expect(numbered).toBeGreaterThan(5 * widths.length);
  expect(faults).toEqual([]);
});
