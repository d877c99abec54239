import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { openBookFile } from './open-book-file.ts';

const demo: unknown = JSON.parse(readFileSync('templates/demo/book.quaybook.json', 'utf8'));

/**
 * Opens a book of some sheets of the demo book alone, by their keys: where a test is of a few sheets, the others take most
 * of its time. What the sheets take from others is not there.
 */
export async function openPartOfDemo(page: Page, keys: readonly string[]): Promise<void> {
  if (typeof demo !== 'object' || demo === null || !('sheets' in demo) || !Array.isArray(demo.sheets))
    throw new Error('the demo book has no sheets');
  const sheets = (demo.sheets as readonly { readonly key: string }[]).filter(({ key }) => keys.includes(key));
  if (sheets.length !== keys.length) throw new Error(`the demo book has not all of ${keys.join(', ')}`);
  await openBookFile(page, JSON.stringify({ ...demo, sheets }));
}
