import type { Browser, Page } from 'playwright-core';
import { afterEach, beforeAll, expect, inject } from 'vitest';
import { type AppPage, type Hands, openApp, windowOf } from './app-page.ts';
import { launchBrowser } from './launch.ts';
import { isAsOpened, renew, watchChanges } from './renew.ts';

/** The browser of this worker, for all its files: to start one takes as long as a test. */
let browser: Promise<Browser> | undefined;
const opened: AppPage[] = [];

/** A page that the next test, be it of another file, may have as if it were opened for it, and how it was opened. */
let kept: { readonly app: AppPage; readonly hands: string; readonly times: number } | undefined;

/** So often a page is renewed at most, for what it has seen takes memory. */
const MOST_TIMES = 20;

/** The app as this test opened it last. */
export let app: AppPage;
/** The page of `app`. */
export let page: Page;

/**
 * A browser for the tests of a file. What a test opened is closed after it, and the test fails if the page complained
 * in the console or asked for anything that is not the app's own. Most of a test's time is the opening of a page: the
 * next one has it anew, with an empty storage, unless a test changed more than can be taken back.
 */
export function withBrowser(): void {
  beforeAll(async () => {
    browser ??= launchBrowser();
    await browser;
  });
  afterEach(async () => {
    const all = opened.splice(0);
    if (kept && (all.length > 1 || !(await isAsOpened(kept.app.page)))) kept = undefined;
    await Promise.all(all.filter((one) => one !== kept?.app).map(({ context }) => context.close()));
    expect(all.flatMap(({ complaints }) => complaints.splice(0))).toEqual([]);
    expect(all.flatMap(({ strangers }) => strangers.splice(0))).toEqual([]);
  });
}

/** Opens the app in a window of its own; `app` and `page` are it from now on. */
export async function openPage(hands: Hands = {}): Promise<void> {
  const as = JSON.stringify(hands);
  const before = kept;
  kept = undefined;
  if (before?.hands === as && before.times < MOST_TIMES) {
    await renew(before.app.page, windowOf(hands));
    app = before.app;
    opened.push(app);
  } else {
    await before?.app.context.close();
    app = await openBeside(hands);
    watchChanges(app);
  }
  page = app.page;
  kept = { app, hands: as, times: app === before?.app ? before.times + 1 : 0 };
}

/** Opens the app in a window that has loaded nothing of it yet. */
export async function openAnew(hands: Hands = {}): Promise<void> {
  await kept?.app.context.close();
  kept = undefined;
  await openPage(hands);
}

/** Opens the app once more: in a second window, or in a second tab of the first. */
export async function openBeside(
  hands: Hands & { readonly beside?: AppPage['context'] } = {},
): Promise<AppPage> {
  if (browser === undefined) throw new Error('withBrowser() stands at the top of a file of browser tests');
  const one = await openApp(await browser, inject('appAddress'), hands);
  opened.push(one);
  return one;
}
