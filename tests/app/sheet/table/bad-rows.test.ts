import { describe, expect, test } from 'vitest';
import { badRows, unreadRows } from '../../../../src/app/sheet/table/bad-rows.ts';
import { setCells, type Table } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { columnView } from '../../../../src/record/values/cell-view.ts';
import { stones } from '../../../keyed-table.ts';
import { layersOf } from '../../../layers-of-soil.ts';
import { bookOf } from '../../../make-book.ts';

const loads: Table = {
  id: 'loads',
  kind: 'table',
  name: 'loads',
  length: 3,
  columns: [
    { id: 'k', kind: 'given', name: 'of', type: 'text', chunks: [['granite', 'bassalt', 'grannite']] },
    {
      id: 'd',
      kind: 'calc',
      name: 'dense',
      formula: 'LOOKUP(of; stones.stone; stones.ρ; "exact")',
      unit: 'kg/m^3',
    },
  ],
};
const open = () => openNotebook(bookOf({ s: [stones, loads] }));
const states = (notebook: ReturnType<typeof open>, column: number) => {
  const shown = loads.columns[column];
  if (!shown) throw new Error('no such column');
  const { at } = columnView(notebook, `s.loads.${shown.name}`, shown, 'written');
  return [0, 1, 2].map((row) => at(row).state);
};

describe('entries that stand in no row of a list', () => {
  test('are marked where they stand, and told below their table, as many as there is room for', () => {
    const notebook = open();
    expect(states(notebook, 0)).toEqual(['entered', 'bad', 'bad']);
    expect(states(notebook, 1)).toEqual(['computed', 'waits', 'waits']);
    const { listed, more } = badRows(notebook, 's.loads', loads, 4);
    expect(more).toBe(false);
    expect(listed).toEqual([
      {
        row: 1,
        column: 'k',
        name: 'of',
        message:
          '"bassalt" stands in no row of “stones.stone”; the nearest there is "basalt"; enter one that is listed there, or add a row to the list',
      },
      expect.objectContaining({ row: 2, message: expect.stringContaining('"grannite"') }),
    ]);
    expect(badRows(notebook, 's.loads', loads, 1)).toMatchObject({ listed: [{ row: 1 }], more: true });
  });

  test('are marked no more once they are mended, or the list has them', () => {
    const notebook = open();
    notebook.apply(setCells({ sheet: 's', table: 'loads', column: 'k' }, 1, ['basalt']));
    expect(states(notebook, 0)).toEqual(['entered', 'entered', 'bad']);
    notebook.apply(setCells({ sheet: 's', table: 'stones', column: 'n' }, 0, ['grannite']));
    expect(states(notebook, 0)).toEqual(['bad', 'entered', 'entered']);
  });
});

test('entries that nothing reads are told below their table, by their first row', () => {
  const layers = layersOf([50, 40, 30], [null, 20, 10]);
  const notebook = openNotebook(bookOf({ s: [layers] }));
  expect(unreadRows(notebook, 's.layers', layers)).toEqual([
    {
      row: 1,
      column: 's',
      name: 's_u',
      message: 'rows 2–3: the entry is not used for “sand”; leave it blank, or look at what “soil” says',
    },
  ]);
  notebook.apply(setCells({ sheet: 's', table: 'layers', column: 's' }, 1, [null, null]));
  expect(unreadRows(notebook, 's.layers', layers)).toEqual([]);
});
