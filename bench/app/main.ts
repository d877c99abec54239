import type { Browser, Page } from 'playwright-core';
import { writeBook } from '../../src/document/index.ts';
import { buildApp, serveApp } from '../../tests/browser/built-app.ts';
import { launchBrowser } from '../../tests/browser/launch.ts';
import { measureFirstPaint, measureLoads } from './first-load.ts';
import { largeBook } from './large-book.ts';
import { type Act, type Pressed, pressNothing, workOnLargeTable, workOnTemplates } from './mixes.ts';
import { recordKeystrokes } from './recorder.ts';
import { traced } from './trace.ts';

/** One keystroke, in milliseconds from the key going down. */
interface Sample {
  readonly act: Act;
  readonly key: string;
  /** To the end of the task that handles it, microtasks included. */
  readonly work: number;
  /** To the end of the next frame. */
  readonly frame: number;
}

// npm run bench:app -- [--json] [--as-built]: measures the built app in headless Chromium.
const json = process.argv.includes('--json');
if (!process.argv.includes('--as-built')) buildApp();
const app = await serveApp();
const browser = await launchBrowser();
try {
  await measure(browser, app.address);
} finally {
  await browser.close();
  await app.close();
}

async function measure(browser: Browser, address: string): Promise<void> {
  const firstPaint = await measureFirstPaint(browser, address, 5);
  const loads = await measureLoads(browser, address);
  const onTemplates = await inPage(browser, address, (page) => workOnTemplates(page, address));
  const large = await inPage(browser, address, async (page) => {
    await openLargeBook(page);
    return workOnLargeTable(page);
  });
  const empty = await inPage(browser, address, async (page) => {
    await page.getByRole('button', { name: 'Open the demo book' }).click();
    await page.locator('quay-line').first().waitFor();
    await page.waitForTimeout(2500);
    return pressNothing(page);
  });
  const numbers = {
    keystroke_work_p95_ms: percentile(onTemplates, 'work', 95),
    keystroke_frame_p95_ms: percentile(onTemplates, 'frame', 95),
    keystroke_work_100k_p95_ms: percentile(large, 'work', 95),
    keystroke_frame_100k_p95_ms: percentile(large, 'frame', 95),
    empty_frame_p95_ms: percentile(empty, 'frame', 95),
    first_paint_ms: round(firstPaint),
    first_load_kb: round(loads.start),
  };
  if (json) {
    console.log(JSON.stringify(numbers));
    return;
  }
  tell('shipped templates', onTemplates);
  tell('with a table of 100,000 rows', large);
  tell('a key that does nothing', empty);
  console.log(`first paint of the start page   ${firstPaint.toFixed(0)} ms, median of 5`);
  console.log('loaded, gzip');
  console.log(`  start page                    ${loads.start.toFixed(1)} kB`);
  console.log(
    `  opening a first book adds     ${loads.book.toFixed(1)} kB, and the template itself ${loads.template.toFixed(1)} kB`,
  );
  console.log(`  then the formula editor       ${loads.formulaEditor.toFixed(1)} kB`);
  console.log(`  and the second engine         ${loads.secondEngine.toFixed(1)} kB`);
  for (const [key, value] of Object.entries(numbers)) console.log(`${key.padEnd(32)}${value}`);
}

async function inPage(
  browser: Browser,
  address: string,
  work: (page: Page) => Promise<readonly Pressed[]>,
): Promise<readonly Sample[]> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await recordKeystrokes(page);
  await page.goto(address);
  const { result, restOfTask } = await traced(browser, page, () => work(page));
  await context.close();
  return result.map(({ act, key, mark, marked, frame }) => ({
    act,
    key,
    work: marked + restOfTask(mark),
    frame,
  }));
}

/** Opens the large book as a person opens a file. */
async function openLargeBook(page: Page): Promise<void> {
  // The picker of the browser cannot be answered by a program; without one the page asks through a file input.
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const buffer = Buffer.from(writeBook(largeBook()));
  await (await asked).setFiles({ name: 'takeoff.quaybook.json', mimeType: 'application/json', buffer });
  await page.locator('quay-line').first().waitFor({ timeout: 60_000 });
}

function tell(title: string, samples: readonly Sample[]): void {
  console.log(`${title}: ${samples.length} keystrokes; work and frame in ms, median / p95 / longest`);
  for (const act of new Set(samples.map((sample) => sample.act))) {
    const those = samples.filter((sample) => sample.act === act);
    const three = (key: 'work' | 'frame') =>
      [50, 95, 100].map((share) => percentile(those, key, share).toFixed(1).padStart(7)).join('');
    console.log(`  ${act.padEnd(16)}${String(those.length).padStart(4)}${three('work')}   ${three('frame')}`);
  }
  const slowest = [...samples].sort((a, b) => b.work - a.work).slice(0, 5);
  console.log(
    `  slowest: ${slowest.map(({ act, key, work }) => `${act} ${key} ${work.toFixed(1)}`).join(', ')}`,
  );
}

function percentile(samples: readonly Sample[], key: 'work' | 'frame', share: number): number {
  const sorted = samples.map((sample) => sample[key]).sort((a, b) => a - b);
  const at = Math.max(0, Math.ceil((share / 100) * sorted.length) - 1);
  const value = sorted[at];
  if (value === undefined) throw new Error('nothing was measured');
  return round(value);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
