import { expect, test } from 'vitest';
import type { Cell, GivenColumn } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { columnView } from '../../../src/record/values/cell-view.ts';
import { bookOf, numbers, tableOf } from '../../make-book.ts';

/** The cells of a column as the page shows them. */
function shown(unit: string, cells: readonly Cell[], more: Partial<GivenColumn> = {}): readonly string[] {
  const column = { ...numbers('x', unit, []), chunks: [cells], ...more } as GivenColumn;
  const notebook = openNotebook(bookOf({ s: [tableOf('t', cells.length, column)] }));
  const view = columnView(notebook, 's.t.x', column, 'written');
  return cells.map((_, row) => view.at(row).text);
}

const computed = [66.24999999999999, 0.7853981633974483, null, 12.5];

// Three decimals for all, as three digits of the least ask for; 12.5 stands as it is kept.
test('a column that holds computed values shows the digits that these had, and keeps them all', () => {
  expect(shown('m', computed, { toLink: 'depth of the layers' })).toEqual(['66.250', '0.785', '', '12.5']);
});

test('what is typed stands as it was typed', () => {
  expect(shown('m', computed)).toEqual(['66.24999999999999', '0.7853981633974483', '', '12.5']);
  expect(shown('m', ['1.20', '0.5'], { toLink: 'depth of the layers' })).toEqual(['1.20', '0.5']);
});
