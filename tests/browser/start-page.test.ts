import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launchBrowser } from './launch.ts';

const axeFile = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

let browser: Browser;
let page: Page;
const complaints: string[] = [];
const requested: string[] = [];

beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => requested.push(request.url()));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) =>
      console.error(`content-security policy: ${event.violatedDirective} ${event.blockedURI}`),
    );
  });
  await page.goto(inject('appAddress'), { waitUntil: 'networkidle' });
});

afterAll(() => browser?.close());

test('the page opens, with its heading', async () => {
  expect(await page.title()).toBe('Quaybook');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Quaybook');
});

test('nothing leaves the machine', () => {
  const { origin } = new URL(inject('appAddress'));
  expect(requested.length).toBeGreaterThan(1);
  expect(requested.filter((address) => new URL(address).origin !== origin)).toEqual([]);
});

test('no error, no warning, no breach of the content-security policy', () => {
  expect(complaints).toEqual([]);
});

test('the content-security policy is in force', async () => {
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.title = "an inline script ran"';
    document.head.append(script);
  });
  expect(await page.title()).toBe('Quaybook');
  expect(complaints.splice(0).join('\n')).toContain('script-src');
});

test.each(['light', 'dark'] as const)('accessible in %s colours', async (colorScheme) => {
  await page.emulateMedia({ colorScheme });
  await page.evaluate(await readFile(axeFile, 'utf8'));
  const findings = await page.evaluate(async () => {
    const { violations, passes } = await (globalThis as unknown as { axe: typeof axe }).axe.run(document);
    return { passed: passes.length, violations: violations.map(({ id, help }) => `${id}: ${help}`) };
  });
  expect(findings.violations).toEqual([]);
  expect(findings.passed).toBeGreaterThan(5);
});
