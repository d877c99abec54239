import type { Page } from 'playwright-core';

/** Opens the text of a book as a person opens a file, and waits for its first line. */
export async function openBookFile(page: Page, text: string): Promise<void> {
  // The picker of the browser cannot be answered by a program; without one the page asks through a file input.
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showOpenFilePicker'));
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  const buffer = Buffer.from(text);
  await (await asked).setFiles({ name: 'takeoff.quaybook.json', mimeType: 'application/json', buffer });
  await page.locator('quay-line').first().waitFor({ timeout: 120_000 });
}
