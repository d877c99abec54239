import { expect, test } from 'vitest';
import { typedOnScreen, writtenOnScreen } from '../../../src/app/editing/carried-unit.ts';
import { cellContent } from '../../../src/app/editing/cell-content.ts';
import { cellValueText } from '../../../src/app/editing/cell-value-text.ts';
import { pasteCells } from '../../../src/app/editing/paste.ts';
import { pasteNamed } from '../../../src/app/editing/paste-named.ts';
import { applyEdit } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { at, smallBook } from '../small-book.ts';

const notebook = openNotebook(smallBook());
const span = at('p2', 'r1', 'value');
const cell = at('p3', 'r0', 'k2');

test('a number typed without a unit is in the unit the page shows', () => {
  expect(typedOnScreen(notebook, span, 'US', '12')).toBe('12 ft');
  expect(typedOnScreen(notebook, cell, 'US', '1 1/2')).toBe('1 1/2 ft');
  expect(typedOnScreen(notebook, cell, 'US', '3 m')).toBe('3 m');
  expect(typedOnScreen(notebook, cell, 'SI', '12')).toBe('12');
  expect(typedOnScreen(notebook, cell, 'written', '12')).toBe('12');
  expect(typedOnScreen(notebook, at('p3', 'r0', 'k1'), 'US', '12')).toBe('12');
});

test('what was written without a unit says its own where the page shows another', () => {
  expect(writtenOnScreen(notebook, cell, 'US', '1')).toBe('1 m');
  expect(writtenOnScreen(notebook, cell, 'US', '2 m')).toBe('2 m');
  expect(writtenOnScreen(notebook, cell, 'SI', '1')).toBe('1');
});

test('what is copied for other programs means the same there', () => {
  // A foot is 0.3048 m.
  expect(cellValueText(notebook, cell, 'written')).toBe('1');
  expect(cellValueText(notebook, cell, 'US')).toBe('3.2808398950131 ft');
  expect(cellValueText(notebook, at('p3', 'r0', 'k3'), 'US')).toBe('6.5616797900262 ft');
  expect(cellValueText(notebook, at('p2', 'r1', 'value'), 'US')).toBe('13.123359580052 ft');
  expect(cellValueText(notebook, at('p2', 'r1', 'label'), 'US')).toBe('the L');
});

test('numbers pasted from elsewhere are in the unit the page shows', () => {
  const text = (edit: Parameters<typeof applyEdit>[1], item: string): string => {
    const applied = applyEdit(smallBook(), edit);
    if (!applied.ok) throw new Error('the edit was refused');
    return cellContent(applied.value.book, at('p3', item, 'k2')).text;
  };
  const block = pasteCells(
    smallBook(),
    cell,
    { cells: [['10'], ['20 m']], unitAt: () => 'ft', origin: 'foreign' },
    () => undefined,
  );
  if (!block.ok) throw new Error('the block was refused');
  expect([text(block.value, 'r0'), text(block.value, 'r1')]).toEqual(['10 ft', '20 m']);
  const named = pasteNamed(notebook, at('p3', 'r0', 'k1'), 'US', 'mark,length\nx,10\ny,20 m\n');
  if (!named?.ok) throw new Error('the text was refused');
  expect([text(named.value.edit, 'r0'), text(named.value.edit, 'r1')]).toEqual(['10 ft', '20 m']);
  const stated = pasteNamed(notebook, at('p3', 'r0', 'k1'), 'US', 'mark,length (m)\nx,10\ny,20\n');
  if (!stated?.ok) throw new Error('the text was refused');
  expect(text(stated.value.edit, 'r0')).toBe('10 m');
});
