import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { computedTwice, startFrom } from '../../tests/browser/app-page.ts';
import { median } from '../measure.ts';

/** Sizes in kB (1000 bytes): html, js and css after gzip, fonts as they are. */
export interface Loads {
  /** What the start page asks for. */
  readonly start: number;
  /** What opening a first book adds, without the next three. */
  readonly book: number;
  /** The template itself. */
  readonly template: number;
  readonly formulaEditor: number;
  readonly secondEngine: number;
}

const counted = /\.(html|js|css|json|woff2)$/;

/** What each step of a first visit loads, without a service worker that would fetch everything at once. */
export async function measureLoads(browser: Browser, address: string): Promise<Loads> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const sizes = new Map<string, number>();
  const pending: Promise<void>[] = [];
  page.on('response', (response) => {
    const path = new URL(response.url()).pathname.replace(/\/$/, '/index.html');
    if (!counted.test(path) || sizes.has(path)) return;
    pending.push(
      response.body().then((body) => {
        sizes.set(path, (path.endsWith('.woff2') ? body.length : gzipSync(body).length) / 1000);
      }),
    );
  });
  const loadedBy = async (): Promise<readonly [path: string, kb: number][]> => {
    await page.waitForLoadState('networkidle');
    await Promise.all(pending);
    return [...sizes];
  };
  await page.goto(address);
  await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
  const atStart = await loadedBy();
  await startFrom(page, 'Berthing energy and fenders');
  await computedTwice(page);
  await page.evaluate(() => customElements.whenDefined('quay-formula-field').then(() => undefined));
  const added = (await loadedBy()).slice(atStart.length);
  await context.close();
  const sum = (files: readonly [string, number][]) => files.reduce((total, [, kb]) => total + kb, 0);
  const named = (pattern: RegExp) => sum(added.filter(([path]) => pattern.test(path)));
  const [template, formulaEditor, secondEngine] = [
    named(/\.json$/),
    named(/quay-formula-field/),
    named(/\/(recheck|es)-/),
  ];
  if (Math.min(template, formulaEditor, secondEngine) === 0)
    throw new Error('a part of the app was not loaded');
  return {
    start: sum(atStart),
    book: sum(added) - template - formulaEditor - secondEngine,
    template,
    formulaEditor,
    secondEngine,
  };
}

/** The median of the first contentful paint of the start page in browsers that have never been there, in ms. */
export async function measureFirstPaint(browser: Browser, address: string, times: number): Promise<number> {
  const paints: number[] = [];
  for (let time = 0; time < times; time += 1) {
    const context = await browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(address, { waitUntil: 'load' });
    const paint = await page.waitForFunction(
      () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime,
    );
    paints.push((await paint.jsonValue()) ?? Number.NaN);
    await context.close();
  }
  return median(paints);
}
