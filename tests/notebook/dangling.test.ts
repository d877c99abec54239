import { expect, test } from 'vitest';
import { removeLines } from '../../src/app/editing/lines/line-edits.ts';
import {
  type Edit,
  removeColumn,
  removePart,
  removeSheet,
  setEntry,
  setRowField,
} from '../../src/document/index.ts';
import {
  brokenLinks,
  linkEdit,
  linkedLines,
  linkTargets,
  type Notebook,
  openNotebook,
} from '../../src/notebook/index.ts';
import { blockOf, bookOf, calc, calcColumn, choice, given, numbers, tableOf, texts } from '../make-book.ts';

const sample = (): Notebook =>
  openNotebook(
    bookOf({
      load: [
        blockOf(
          'p1',
          given('H', '10 kip', 'kip'),
          calc('twice', { formula: '2 * H', unit: 'kip' }),
          given('alone', '1 m', 'm'),
          choice('rule', 'a', 'b'),
        ),
        tableOf(
          'soil',
          2,
          numbers('top', 'm', [0, 2]),
          numbers('bottom', 'm', [2, 5]),
          texts('kind', ['clay', 'sand']),
          calcColumn('thick', { formula: 'bottom - top', unit: 'm' }),
        ),
      ],
      pile: [
        blockOf(
          'p2',
          given('H_d', '3 kip', 'kip'),
          calc('M', { formula: 'load.H * 3 ft', unit: 'kip-ft' }),
          calc('L', { formula: 'SUM(load.soil.thick)', unit: 'm' }),
          calc('v', {
            by: 'load.rule',
            methods: [
              { id: 'm1', for: ['a'], formula: '1' },
              { id: 'm2', for: ['b'], formula: 'load.alone / 1 m' },
            ],
          }),
          { id: 'at', kind: 'choice', name: 'at', entry: 'clay', from: 'load.soil.kind' },
        ),
        { id: 'c1', kind: 'chart', form: 'line', table: 'load.soil', x: 'top', y: ['thick'] },
      ],
    }),
  );

function lost(edit: Edit | undefined, notebook = sample()) {
  if (!edit) throw new Error('there is no edit');
  const done = notebook.apply(edit);
  if (!done.ok) throw new Error(done.problems.map(({ message }) => message).join('; '));
  const { lines, pictures } = done.value.dangling;
  return [...lines, ...pictures.map(({ sheet, part }) => `${sheet}/${part}`)];
}
const at = (item: string) => ({ sheet: 'load', part: 'p1', item, field: 'value' });
const without = (...items: readonly string[]) => removeLines(sample().book, items.map(at));
const column = (name: string) => removeColumn({ sheet: 'load', table: 'soil', column: name });

test.each([
  ['a line that two others use', without('H'), ['load.twice', 'pile.M']],
  ['a line together with one of its users', without('H', 'twice'), ['pile.M']],
  ['a line that a method uses which is not in force', without('alone'), ['pile.v']],
  ['what chooses methods', without('rule'), ['pile.v']],
  ['a column', column('thick'), ['pile.L', 'pile/c1']],
  ['a column that another of its table uses', column('bottom'), ['load.soil.thick']],
  ['a column of options', column('kind'), ['pile.at']],
  ['a table', removePart({ sheet: 'load', part: 'soil' }), ['pile.L', 'pile.at', 'pile/c1']],
  ['a sheet', removeSheet('load'), ['pile.M', 'pile.L', 'pile.v', 'pile.at', 'pile/c1']],
  ['a line that nothing uses', without('twice'), []],
])('what used %s is named when that goes', (_, edit, users) => {
  expect(lost(edit)).toEqual(users);
});

test.each([
  ['an entry', setEntry({ sheet: 'load', part: 'p1', row: 'H' }, '12 kip')],
  ['a formula', setRowField({ sheet: 'load', part: 'p1', row: 'twice' }, 'formula', '3 * H')],
])('another %s leaves nothing dangling', (_, edit) => {
  expect(lost(edit)).toEqual([]);
});

test('the step that brings it back leaves nothing dangling', () => {
  const notebook = sample();
  const done = notebook.apply(without('H') as Edit);
  if (!done.ok) throw new Error('it is not taken out');
  expect(lost(done.value.inverse, notebook)).toEqual([]);
});

test('a link to a line that is gone is broken, says what it led to, and is made anew', () => {
  const notebook = sample();
  const apply = (edit: ReturnType<typeof linkEdit>) => {
    const done = edit.ok ? notebook.apply(edit.value) : edit;
    if (!done.ok) throw new Error(done.problems.map(({ message }) => message).join('; '));
    return done.value;
  };
  apply(linkEdit(notebook, 'pile.H_d', 'load.H'));
  expect(brokenLinks(notebook)).toEqual([]);
  expect(apply({ ok: true, value: without('H') as Edit }).dangling.lines).toContain('pile.H_d');
  expect(linkedLines(notebook)).toEqual([]);
  expect(brokenLinks(notebook).map(({ item, to }) => [item.id, to])).toEqual([['pile.H_d', 'load.H']]);
  // What it was says what it may take its value from: a force, no length.
  expect(linkTargets(notebook, 'pile.H_d').map(({ id }) => id)).toEqual(['load.twice']);
  apply(linkEdit(notebook, 'pile.H_d', 'load.twice'));
  expect(brokenLinks(notebook)).toEqual([]);
  expect(linkedLines(notebook).map(({ from }) => from.id)).toEqual(['load.twice']);
});
