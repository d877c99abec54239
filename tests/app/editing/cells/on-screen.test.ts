import { expect, test } from 'vitest';
import { entryForScreen, entryFromScreen } from '../../../../src/app/editing/cells/carry-unit.ts';
import { cellValueText } from '../../../../src/app/editing/cells/cell-value-text.ts';
import { headingText } from '../../../../src/app/editing/clipboard/heading-text.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';

const notebook = openNotebook(smallBook());
const span = at('p2', 'r1', 'value');
const cell = at('p3', 'r0', 'k2');

test('a number typed without a unit is in the unit the page shows', () => {
  expect(entryFromScreen(notebook, span, 'US', '12')).toBe('12 ft');
  expect(entryFromScreen(notebook, cell, 'US', '1 1/2')).toBe('1 1/2 ft');
  expect(entryFromScreen(notebook, cell, 'US', '3 m')).toBe('3 m');
  expect(entryFromScreen(notebook, cell, 'SI', '12')).toBe('12');
  expect(entryFromScreen(notebook, cell, 'written', '12')).toBe('12');
  expect(entryFromScreen(notebook, at('p3', 'r0', 'k1'), 'US', '12')).toBe('12');
});

test('what was written without a unit says its own where the page shows another', () => {
  expect(entryForScreen(notebook, cell, 'US', '1')).toBe('1 m');
  expect(entryForScreen(notebook, cell, 'US', '2 m')).toBe('2 m');
  expect(entryForScreen(notebook, cell, 'SI', '1')).toBe('1');
});

test('what is copied for other programs means the same there', () => {
  // A foot is 0.3048 m.
  expect(cellValueText(notebook, cell, 'written')).toBe('1');
  // Typed in a unit of its own, and shown so.
  expect(cellValueText(notebook, at('p3', 'r1', 'k2'), 'written')).toBe('2 m');
  expect(cellValueText(notebook, cell, 'US')).toBe('3.2808398950131 ft');
  expect(cellValueText(notebook, at('p3', 'r0', 'k3'), 'US')).toBe('6.5616797900262 ft');
  expect(cellValueText(notebook, at('p2', 'r1', 'value'), 'US')).toBe('13.123359580052 ft');
  expect(cellValueText(notebook, at('p2', 'r1', 'label'), 'US')).toBe('the L');
});

test('a heading is copied with the unit of the bare numbers below it', () => {
  const heading = (field: string, view: 'written' | 'US') =>
    headingText(notebook, at('p3', 'head', field), view);
  expect(heading('k2', 'written')).toBe('length (m)');
  expect(heading('k3', 'written')).toBe('twice (m)');
  // Each number below says its own unit there.
  expect(heading('k2', 'US')).toBe('length');
  expect(heading('k1', 'written')).toBe('mark');
  expect(headingText(notebook, cell, 'written')).toBeUndefined();
  expect(headingText(notebook, span, 'written')).toBeUndefined();
});
