import { readFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { openBook } from '../../src/document/index.ts';
import { PROGRAM_VERSION, writeRecord } from '../../src/record/index.ts';
import { openPage, page, withBrowser } from './each-test.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();
beforeEach(async () => {
  await openPage();
});

const demo = readFileSync('templates/demo/book.quaybook.json', 'utf8');

function demoRecord(): string {
  const opened = openBook(demo);
  if (!opened.ok) throw new Error('the demo book does not open');
  return writeRecord({ book: opened.value.book, program: `Quaybook ${PROGRAM_VERSION}`, recheck: [] });
}

async function saveRecord(): Promise<string> {
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  const download = await saved;
  expect(download.suggestedFilename()).toMatch(/record\.html$/);
  return readFileSync(await download.path(), 'utf8');
}

test('the page saves the record that the command line writes, and opens it again as the same book', async () => {
  await openBookFile(page, demo);
  const text = await saveRecord();
  expect(text === demoRecord()).toBe(true);
  await page.goto(page.url().replace(/#.*$/, '#'));
  await openBookFile(page, text);
  expect((await saveRecord()) === text).toBe(true);
});

test('a browser without scripts reads it as HTML and as XML, runs nothing, and prints it on pages that are full', async () => {
  const text = demoRecord();
  const browser = page.context().browser();
  if (!browser) throw new Error('there is no browser');
  // The app's own policy would hold for what is parsed on its page.
  const reading = await browser.newContext();
  const reader = await reading.newPage();
  const parsed = await reader.evaluate((source) => {
    const xml = new DOMParser().parseFromString(source, 'application/xhtml+xml');
    const html = new DOMParser().parseFromString(source, 'text/html');
    const names = (of: Document) => [...of.querySelectorAll('*')].map(({ localName }) => localName).join(' ');
    return { broken: xml.querySelector('parsererror') !== null, same: names(xml) === names(html) };
  }, text);
  expect(parsed).toEqual({ broken: false, same: true });
  await reading.close();
  const context = await browser.newContext({ javaScriptEnabled: false });
  const plain = await context.newPage();
  const asked: string[] = [];
  plain.on('request', (request) => asked.push(request.url()));
  await plain.setContent(text);
  expect(asked).toEqual([]);
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = (await plain.pdf({ format })).toString('latin1');
    const pages = pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
    // Twice as many would be pages that hold one heading.
    expect(pages).toBeGreaterThan(40);
    expect(pages).toBeLessThan(110);
  }
  const wide = await plain
    .locator('.maths, table, svg')
    .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
  expect(wide).toBe(0);
  await context.close();
});
