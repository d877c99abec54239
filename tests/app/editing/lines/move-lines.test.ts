import { describe, expect, test } from 'vitest';
import { moveLinesBy } from '../../../../src/app/editing/lines/move-lines.ts';
import type { Book } from '../../../../src/document/index.ts';
import { at, smallBook } from '../../small-book.ts';
import { after, spans } from '../applied.ts';

/** The names of the lines of each block of the small book. */
const blocks = (book: Book): readonly string[] =>
  (book.sheets[0]?.parts ?? []).flatMap((part) =>
    part.kind === 'rows' ? [part.rows.map(({ name }) => name).join(' ')] : [],
  );

function moved(places: readonly ReturnType<typeof at>[], by: -1 | 1, book = smallBook()) {
  const made = moveLinesBy(book, places, by);
  if (!made) throw new Error('they do not move');
  return { book: made.edit.patches.length === 0 ? book : after(book, made.edit), follow: made.follow };
}

describe('several lines move by one', () => {
  const two = [at('p2', 'r3', 'value'), at('p2', 'r4', 'value')];

  test('up within their block, in their order', () => {
    expect(blocks(moved(two, -1).book)).toEqual(['L M c_M q', 'g']);
  });

  test('down across the edge of their block, and a place on them follows', () => {
    const down = moved(two, 1);
    expect(blocks(down.book)).toEqual(['L q', 'M c_M g']);
    expect(down.follow(at('p2', 'r3', 'value'))).toEqual(at('p4', 'r3', 'value'));
  });

  test('not at all where the first of them is at the edge', () => {
    expect(blocks(moved([at('p2', 'r1', 'value'), at('p2', 'r2', 'value')], -1).book)).toEqual([
      'L q M c_M',
      'g',
    ]);
  });
});

describe('several rows of a table move by one', () => {
  const two = [at('p3', 'r1', 'k1'), at('p3', 'r2', 'k1')];

  test('past the row beside them, with all their cells', () => {
    const up = moved(two, -1);
    expect(spans(up.book)).toEqual([
      ['b', '2 m'],
      ['c', ''],
      ['a', '1'],
    ]);
    expect(up.follow(at('p3', 'r2', 'k2'))).toEqual(at('p3', 'r1', 'k2'));
    expect(spans(moved([at('p3', 'r0', 'k1'), at('p3', 'r1', 'k1')], 1).book)).toEqual([
      ['c', ''],
      ['a', '1'],
      ['b', '2 m'],
    ]);
  });

  test('not at all at the edge of the table', () => {
    expect(spans(moved(two, 1).book)).toEqual(spans(smallBook()));
  });

  test('only with rows of the same table', () => {
    expect(moveLinesBy(smallBook(), [at('p2', 'r4', 'value'), at('p3', 'r0', 'k1')], 1)).toBeUndefined();
  });
});
