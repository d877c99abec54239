import { expect, test } from 'vitest';
import { openSession, type SessionEvent } from '../../../src/app/session/session.ts';
import { type Book, setEntry } from '../../../src/document/index.ts';
import { blockOf, bookOf, calc, calcColumn, given, numbers, tableOf } from '../../make-book.ts';
import { noAutosave } from '../no-autosave.ts';

const ROWS = 20_000;
/** A book with a sum over a column of so many rows. */
function bookOfRows(count: number): Book {
  const keys = Array.from({ length: count }, (_, row) => row);
  // Every row looks at every row, and no sorting helps.
  const column = calcColumn('n', 'MAX(t.k - k)');
  const block = blockOf('p', given('a', '1'), calc('b', 'a + 1'), calc('s', 'SUM(t.n)'));
  return bookOf({ j: [block, tableOf('t', count, numbers('k', undefined, keys), column)] });
}

test('long work is left for later, waits without a value, is stopped and goes on, and comes to what it would at once', () => {
  const session = openSession('book', bookOfRows(ROWS), noAutosave);
  const { notebook } = session;
  const value = (id: string) => {
    const read = notebook.result(id);
    return read.status === 'ok' && read.value.kind === 'number' ? read.value.si : read.status;
  };
  expect(value('j.b')).toBe(2);
  expect(value('j.s')).toBe('waiting');
  expect(notebook.column('j.t.n')).toMatchObject({
    status: 'waiting',
    problem: { code: 'not-computed-yet', cell: 'j.t.n' },
  });
  expect(session.computing).toMatchObject({ cells: 2, isStopped: false });
  const heard: SessionEvent[] = [];
  const leave = session.subscribe((event) => heard.push(event));
  session.stopComputing();
  expect(session.computing).toMatchObject({ isStopped: true });
  // An edit of something else is answered, and nothing of what waits is shown.
  session.apply(setEntry({ sheet: 'j', part: 'p', row: 'a' }, '5'));
  expect(value('j.b')).toBe(6);
  expect(value('j.s')).toBe('waiting');
  session.undo();
  expect(value('j.b')).toBe(2);
  notebook.proceed();
  expect(session.computing).toBeUndefined();
  // The greatest key less each key: 19,999 + 19,998 + … + 0.
  expect(value('j.s')).toBe((ROWS * (ROWS - 1)) / 2);
  leave();
  expect(heard.some(({ kind }) => kind === 'computing')).toBe(true);
}, 120_000);

test('left alone it goes on by itself, and tells its progress and its values', async () => {
  const session = openSession('book', bookOfRows(4_000), noAutosave);
  const heard: SessionEvent[] = [];
  await new Promise<void>((done) => {
    session.subscribe((event) => {
      heard.push(event);
      if (event.kind === 'computing' && !session.computing) done();
    });
    if (!session.computing) done();
  });
  expect(session.notebook.result('j.s')).toMatchObject({ status: 'ok', value: { si: (4_000 * 3_999) / 2 } });
  const come = heard.flatMap((event) => (event.kind === 'values' ? [...event.changed] : []));
  expect(come).toEqual(expect.arrayContaining(['j.t.n', 'j.s']));
}, 120_000);
