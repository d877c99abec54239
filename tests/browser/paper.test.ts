import type { Locator } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Session } from '../../src/app/session/session.ts';
import { axeFindings, line, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { countPrinted, PAPER, tell, toPaper } from './on-paper.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

/** The line of the paper with this description. */
const printedLine = (label: string): Locator => {
  const described = page.locator('[data-field="label"]').getByText(label, { exact: true });
  return page.locator('quay-printed-sheet quay-line').filter({ has: described }).first();
};

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

/** The contents of the margin boxes at the foot, as the browser has read them. */
const foot = () =>
  page.evaluate(() =>
    document.adoptedStyleSheets
      .flatMap((sheet) => Array.from(sheet.cssRules, ({ cssText }) => cssText))
      .flatMap((rule) => [...rule.matchAll(/@(bottom-\w+)[^}]*?content: ("(?:\\.|[^"\\])*".*?);/g)])
      .map(([, place, content]) => `${place}: ${content}`),
  );

describe('the foot of a printed page', () => {
  test('names project, job, sheet, revision and page, and leaves with the paper', async () => {
    await openDemo();
    await showSheet(page, 'Fender energy');
    expect(await foot()).toEqual([]);
    await tell(page, 'beforeprint');
    const right = 'bottom-right: "page " counter(page) " of " counter(pages)';
    const isFoot = [
      expect.stringMatching(
        /^bottom-left: "Saltings Point, crane upgrade · job 26-118 · Fender energy · revision B · content [\da-f]{4} [\da-f]{4}"$/,
      ),
      right,
    ];
    expect(await foot()).toEqual(isFoot);
    // A browser tells of a print that the app has laid out already.
    await tell(page, 'beforeprint');
    expect(await foot()).toEqual(isFoot);
    await tell(page, 'afterprint');
    expect(await foot()).toEqual([]);
    await openOverview();
    await tell(page, 'beforeprint');
    expect((await foot())[0]).toContain('· All checks ·');
  });

  test('holds whatever a title is written with', async () => {
    await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
    const project = String.raw`Pier "9" \ 4; } @page { size: A5 }`;
    await titleField('Project').fill(project);
    await page.keyboard.press('Enter');
    await tell(page, 'beforeprint');
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
    await tell(page, 'beforeprint');
    expect((await foot())[0]).toContain('"Shed 4 · ');
  });
});

describe('a printed sheet', () => {
  beforeEach(async () => {
    await openDemo();
    await showSheet(page, 'Fender energy');
  });

  test('has the numbers put in in full on every line that has some, and the screen has not', async () => {
    const onScreen = page.locator('quay-sheet quay-line:not(.active) .maths.numbers');
    expect(await onScreen.count()).toBe(0);
    const paper = await toPaper(page, 'full');
    const numbers = paper.locator('.maths.numbers');
    // Values of another sheet, which the paper in hand does not have.
    await expect
      .poll(() => printedLine('contact from midship, quarter point').locator('.numbers').textContent())
      .toMatch(/262\s*m\s*4/);
    expect(await numbers.count()).toBeGreaterThan(10);
    const soft = await numbers.first().evaluate((element) => {
      const { color, fontSize } = getComputedStyle(element.querySelector('math') ?? element);
      return { color, fontSize: Number.parseFloat(fontSize) };
    });
    expect(soft.color).toBe('rgb(61, 71, 75)');
    expect(soft.fontSize).toBeLessThan(14);
    await tell(page, 'afterprint');
    await expect.poll(() => paper.locator('quay-line').count()).toBe(0);
    expect(await onScreen.count()).toBe(0);
  });

  test('has them in brief where a check governs, and every formula all the same', async () => {
    const paper = await toPaper(page);
    // The energy of a berthing fails: its two sides and what they are computed from are worked out, nothing farther back.
    const failing = paper.locator('quay-line.check').filter({ hasText: 'fails' });
    await expect.poll(() => failing.count()).toBe(1);
    const brief = await paper.locator('.maths.numbers').count();
    expect(brief).toBeGreaterThan(0);
    const formulas = await paper.locator('.maths.symbols:not(.number-notes *)').count();
    await tell(page, 'afterprint');
    const full = await toPaper(page, 'full');
    expect(await full.locator('.maths.numbers').count()).toBeGreaterThan(2 * brief);
    expect(await full.locator('.maths.symbols:not(.number-notes *)').count()).toBe(formulas);
  });

  test('has the numbers of a check whose side is calculated, and none that repeat its sides', async () => {
    const paper = await toPaper(page, 'full');
    const check = (sides: string) => paper.locator('quay-line.check').filter({ hasText: sides });
    await expect
      .poll(() => check('1.34 m').locator('.numbers').textContent())
      .toMatch(/2\.602\s*m\s*≥\s*10\s*%\s*×\s*13\.4\s*m/);
    expect(await check('0.662').locator('.maths.numbers').count()).toBe(0);
  });

  test('has no numbers below a formula of columns alone, which would be itself again', async () => {
    await showSheet(page, 'Debris by layer');
    const paper = await toPaper(page, 'full');
    await expect.poll(() => paper.locator('.maths.numbers').count()).toBeGreaterThan(0);
    const repeated = await paper.locator('quay-line').evaluateAll(
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
    await expect.poll(() => chevron.isVisible()).toBe(true);
    expect(await page.getByText('the same as a table').count()).toBeGreaterThan(0);
    const paper = await toPaper(page);
    const choice = printedLine('added mass after').locator('.entry.choice');
    await expect.poll(() => choice.isVisible()).toBe(true);
    expect(await choice.locator('.sign').isVisible()).toBe(false);
    expect(await paper.getByText('the same as a table').filter({ visible: true }).count()).toBe(0);
    expect(await paper.locator('.menu-button').filter({ visible: true }).count()).toBe(0);
    expect(await chevron.isVisible()).toBe(false);
  });
});

test('a book printed in brief lacks no line, column or reference', async () => {
  await openDemo();
  const dialog = page.getByRole('dialog', { name: 'Print' });
  await page.keyboard.press('Control+p');
  await dialog.getByRole('radio', { name: 'the whole book' }).check();
  await expect
    .poll(() => dialog.getByRole('status').textContent(), { timeout: 60_000 })
    .toMatch(/^About \d+/);
  const { lacking, found } = await page.locator('quay-printed-book').evaluate((printed) => {
    const { session } = printed as HTMLElement & { session: Session };
    const plain = (text: string): string => text.replace(/\s+/g, ' ');
    const of = [...(printed.shadowRoot?.querySelectorAll('quay-printed-sheet') ?? [])];
    const lacking: string[] = [];
    let found = 0;
    // A reference that a sheet names by its mark stands with that mark on the page of sources.
    const listed = plain(
      printed.shadowRoot?.querySelector('quay-sources-page')?.shadowRoot?.textContent ?? '',
    );
    const isMarked = (words: string): boolean => {
      const before = listed.slice(0, Math.max(0, listed.indexOf(`] ${words} `)));
      return text.includes(`[${/\[(\d+)$/.exec(before)?.[1]}]`);
    };
    let text = '';
    for (const { key, parts } of session.notebook.book.sheets) {
      text = plain(of.find((one) => Reflect.get(one, 'sheet') === key)?.shadowRoot?.textContent ?? '');
      const expectText = (words: string | undefined): void => {
        if (words === undefined || words === '') return;
        if (text.includes(plain(words)) || isMarked(plain(words))) found += 1;
        else lacking.push(`${key}: ${words}`);
      };
      for (const part of parts) {
        if (part.kind === 'prose') for (const paragraph of part.text.split(/\n+/)) expectText(paragraph);
        else if (part.kind === 'rows' || part.kind === 'table') {
          for (const one of part.kind === 'rows' ? part.rows : part.columns) {
            expectText(one.label);
            // Of a line with methods the reference of the one in force stands there.
            if (!('methods' in one)) expectText(one.reference);
          }
        }
      }
    }
    return { lacking, found };
  });
  expect(lacking).toEqual([]);
  expect(found).toBeGreaterThan(900);
});

test('the title block is a whole box on paper, its texts wrapped', async () => {
  await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
  const subject =
    'Demolition of the timber apron, haul to the stockpile beyond the rail yard and recycling of the concrete';
  await titleField('Subject').fill(subject);
  await page.keyboard.press('Enter');
  const block = (await toPaper(page)).locator('quay-title-block');
  const printed = block.getByText(subject);
  expect(await block.getByRole('textbox').count()).toBe(0);
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

test('the printed overview has a bar beside each verdict, and is as wide as the paper', async () => {
  await openDemo();
  await openOverview();
  const overview = (await toPaper(page)).locator('quay-overview');
  const paper = await boxOf(overview.locator('.page'));
  const table = await boxOf(overview.locator('table').first());
  expect(paper.width).toBeCloseTo(PAPER.width, 0);
  const verdicts = overview.locator('tbody tr').filter({ hasText: /\d %/ });
  expect(await verdicts.count()).toBeGreaterThan(20);
  expect(await verdicts.filter({ has: page.locator('svg.bar') }).count()).toBe(await verdicts.count());
  expect(table.x + table.width).toBeLessThanOrEqual(paper.x + paper.width + 1);
});

describe('the dialog of printing', () => {
  const dialog = () => page.getByRole('dialog', { name: 'Print' });
  const told = async (): Promise<number> => {
    const status = dialog().getByRole('status');
    await expect.poll(() => status.textContent(), { timeout: 30_000 }).toMatch(/^\s*About \d+ pages?\./);
    return Number(/\d+/.exec((await status.textContent()) ?? '')?.[0]);
  };

  test('tells about how many pages there are; the contents number the parts as their feet do', async () => {
    await openDemo();
    await page.keyboard.press('Control+p');
    expect(await dialog().getByRole('radio', { name: 'this page: Existing wharf' }).isChecked()).toBe(true);
    await dialog().getByRole('radio', { name: 'chosen pages' }).check();
    for (const title of ['All checks', 'Fender energy'])
      await dialog().getByRole('checkbox', { name: title, exact: true }).check();
    expect(await axeFindings(page)).toEqual([]);
    for (const paper of ['A4', 'Letter']) {
      await dialog().getByRole('radio', { name: paper }).check();
      const pages = await told();
      const listed = await page
        .locator('quay-contents tbody tr')
        .evaluateAll((rows) =>
          rows.map((row) => [...row.children].slice(1, 4).map((one) => one.textContent?.trim() ?? '')),
        );
      expect(listed).toEqual([
        ['1', 'All checks', ''],
        ['2', 'Existing wharf', ''],
        ['3', 'Fender energy', '1 check fails'],
      ]);
      const feet = (await foot()).filter((one) => one.startsWith('bottom-left'));
      for (const [at, words] of [
        'Contents; part 1 of 3: All checks',
        'part 2 of 3: Existing wharf',
        'part 3 of 3: Fender energy',
      ].entries())
        expect(feet[at]).toContain(` · ${words} · `);
      expect(feet).toHaveLength(3);
      // Heads of tables that a browser repeats on paper may take one page more for a part.
      const printed = await countPrinted(page);
      expect(printed).toBeGreaterThanOrEqual(pages);
      expect(printed).toBeLessThanOrEqual(pages + 2);
    }
  });

  test('prints a book for review on fewer than twelve pages, without the list of sources, and says what it leaves out', async () => {
    await startFrom(page, 'Axial capacity of a waterside crane pile');
    await page.keyboard.press('Control+p');
    await dialog().getByRole('radio', { name: 'the whole book' }).check();
    await dialog().getByRole('radio', { name: 'for review' }).check();
    expect(await told()).toBeLessThan(12);
    const paper = page.locator('quay-printed-book');
    expect(await paper.locator('quay-sources-page').count()).toBe(0);
    const leftOut = paper.locator('quay-printed-sheet .left-out');
    await expect.poll(() => leftOut.count()).toBe(await paper.locator('quay-printed-sheet').count());
    expect(await leftOut.first().textContent()).toMatch(
      /\d+ lines and \d+ columns of tables of this sheet left out/,
    );
    expect(await countPrinted(page)).toBeLessThan(12);
  });

  test('prints the whole book, says so of a choice of nothing, and leaves the screen as it was', async () => {
    await startFrom(page, 'Demolition debris: quantities, haul fleet, cost');
    const screen = () =>
      page
        .locator('quay-sheet')
        .evaluate((sheet) => sheet.shadowRoot?.querySelector('.page')?.innerHTML.replace(/<!--.*?-->/g, ''));
    const before = await screen();
    await page.evaluate(() => {
      window.print = () => {
        document.body.dataset.printed = String(document.adoptedStyleSheets.length);
      };
    });
    await page.getByRole('button', { name: 'Print' }).click();
    await dialog().getByRole('radio', { name: 'chosen pages' }).check();
    for (const box of await dialog().getByRole('checkbox', { checked: true }).all()) await box.uncheck();
    await expect.poll(() => dialog().getByRole('status').textContent()).toContain('Nothing is chosen.');
    expect(await dialog().getByRole('button', { name: 'Print' }).isDisabled()).toBe(true);
    await dialog().getByRole('radio', { name: 'the whole book' }).check();
    await dialog().getByRole('button', { name: 'Print' }).click();
    await expect.poll(() => page.locator('body').getAttribute('data-printed')).toBe('1');
    await expect.poll(() => dialog().isVisible()).toBe(false);
    await expect.poll(() => page.locator('quay-printed-sheet').count()).toBe(0);
    expect(await page.evaluate(() => document.adoptedStyleSheets.length)).toBe(0);
    expect(await screen()).toBe(before);
  });
});
