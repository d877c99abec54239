import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { doors } from '../hostile/page/doors.ts';
import { huntPage } from '../hostile/page/hunt.ts';
import { watchPage } from '../hostile/page/watch.ts';
import { launchBrowser } from './launch.ts';

const SEED = 20_261_129;
console.log(`hostile texts through the page start from seed ${SEED}`);

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test('no hostile text makes the page throw, ask elsewhere, become an element or change a prototype', async () => {
  const { harms, gone } = await huntPage(browser, inject('appAddress'), 24, SEED);
  // How long it is busy is measured by `npm run hostile -- --page` alone: here other tests run beside it.
  expect(harms.filter(({ harm }) => !harm.startsWith('freeze'))).toEqual([]);
  expect([...gone.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThan(15);
  expect([...gone.keys()].every((name) => name in doors)).toBe(true);
}, 240_000);

test.each<readonly [what: string, harm: RegExp, act: () => void]>([
  [
    'an exception',
    /^exception: .*planted/s,
    () =>
      void setTimeout(() => {
        throw new Error('planted');
      }),
  ],
  [
    'a promise that nobody waits for',
    /^exception: .*planted/s,
    () => void Promise.reject(new Error('planted')),
  ],
  ['an error in the console', /^console: planted/, () => console.error('planted')],
  ['an element', /^element: <img/, () => document.body.append(document.createElement('img'))],
  [
    'an element of a kind that the app has',
    /^element: <form/,
    () => {
      const form = document.createElement('form');
      form.setAttribute('action', 'x');
      document.querySelector('quay-app')?.shadowRoot?.append(form);
    },
  ],
  [
    'a request',
    /content-security policy: img-src https:\/\/example\.invalid/,
    () => void new Image().setAttribute('src', 'https://example.invalid/x'),
  ],
  ['a prototype', /prototype was changed/, () => Object.assign(Object.prototype, { planted: 1 })],
  [
    'a freeze',
    /^freeze: \d+ ms/,
    () => {
      setTimeout(() => {
        const start = performance.now();
        while (performance.now() - start < 4000);
      });
    },
  ],
])('%s in the page is seen', async (_, harm, act) => {
  const page = await browser.newPage();
  const watch = await watchPage(page, inject('appAddress'));
  await page.goto(inject('appAddress'));
  await page.getByRole('heading', { name: 'Quaybook', level: 1 }).waitFor();
  expect((await watch.look()).harms).toEqual([]);
  await page.evaluate(act);
  await page.waitForTimeout(200);
  await expect.poll(async () => (await watch.look()).harms.join('\n'), { timeout: 10_000 }).toMatch(harm);
  await page.close();
});
