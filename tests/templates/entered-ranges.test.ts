import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import { type Item, openNotebook } from '../../src/notebook/index.ts';

/** Templates of which every table says between which values its numbers lie, those of factors too. */
const templates = ['pile-bearing', 'fender-energy', 'debris-haul', 'bollard-pull'];

test.each(templates)('every number entered in %s has a least and a greatest value', (id) => {
  const { model } = openNotebook(templateBook(id));
  const entered = [...model.items.values()].flatMap(rangeOf);
  expect(entered.length).toBeGreaterThan(60);
  const open = entered.filter(({ range }) => range?.min === undefined || range.max === undefined);
  expect(open.map(({ name }) => name)).toEqual([]);
});

interface Entered {
  readonly name: string;
  readonly range?: { readonly min?: string; readonly max?: string };
}

/** A number or level that is entered. */
function rangeOf(item: Item): readonly Entered[] {
  if (item.type.kind !== 'number' && item.type.kind !== 'point') return [];
  if (item.kind === 'input') return item.row.kind === 'given' ? [{ ...item.row, name: item.id }] : [];
  if (item.kind !== 'input column' || item.column.kind !== 'given') return [];
  return [{ ...item.column, name: item.id }];
}
