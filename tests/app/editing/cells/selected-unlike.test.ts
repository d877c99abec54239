import { expect, test } from 'vitest';
import { selectedUnlike } from '../../../../src/app/editing/cells/selected-unlike.ts';
import { at, smallBook } from '../../small-book.ts';

const one = [['5']];
const column = (...items: readonly string[]) => items.map((item) => [at('p3', item, 'k2')]);
const refusalWords = (unlike: ReturnType<typeof selectedUnlike>) =>
  unlike && `${unlike.code}: ${unlike.message}`;
const said = (...[selected, cells]: [Parameters<typeof selectedUnlike>[1], typeof one?]) =>
  refusalWords(selectedUnlike(smallBook(), selected, cells ?? one));

test('one cell goes over cells of one table, or over lines and words', () => {
  expect(said(column('r0', 'r1', 'r2'))).toBeUndefined();
  expect(said([[at('p3', 'r0', 'k1'), at('p3', 'r0', 'k2')]])).toBeUndefined();
  expect(said([[at('p2', 'r1', 'value')], [at('p2', 'r2', 'value')]])).toBeUndefined();
  expect(said([[at('p1', '', 'text')], [at('p2', '', 'title')], [at('p2', 'r1', 'label')]])).toBeUndefined();
});

test('one cell alone goes anywhere, and so do several cells', () => {
  expect(said(column('head'))).toBeUndefined();
  expect(said([[at('p3', '', 'title')]])).toBeUndefined();
  expect(said(column('head', 'r0'), [['length'], ['5']])).toBeUndefined();
});

test('headings, titles and lines beside the cells of a table refuse it', () => {
  const refused = (count: number) =>
    `paste-over-unlike: one cell is pasted over ${count}, and they are not all cells of one table`;
  expect(said(column('head', 'r0', 'r1'))).toBe(refused(3));
  expect(said([[at('p3', 'head', 'k1'), at('p3', 'head', 'k2')]])).toBe(refused(2));
  expect(said([[at('p3', '', 'title')], ...column('head')])).toBe(refused(2));
  expect(said([...column('r2'), [at('p4', 'r5', 'value')]])).toBe(refused(2));
  expect(said([[at('p2', 'r4', 'value')], [at('p3', '', 'title')], ...column('head', 'r0')])).toBe(
    refused(4),
  );
});
