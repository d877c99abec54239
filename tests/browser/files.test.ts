import { beforeEach, expect, test } from 'vitest';
import { enter, showSheet, startFrom } from './app-page.ts';
import { openPage, page, withBrowser } from './each-test.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
  // Files that the test holds: writing ends when it says so, and each write is remembered.
  await page.evaluate(() => {
    const files: Record<string, string[]> = {};
    const waiting: (() => void)[] = [];
    let slow = false;
    let picked = 0;
    Object.assign(globalThis, {
      files,
      makeSlow: () => {
        slow = true;
      },
      endWrites: () => {
        slow = false;
        for (const end of waiting.splice(0)) end();
      },
      showSaveFilePicker: () => {
        picked += 1;
        const name = `file-${picked}.json`;
        files[name] = [];
        return Promise.resolve({
          name,
          createWritable: () => {
            let text = '';
            return Promise.resolve({
              write: (written: string) => {
                text = written;
                return Promise.resolve();
              },
              close: async () => {
                if (slow) await new Promise<void>((end) => waiting.push(end));
                files[name]?.push(text);
              },
            });
          },
        });
      },
    });
  });
});

interface Hold {
  readonly files: Record<string, string[]>;
  readonly makeSlow: () => void;
  readonly endWrites: () => void;
}
const written = () => page.evaluate(() => (globalThis as unknown as Hold).files);

test('a slow write of one book does not make its file that of the next', async () => {
  await startFrom(page, 'Berthing energy and fenders');
  await page.evaluate(() => (globalThis as unknown as Hold).makeSlow());
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByRole('button', { name: 'Quaybook' }).click();
  await startFrom(page, 'Bollard pull and mooring lines');
  await page.evaluate(() => (globalThis as unknown as Hold).endWrites());
  await page.getByText('“Berthing energy and fenders” saved to file-1.json').waitFor();
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('saved to file-2.json', { exact: true }).waitFor();
  const files = await written();
  expect(Object.keys(files)).toEqual(['file-1.json', 'file-2.json']);
  expect(files['file-1.json']).toHaveLength(1);
  expect(JSON.parse(files['file-1.json']?.[0] ?? '').title.subject).toBe('Berthing energy and fenders');
  expect(JSON.parse(files['file-2.json']?.[0] ?? '').title.subject).toBe('Bollard pull and mooring lines');
});

test('two saves of one book end with the newer one, in the same file', async () => {
  await startFrom(page, 'Berthing energy and fenders');
  await showSheet(page, 'Berthing energy');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('saved to file-1.json', { exact: true }).waitFor();
  await page.evaluate(() => (globalThis as unknown as Hold).makeSlow());
  await enter(page, 'softness factor', '0.91');
  // It is not said of the book as it is now.
  await expect.poll(() => page.getByText('saved to file-1.json', { exact: true }).count()).toBe(0);
  await page.keyboard.press('Control+s');
  await enter(page, 'softness factor', '0.92');
  await page.keyboard.press('Control+s');
  await page.evaluate(() => (globalThis as unknown as Hold).endWrites());
  await page.getByText('saved to file-1.json', { exact: true }).waitFor();
  const { 'file-1.json': writes = [] } = await written();
  expect(writes).toHaveLength(3);
  expect(writes[1]).toContain('"0.91"');
  expect(writes[2]).toContain('"0.92"');
});
