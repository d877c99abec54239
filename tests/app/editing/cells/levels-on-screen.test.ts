import { expect, test } from 'vitest';
import { entryForScreen, entryFromScreen } from '../../../../src/app/editing/cells/carry-unit.ts';
import { itemAt } from '../../../../src/app/view-model/places.ts';
import { blankBook, setEntry } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { quantityText } from '../../../../src/record/values/format-quantity.ts';
import { resultText } from '../../../../src/record/values/result-text.ts';

const book = blankBook();
const notebook = openNotebook({
  ...book,
  settings: { ...book.settings, datums: ['MLLW'] },
  sheets: [
    {
      key: 's',
      title: 'Levels',
      parts: [
        {
          id: 'p',
          kind: 'rows',
          rows: [
            { id: 'd', kind: 'given', name: 'El_d', entry: 'El. +15', unit: 'ft MLLW' },
            { id: 'b', kind: 'given', name: 'El_b', entry: '10', unit: 'El. ft' },
            { id: 't', kind: 'given', name: 't_a', entry: '68', unit: 'degF' },
          ],
        },
      ],
    },
  ],
});
const at = (item: string) => ({ sheet: 's', part: 'p', item, field: 'value' });
const shown = (item: string, view: 'written' | 'SI' | 'US'): string => {
  const found = itemAt(notebook, at(item));
  if (!found) throw new Error(`there is no line ${item}`);
  return quantityText(resultText(notebook, found, view));
};

test('levels and temperatures are shown in the system that is switched on, as everything beside them', () => {
  // 15 ft × 0.3048 m; 10 ft × 0.3048 m; (68 - 32) / 1.8.
  expect([shown('d', 'SI'), shown('b', 'SI'), shown('t', 'SI')]).toEqual([
    '4.572\u00a0m MLLW',
    '3.048\u00a0El. m',
    '20\u00a0°C',
  ]);
  expect(shown('d', 'US')).toBe('15\u00a0ft MLLW');
});

test.each([
  ['d', '4', '4 m MLLW', 4],
  ['d', 'El. +4', 'El. +4 m MLLW', 4],
  ['d', '-1.5', '-1.5 m MLLW', -1.5],
  ['b', 'El. 4', 'El. 4 m', 4],
  ['b', '4', '4 m', 4],
  ['d', 'El. +13 ft', 'El. +13 ft', 3.9624],
])('a level typed on %s as %s while metres are shown is one in metres', (item, typed, written, metres) => {
  expect(entryFromScreen(notebook, at(item), 'SI', typed)).toBe(written);
  const applied = notebook.apply(setEntry({ sheet: 's', part: 'p', row: item }, written));
  expect(applied.ok).toBe(true);
  const result = notebook.result(item === 'd' ? 's.El_d' : 's.El_b');
  expect(result.status === 'ok' && result.value.kind === 'number' && result.value.si).toBeCloseTo(metres, 10);
});

test('a level that was written without a unit says its own where metres are shown', () => {
  const fresh = openNotebook(notebook.book);
  fresh.apply(setEntry({ sheet: 's', part: 'p', row: 'd' }, 'El. +15'));
  expect(entryForScreen(fresh, at('d'), 'SI', 'El. +15')).toBe('El. +15 ft MLLW');
  expect(entryForScreen(fresh, at('d'), 'written', 'El. +15')).toBe('El. +15');
});
