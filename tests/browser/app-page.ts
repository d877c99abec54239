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

/** Opens the app in a browser of its own, or as one more tab of an open one. */
export async function openApp(
  browser: Browser,
  address: string,
  options: { readonly width?: number; readonly dark?: boolean; readonly beside?: BrowserContext } = {},
): Promise<AppPage> {
  const context =
    options.beside ??
    (await browser.newContext({
      viewport: { width: options.width ?? 1440, height: 900 },
      colorScheme: options.dark ? 'dark' : 'light',
      reducedMotion: 'reduce',
    }));
  const page = await context.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  const { origin } = new URL(address);
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
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
  await page.locator('quay-sheet-list').getByRole('button', { name: title }).click();
  await page.locator('quay-sheet').getByRole('heading', { name: title }).waitFor();
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

/** The result a line shows, its number alone. */
export async function resultOf(page: Page, label: string): Promise<string> {
  return ((await line(page, label).locator('.number').last().textContent()) ?? '').replace(/\s/g, '');
}

const axeFile = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** What axe finds on the page as it stands, a line each. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate(await readFile(axeFile, 'utf8'));
  return page.evaluate(async () => {
    const { axe: run } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await run.run();
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.flat().join(' ')}`),
    );
  });
}
