import { expect, test } from 'vitest';
import { type Book, blankBook, type Column, chunksOfCells, writeBook } from '../../src/document/index.ts';
import { axeFindings, enter, line, secondEngine } from './app-page.ts';
import { app, openPage, page, withBrowser } from './each-test.ts';
import { longBook } from './long-book.ts';
import { openBookFile } from './open-book-file.ts';

withBrowser();

const said = () => secondEngine(page);
const says = (words: string | RegExp) =>
  expect.poll(() => said().textContent(), { timeout: 60_000, interval: 20 }).toMatch(words);

/** Keeps what the status bar says of the second engine from now on, however short, without what it says now. */
async function watchSaid(): Promise<() => Promise<readonly string[]>> {
  const watched = await said().evaluateHandle((element) => {
    const all: string[] = [];
    const note = (): void => {
      const words = element.textContent?.trim() ?? '';
      if (words !== all.at(-1)) all.push(words);
    };
    note();
    new MutationObserver(note).observe(element, { childList: true, characterData: true, subtree: true });
    return all;
  });
  return async () => (await watched.jsonValue()).slice(1);
}

const why = () => said().getByRole('button').getAttribute('title');

/** A line that can be edited and one that follows, and a table. */
function bookWith(rows: number, columns: readonly Column[]): Book {
  return {
    ...blankBook(),
    sheets: [
      {
        key: 's',
        title: 'Sums',
        parts: [
          {
            id: 'p',
            kind: 'rows',
            rows: [
              { id: 'a', kind: 'given', name: 'a', label: 'first number', entry: '1' },
              { id: 'b', kind: 'calc', name: 'b', label: 'one more', formula: 'a + 1' },
            ],
          },
          { id: 't', kind: 'table', name: 't', length: rows, columns },
        ],
      },
    ],
  };
}

const numbers = (name: string, rows: number): Column => ({
  id: name,
  kind: 'given',
  name,
  chunks: chunksOfCells(Array.from({ length: rows }, (_, row) => row)),
});
const calculated = (name: string, formula: string): Column => ({ id: name, kind: 'calc', name, formula });

test('a recheck under way is ended by an edit, and the next one is of the book as it is then', async () => {
  await openPage({ secondEngine: true });
  const workers: string[] = [];
  page.on('worker', (worker) => {
    if (!worker.url().includes('/recheck-')) return;
    workers.push('begins');
    worker.on('close', () => workers.push('ends'));
  });
  const columns = Array.from({ length: 9 }, (_, at) => calculated(`c${at}`, `n * ${at + 2} + s.a`));
  await openBookFile(page, writeBook(bookWith(15_000, [numbers('n', 15_000), ...columns])));
  await says('recheck under way…');
  const told = await watchSaid();
  await enter(page, 'first number', '2');
  // Two lines, an entered column and nine calculated ones.
  await says('computed twice: 135\u202f001 values agree');
  expect((await told()).filter((words) => words !== 'recheck waits for values')).toEqual([
    'recheck begins when you pause',
    'recheck under way…',
    'computed twice: 135\u202f001 values agree',
  ]);
  // One that is not ended would be asked again. A busy one has two seconds to end before the browser ends it.
  expect(workers.filter((one) => one === 'begins')).toHaveLength(2);
  await expect.poll(() => workers).toContain('ends');
}, 240_000);

test('while computing is stopped it says that it waits, and why', async () => {
  await openPage({ secondEngine: true });
  await openBookFile(page, writeBook(longBook));
  await says('recheck waits for values');
  await page.locator('quay-status-bar').getByRole('button', { name: 'Stop' }).click();
  await says('recheck waits: computing is stopped');
  expect(await why()).toContain('not computed');
  expect(await said().getAttribute('aria-busy')).toBe('false');
  // Longer than any pause.
  await page.waitForTimeout(4000);
  await says('recheck waits: computing is stopped');
  expect(page.workers()).toEqual([]);
});

test('what is too much for it is left out and named with the reason, and the rest is checked', async () => {
  await openPage({ secondEngine: true });
  const columns = [numbers('n', 400), calculated('below', 'COUNTIF(s.t.n * 2 < n)')];
  await openBookFile(page, writeBook(bookWith(400, columns)));
  await says('400 values of 1 line not rechecked; 1 value agrees');
  expect(await why()).toMatch(
    /s\.t\.below: not rechecked: too large: it would take more than \d+ helper cells/,
  );
});

test('a book is judged before anything is made ready for it', async () => {
  await openPage({ secondEngine: true });
  let workers = 0;
  page.on('worker', () => {
    workers += 1;
  });
  const columns = Array.from({ length: 51 }, (_, at) => numbers(`n${at}`, 10_000));
  await openBookFile(page, writeBook(bookWith(10_000, columns)));
  await says('left out: the book is too large');
  expect(await why()).toBe('too large: 510002 values, and at most 500000 are computed a second time');
  expect(workers).toBe(0);
  await enter(page, 'first number', '2');
  expect(await line(page, 'one more').textContent()).toContain('3');
}, 120_000);

test.each([
  ['failed: "out of memory"', 'failed, nothing is checked', 'out of memory'],
  [
    'report: { agree: 1, entries: 0, withoutValue: 0, indeterminate: [], notRechecked: [], resting: [], ' +
      'findings: [{ id: "s.b", engine: 2, recheck: 3, message: "s.b: 2 and 3" }] }',
    '1 value differs; 1 value agrees',
    's.b: 2 and 3',
  ],
])('a reply of {%s} is told as what it is', async (reply, words, reason) => {
  await openPage({ secondEngine: true });
  await app.context.route(/\/recheck-[^/]*\.js$/, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: `addEventListener('message', ({ data: { turn } }) => postMessage({ turn, ${reply} }));`,
    }),
  );
  await openBookFile(page, writeBook(bookWith(1, [])));
  await says(words);
  expect(await why()).toContain(reason);
  expect(await said().getAttribute('class')).toContain('bad');
});

test('a page of its own has how far it is, what differs and on which content, and cancels it', async () => {
  await openPage({ secondEngine: true });
  const columns = Array.from({ length: 9 }, (_, at) => calculated(`c${at}`, `n * ${at + 2} + s.a`));
  await openBookFile(page, writeBook(bookWith(15_000, [numbers('n', 15_000), ...columns])));
  await says('recheck under way…');
  await said().getByRole('button').click();
  const twice = page.locator('quay-recheck-page');
  await twice.getByRole('button', { name: 'Cancel' }).click();
  await says('recheck cancelled');
  await expect.poll(() => twice.getByRole('status').textContent()).toContain('nothing is checked');
  await expect.poll(() => page.workers().filter((worker) => worker.url().includes('/recheck-'))).toEqual([]);
  await twice.getByRole('button', { name: 'Compute twice' }).click();
  await says('135\u202f001 values agree');
  await expect
    .poll(async () => (await twice.locator('.page').textContent())?.replace(/\s+/g, ' '))
    .toMatch(
      /135\s001 computed values were computed twice; none differs.*Content [0-9a-f]{64}; two values agree within/,
    );
  expect(await axeFindings(page)).toEqual([]);
}, 240_000);

test('what differs stands on its page and in the panel of its line', async () => {
  await openPage({ secondEngine: true });
  await app.context.route(/\/recheck-[^/]*\.js$/, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body:
        "addEventListener('message', ({ data: { turn } }) => postMessage({ turn, report: { agree: 1, entries: 0, " +
        'withoutValue: 0, indeterminate: [], notRechecked: [{ id: "s.t", values: 2, reason: "too large" }], ' +
        'resting: ["s.a"], findings: [{ id: "s.b", engine: 2, recheck: 3, message: "s.b: 2 and 3" }] } }));',
    }),
  );
  await openBookFile(page, writeBook(bookWith(1, [])));
  await says('1 value differs');
  await said().getByRole('button').click();
  const twice = page.locator('quay-recheck-page');
  expect(await twice.getByRole('table', { name: 'Not computed twice' }).textContent()).toContain(
    '2 values: too large',
  );
  expect(await twice.getByRole('table', { name: 'Results that rest on these' }).textContent()).toContain(
    'first number',
  );
  await twice.getByRole('table', { name: 'The two differ' }).getByRole('button').click();
  await page.locator('quay-side-panel').getByText('s.b: 2 and 3').waitFor();
});
