import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pages } from '../../src/cli/pages/pages.ts';

test.each(Object.keys(pages))('docs/%s is as npm run docs writes it', { timeout: 240_000 }, (name) => {
  const written = readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
  expect(pages[name]?.()).toBe(written);
});
