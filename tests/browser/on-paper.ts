import type { Locator, Page } from 'playwright-core';

/** The px of A4 and Letter within the margins, the narrower and the lower of the two. */
export const PAPER = { width: 700, height: 948 };

/** Tells the page of a print, as a browser does. */
export function tell(page: Page, event: 'beforeprint' | 'afterprint'): Promise<void> {
  return page.evaluate((name) => void dispatchEvent(new Event(name)), event);
}

/** Has the page in hand laid out for paper, as large as a sheet of it. Leads to what is on the paper. */
export async function toPaper(page: Page, working: 'brief' | 'full' = 'brief'): Promise<Locator> {
  await page
    .locator('quay-printed-book')
    .evaluate((book, how) => Object.assign(book, { working: how }), working);
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize(PAPER);
  await tell(page, 'beforeprint');
  await page.waitForFunction(() => document.adoptedStyleSheets.length > 0);
  return page.locator('quay-printed-book');
}

/** How many pages the browser prints. */
export async function countPrinted(page: Page): Promise<number> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  return pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
}
