import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launchBrowser } from '../launch.ts';
import { failureWords } from './figures.ts';
import { shrink } from './shrink.ts';
import { shippedBooks, walk } from './walk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Steps over each of the five books: 400 in all. */
const count = 80;

/** So often a failure is tried with fewer steps; `npm run wander` with the seed has more time for it. */
const trials = 10;

describe('a user who has no plan', () => {
  test.each(shippedBooks.map((book, at) => [book, 101 + at] as const))(
    'loses nothing in “%s”, seed %i',
    async (book, seed) => {
      const address = inject('appAddress');
      const { failures } = await walk(browser, address, book, { seed, count, most: 1 });
      const [failure] = failures;
      if (failure) {
        const shortest = await shrink(browser, address, failure, trials);
        expect.fail(failureWords({ ...shortest, seed }));
      }
    },
    300_000,
  );
});
