import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';

/** A page of the app as a person has it, with everything it complains of. */
export interface AppPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: string[];
  /** Addresses asked for that are not the app's own. */
  readonly strangers: string[];
}

/** The window a person has, its colours, and whether they touch it. */
export interface Hands {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** The few colours of the system in place of the page's own. */
  readonly forcedColors?: boolean;
  /** Fingers, and nothing that hovers. */
  readonly touch?: boolean;
  /** Keeps the app for work without a network, which loads all of it: for tests of that alone. */
  readonly keptOffline?: boolean;
  /** Has the second engine compute the book after each edit, which takes a core of its own: for tests of that alone. */
  readonly secondEngine?: boolean;
}

/** The window of a person, in px. */
export function windowOf({ width = 1440, height = 900 }: Hands): { width: number; height: number } {
  return { width, height };
}

/** What the browser's driver says where it keeps nothing for work without a network. */
const notKept = 'Service Worker registration blocked by Playwright';

/** Opens the app in a browser of its own, or as one more tab of an open one. */
export async function openApp(
  browser: Browser,
  address: string,
  { beside, ...hands }: Hands & { readonly beside?: BrowserContext } = {},
): Promise<AppPage> {
  const context =
    beside ??
    (await browser.newContext({
      viewport: windowOf(hands),
      colorScheme: hands.dark ? 'dark' : 'light',
      forcedColors: hands.forcedColors ? 'active' : 'none',
      // A touched page without the mobile flag would still be told that the pointer hovers.
      hasTouch: hands.touch === true,
      isMobile: hands.touch === true,
      // Who pastes or copies has said yes to it before.
      permissions: ['clipboard-read', 'clipboard-write'],
      reducedMotion: 'reduce',
      serviceWorkers: hands.keptOffline === true ? 'allow' : 'block',
    }));
  if (hands.secondEngine !== true)
    await context.route(/\/recheck-[^/]*\.js$/, (route) =>
      route.fulfill({ contentType: 'text/javascript', body: '' }),
    );
  const page = await context.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  const { origin } = new URL(address);
  page.on('console', (message) => {
    const told = message.type() === 'error' || message.type() === 'warning';
    if (told && message.text() !== notKept) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(origin) && !/^(blob|data):/.test(request.url()))
      strangers.push(request.url());
  });
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) =>
      console.error(`content-security policy: ${event.violatedDirective} ${event.blockedURI}`),
    );
  });
  await page.goto(address, { waitUntil: 'load' });
  await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
  return { page, context, complaints, strangers };
}

/** Starts from a template by pointer, and waits for its first sheet. */
export async function startFrom(page: Page, template: string): Promise<void> {
  await page.getByRole('button', { name: template, exact: true }).click();
  await page.getByRole('button', { name: 'Start from this template' }).click();
  await page.locator('quay-line').first().waitFor();
}

/** Shows a sheet of the open book. */
export async function showSheet(page: Page, title: string): Promise<void> {
  const entry = page.locator('quay-sheet-list').getByRole('button', { name: title });
  // A narrow window shows the list when it is asked for.
  // A book that is still being opened shows no list yet, which is not to be taken for a folded one.
  await page.getByRole('button', { name: 'List of sheets' }).waitFor();
  if (!(await page.locator('quay-sheet-list').isVisible()))
    await page.getByRole('button', { name: 'List of sheets' }).click();
  await entry.click();
  await page.locator('quay-sheet').getByRole('heading', { name: title, level: 2 }).waitFor();
}

/** The line with this description. */
export function line(page: Page, label: string): Locator {
  const description = page.locator('[data-field="label"]').getByText(label, { exact: true });
  return page.locator('quay-line').filter({ has: description }).first();
}

/** One cell of a line. */
export function cell(page: Page, label: string, field: string): Locator {
  return line(page, label).locator(`[data-field="${field}"]`);
}

/** Waits until the page shows what was done so far: lines are drawn for the next frame, pictures right after it. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => setTimeout(() => setTimeout(done)))),
  );
}

/** Waits until every value of the book is worked out: which check fails next is not known before. */
export async function computed(page: Page): Promise<void> {
  const left = page.locator('quay-status-bar').getByRole('group', { name: 'Computing' });
  await left.waitFor({ state: 'detached' });
  await drawn(page);
}

/** Types over the value of a line of the sheet shown, and waits until everything shows what follows. */
export async function enter(page: Page, label: string, entry: string): Promise<void> {
  await cell(page, label, 'value').click();
  await page.keyboard.type(entry);
  await page.keyboard.press('Enter');
  await drawn(page);
}

/** The result a line shows after all that was done, its number alone. */
export async function resultOf(page: Page, label: string): Promise<string> {
  await drawn(page);
  return ((await line(page, label).locator('.number').last().textContent()) ?? '').replace(/\s/g, '');
}

/** What has the focus, in a few words. */
export function focusedWords(page: Page): Promise<string> {
  return page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.textContent?.trim().replace(/\s+/g, ' ') ?? '';
  });
}

/** Opens the menu of what has the focus, and chooses from it with the keyboard alone. Throws if the menu lacks it. */
export async function chooseFromMenu(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: words, exact: true }).waitFor();
  for (let step = 0; step < 40 && (await focusedWords(page)) !== words; step += 1)
    await page.keyboard.press('ArrowDown');
  if ((await focusedWords(page)) !== words) throw new Error(`the arrow keys do not reach “${words}”`);
  await page.keyboard.press('Enter');
}

const axeFile = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/**
 * What axe finds, a line each: of the dialog that has the page to itself, else of all that is on the page. What stands
 * behind a dialog is judged where a test shows it, and takes most of the time.
 */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  // Read once on each page: what the browser has learnt to run fast is not learnt anew.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(await readFile(axeFile, 'utf8'));
  const modal = page.locator('dialog:modal').last();
  const judged = (await modal.count()) > 0 ? modal : page.locator('html');
  return judged.evaluate(async (element) => {
    const { axe: run } = globalThis as unknown as { axe: typeof axe };
    // What all the other rules found on each element would take most of the time.
    const { violations } = await run.run(element.localName === 'html' ? document : element, {
      resultTypes: ['violations'],
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.flat().join(' ')}`),
    );
  });
}

/** What the status bar says of the second engine. */
export function secondEngine(page: Page): Locator {
  return page.locator('quay-status-bar .second');
}

/** Waits until the second engine has computed the book. */
export async function computedTwice(page: Page): Promise<void> {
  await page
    .locator('quay-status-bar')
    .getByText(/^computed twice: .* values agree$/)
    .waitFor({ timeout: 120_000 });
}
