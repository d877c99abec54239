import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pages } from '../../src/cli/pages/pages.ts';

test.each(Object.keys(pages))('%s is as npm run docs writes it', { timeout: 240_000 }, (path) => {
  const written = readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  expect(pages[path]?.()).toBe(written);
});
