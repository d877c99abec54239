import { expect, test } from 'vitest';
import { setEntry, writeBook } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { enterHandValue, markSeen, raiseComment } from '../../src/review/index.ts';
import { apply } from '../apply-edit.ts';
import { blockOf, bookOf, calc, given } from '../make-book.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { fileOf } from './small-book.ts';

const P = { sheet: 's', part: 'p' };
const by = { by: 'KL', date: '2026-03-01' };

/** A load of 120 kN, checked by hand, with its area seen at its source; then, if wanted, the area is another. */
function checkedBook(area?: string, hand = '120'): string {
  const notebook = openNotebook(
    bookOf({
      s: [
        blockOf(
          'p',
          given('q', '20', 'kN/m^2'),
          given('A', '6', 'm^2'),
          calc('Q', { formula: 'q * A', unit: 'kN' }),
        ),
      ],
    }),
  );
  apply(notebook, enterHandValue(notebook, { item: 'Q' }, { entry: hand, ...by }));
  const item = notebook.model.items.get('s.A');
  if (item) apply(notebook, markSeen(notebook, { item: 'A' }, item, by));
  if (area !== undefined) apply(notebook, setEntry({ ...P, row: 'A' }, area));
  if (area === '8') apply(notebook, raiseComment(notebook, { item: 'q' }, { ...by, text: 'With snow?' }));
  return fileOf(`checked-${area ?? 'as-it-was'}-${hand}.quaybook.json`, writeBook(notebook.book));
}

test('tells by sheet what agrees or was seen, and ends well', () => {
  const { status, out, err } = quaybook('checking', checkedBook());
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toContain('s: 2 of 3 checked\n');
  expect(out).toMatch(/^content {4}sha256 [0-9a-f]{64}$/m);
  expect(out).toContain('tolerance  1 % where a hand value states no other');
});

test('tells what differs, by how much', () => {
  const { status, err } = quaybook('checking', checkedBook(undefined, '130'));
  expect({ status, err }).toEqual({
    status: 1,
    err: 's.Q  by hand 130 (KL, 2026-03-01) beside 120 kN: differs by +10 kN (+8.3 %)\n',
  });
});

test('tells what is stale, from what to what, and which comments are open', () => {
  const { status, out, err } = quaybook('checking', checkedBook('8'));
  expect(status).toBe(1);
  expect(err).toBe(
    's.A  seen at its source (KL, 2026-03-01); stale since s.A: 6 m^2 → 8 m^2\n' +
      's.Q  by hand 120 (KL, 2026-03-01) beside 160 kN: differs by −40 kN (−25.0 %); stale since s.A: 6 m^2 → 8 m^2\n',
  );
  expect(out).toContain('open comment  s.q: With snow? (KL, 2026-03-01)');
});

test('gives the same as data', () => {
  const { coverage, checked } = quaybookJson('checking', checkedBook('8')).json;
  expect(coverage).toMatchObject({ all: 3, stale: 2, 'not checked': 1 });
  expect(checked).toMatchObject([
    { id: 's.A', is: 'entry', state: 'stale' },
    { id: 's.Q', is: 'result', state: 'stale', hand: '120', by: 'KL' },
  ]);
});

test('what was checked does not change the content hash', () => {
  const hash = (file: string): string | undefined => /sha256 (\S+)/.exec(quaybook('checking', file).out)?.[1];
  expect(hash(checkedBook())).toBe(hash(checkedBook(undefined, '130')));
  expect(hash(checkedBook())).not.toBe(hash(checkedBook('8')));
});
