import type { Browser, Page } from 'playwright-core';
import { writeBook } from '../../src/document/index.ts';
import { buildApp, serveApp } from '../../tests/browser/built-app.ts';
import { launchBrowser } from '../../tests/browser/launch.ts';
import { openBookFile } from '../../tests/browser/open-book-file.ts';
import { measureFirstPaint, measureLoads } from './first-load.ts';
import { largeBook } from './large-book.ts';
import { type Act, type Pressed, workOnLargeTable, workOnTemplates } from './mixes.ts';
import { recordKeystrokes } from './recorder.ts';
import { measureTakeoff } from './takeoff.ts';
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
  const all = await inPage(browser, address, (page) => workOnTemplates(page, address));
  const [onTemplates, empty] = [
    all.filter(({ act }) => act !== 'nothing'),
    all.filter(({ act }) => act === 'nothing'),
  ];
  const large = await inPage(browser, address, async (page) => {
    await openBookFile(page, writeBook(largeBook()));
    return workOnLargeTable(page);
  });
  const takeoff = await measureTakeoff(browser, address);
  const numbers = {
    keystroke_work_p95_ms: percentile(onTemplates, 'work', 95),
    keystroke_frame_p95_ms: percentile(onTemplates, 'frame', 95),
    keystroke_work_100k_p95_ms: percentile(large, 'work', 95),
    keystroke_frame_100k_p95_ms: percentile(large, 'frame', 95),
    empty_frame_p95_ms: percentile(empty, 'frame', 95),
    keystroke_frames_vs_empty: rounded(
      percentile(onTemplates, 'frame', 95) / percentile(empty, 'frame', 95),
      2,
    ),
    takeoff_edit_frame_p95_ms: percentile(takeoff.edits, 'frame', 95),
    takeoff_undo_ms: percentile(takeoff.undos, 'frame', 50),
    takeoff_take_ms: round(takeoff.take),
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

function percentile<Key extends 'work' | 'frame'>(
  samples: readonly Readonly<Record<Key, number>>[],
  key: Key,
  share: number,
): number {
  const sorted = samples.map((sample) => sample[key]).sort((a, b) => a - b);
  const at = Math.max(0, Math.ceil((share / 100) * sorted.length) - 1);
  const value = sorted[at];
  if (value === undefined) throw new Error('nothing was measured');
  return round(value);
}

function round(value: number): number {
  return rounded(value, 1);
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
