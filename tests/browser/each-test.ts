import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { type AppPage, type Hands, openApp } from './app-page.ts';
import { launchBrowser } from './launch.ts';

let browser: Browser | undefined;
const opened: AppPage[] = [];

/** The app as this test opened it last. */
export let app: AppPage;
/** The page of `app`. */
export let page: Page;

/**
 * One browser for the tests of a file. What a test opened is closed after it, and the test fails if the page complained
 * in the console or asked for anything that is not the app's own.
 */
export function withBrowser(): void {
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterEach(async () => {
    const all = opened.splice(0);
    await Promise.all(all.map(({ context }) => context.close()));
    expect(all.flatMap(({ complaints }) => complaints)).toEqual([]);
    expect(all.flatMap(({ strangers }) => strangers)).toEqual([]);
  });
  afterAll(() => browser?.close());
}

/** Opens the app in a window of its own; `app` and `page` are it from now on. */
export async function openPage(hands: Hands = {}): Promise<void> {
  app = await openBeside(hands);
  page = app.page;
}

/** Opens the app once more: in a second window, or in a second tab of the first. */
export async function openBeside(
  hands: Hands & { readonly beside?: AppPage['context'] } = {},
): Promise<AppPage> {
  if (browser === undefined) throw new Error('withBrowser() stands at the top of a file of browser tests');
  const one = await openApp(browser, inject('appAddress'), hands);
  opened.push(one);
  return one;
}
