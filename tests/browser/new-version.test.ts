import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cell, enter, openApp, showSheet, startFrom } from './app-page.ts';
import { launchBrowser } from './launch.ts';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

let folder = '';
let browser: Browser;
/** A copy of the built app, in which a new version can be put. */
const server = createServer((request, response) => {
  const path = new URL(request.url ?? '', 'http://localhost').pathname;
  const file = join(folder, path === '/' ? 'index.html' : path);
  readFile(file).then(
    (body) => response.writeHead(200, { 'content-type': types[extname(file)] ?? '' }).end(body),
    () => response.writeHead(404).end(),
  );
});

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quaybook-version-'));
  await cp(fileURLToPath(new URL('../../dist/app', import.meta.url)), folder, { recursive: true });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  server.closeAllConnections();
  server.close();
  await rm(folder, { recursive: true });
});

test('a new version is changed to in the tab that asked for it; another is told, and loses nothing', async () => {
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const first = await openApp(browser, address, { keptOffline: true });
  await first.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const second = await openApp(browser, address, { beside: first.context });
  await startFrom(second.page, 'Berthing energy and fenders');
  await showSheet(second.page, 'Berthing energy');
  await second.page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('', 'QuotaExceededError');
    };
  });
  await enter(second.page, 'softness factor', '0.91');
  await second.page.getByText('not kept: the storage of this browser is full').waitFor();

  await writeFile(join(folder, 'sw.js'), `${await readFile(join(folder, 'sw.js'), 'utf8')}\n// newer`);
  await first.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
  });
  await second.page.getByText('A new version of Quaybook is ready.').waitFor();
  const loaded = first.page.waitForEvent('load');
  await first.page.getByRole('button', { name: 'Change to it now' }).click();
  await loaded;
  await second.page.getByText('Another tab has changed to a new version of Quaybook.').waitFor();
  expect(await cell(second.page, 'softness factor', 'value').textContent()).toContain('0.91');
  // Loading it there asks first, because of what is not kept.
  const asked = second.page.waitForEvent('dialog');
  // The click is not over until the question is answered.
  const clicking = second.page.getByRole('button', { name: 'Load it here too' }).click();
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
  await clicking;
  expect(await cell(second.page, 'softness factor', 'value').textContent()).toContain('0.91');
  await first.context.close();
});
