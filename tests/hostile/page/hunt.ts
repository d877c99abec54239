import type { Browser } from 'playwright-core';
import { randomFrom } from '../../recheck/random.ts';
import type { Harm } from '../command-line.ts';
import { hostileText } from '../texts.ts';
import { type Door, doors } from './doors.ts';
import { comeBack, type Hands, settle } from './hands.ts';
import { type Seen, type Watch, watchPage } from './watch.ts';

/** What came of texts brought to the page. */
export interface PageHunt {
  readonly harms: readonly Harm[];
  /** How many texts went through each door. */
  readonly gone: ReadonlyMap<string, number>;
  /** The longest task of the page, in milliseconds by the clock, and where it came from. */
  readonly longest: { readonly ms: number; readonly from: string };
}

/** So many texts are brought into one window before it is given up for a new one, with a new book. */
const TEXTS_A_WINDOW = 25;

/** What windows begin with, in turn. */
const windows: readonly Door['from'][] = ['book', 'start', 'book', 'empty book', 'book', 'book'];

/** How long the page may take for anything before it counts as one that no longer answers. */
const PATIENCE = 60_000;

/** The books that a window begins with; texts are typed and pasted into each kind of line, table and sheet. */
const books = [
  'Berthing energy and fenders',
  'Axial capacity of a waterside crane pile',
  'Bollard pull and mooring lines',
  'Demolition debris: quantities, haul fleet, cost',
];

/** Brings so many hostile texts through the doors of the page, and gives what did harm. */
export async function huntPage(
  browser: Browser,
  address: string,
  count: number,
  seed: number,
  onHarm: (harm: Harm) => void = () => undefined,
): Promise<PageHunt> {
  const random = randomFrom(seed);
  const harms: Harm[] = [];
  const gone = new Map<string, number>();
  let opened = 0;
  let longest = { ms: 0, from: '' };
  for (let done = 0; done < count; ) {
    const from = windows[opened % windows.length] ?? 'book';
    opened += 1;
    const names = Object.keys(doors).filter((name) => doors[name]?.from === from);
    const window = await openWindow(from);
    for (let left = Math.min(TEXTS_A_WINDOW, count - done); left > 0; left -= 1) {
      const { way, text } = hostileText(random);
      const door = random.pick(names);
      const found = await harmsOf(window, doors[door] as Door, text);
      done += 1;
      if (found.longest > longest.ms)
        longest = { ms: Math.round(found.longest), from: `${door}: ${way}, ${text.length} characters` };
      if (found.gone) gone.set(door, (gone.get(door) ?? 0) + 1);
      for (const harm of found.harms) {
        const one = {
          door,
          way,
          text: text.length > 120 ? `${text.slice(0, 120)}… (${text.length})` : text,
          harm,
        };
        harms.push(one);
        onHarm(one);
      }
      if (found.isOver) break;
    }
    await window.hands.context.close();
  }
  return { harms, gone, longest };

  async function openWindow(from: Door['from']): Promise<Window> {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    // The second engine takes a core of its own after each edit: it looks at the books of one window in four.
    if (!random.oneIn(4))
      await context.route(/\/recheck-[^/]*\.js$/, (route) =>
        route.fulfill({ contentType: 'text/javascript', body: '' }),
      );
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE);
    page.on('dialog', (dialog) => void dialog.accept().catch(() => undefined));
    const watch = await watchPage(page, address);
    await page.goto(address, { waitUntil: 'load' });
    await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
    if (from === 'empty book') await page.getByRole('button', { name: 'New book' }).click();
    if (from === 'book') await page.getByRole('button', { name: random.pick(books), exact: true }).click();
    if (from === 'book') await page.getByRole('button', { name: 'Start from this template' }).click();
    if (from !== 'start') await page.locator('quay-sheet').waitFor();
    if (from === 'book') await showAnySheet({ page, context, random });
    await settle(page);
    // What opening a book costs is measured elsewhere.
    await watch.look();
    return { hands: { page, context, random }, watch, address };
  }
}

interface Window {
  readonly hands: Hands;
  readonly watch: Watch;
  readonly address: string;
}

async function showAnySheet({ page, random }: Hands): Promise<void> {
  const sheets = page.locator('quay-sheet-list nav li button:not(.menu-button)');
  await sheets.nth(random.below(await sheets.count())).click();
}

/** Brings one text through a door; whether it went, what harm it did, and whether the window is of no more use. */
async function harmsOf(
  { hands, watch, address }: Window,
  door: Door,
  text: string,
): Promise<Seen & { readonly gone: boolean; readonly isOver: boolean }> {
  const { page } = hands;
  try {
    const gone = await door.go(hands, text);
    await comeBack(hands);
    await settle(page);
    const seen = await watch.look();
    if (door.from === 'start') await page.goto(address);
    else if ((await page.locator('quay-sheet').count()) === 0) return { ...seen, gone, isOver: true };
    return { ...seen, gone, isOver: false };
  } catch (error) {
    const { harms, longest } = await watch
      .look()
      .catch(() => ({ harms: ['the page no longer answers'], longest: 0 }));
    // What is not there to be pressed as things stand is no harm; it is not counted as gone.
    const isMiss = error instanceof Error && error.name === 'TimeoutError';
    const own = isMiss ? [] : [`the hunt: ${String(error)}`];
    return { gone: false, longest, harms: [...harms, ...own], isOver: true };
  }
}
