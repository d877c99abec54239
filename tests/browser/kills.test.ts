import { expect, inject, test } from 'vitest';
import { killBrowser } from './kills/kill-browser.ts';
import { seededRandom } from './kills/seeded-random.ts';

test('whatever ends the browser while edits are entered, those called kept are found, and those of a closed tab', async () => {
  const seed = 7;
  const said: string[] = [`seed ${seed}`];
  const counts = await killBrowser(inject('appAddress'), 9, seededRandom(seed), (text) => said.push(text));
  expect(said).toEqual([`seed ${seed}`]);
  expect(counts.map(({ rounds }) => rounds)).toEqual([3, 3, 3]);
  expect(counts.every(({ edits }) => edits > 0)).toBe(true);
  expect(counts.reduce((sum, { kept }) => sum + kept, 0)).toBeGreaterThan(0);
  expect(counts.find(({ ending }) => ending === 'tab closed after the key')?.lastLost).toBe(0);
}, 180_000);
