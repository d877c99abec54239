import { expect, test } from 'vitest';
import {
  describedWidth,
  roomFor,
  symbolWidth,
  tracksFor,
} from '../../../../src/app/sheet/paper/page-measure.ts';
import type { Row, Sheet } from '../../../../src/document/index.ts';

const sheet = (names: readonly string[], label: string): Sheet => ({
  key: 's',
  title: 'S',
  parts: [
    {
      id: 'p',
      kind: 'rows',
      rows: names.map((name): Row => ({ id: name, kind: 'calc', name, label, formula: '1', unit: '-' })),
    },
  ],
});

test('the column of symbols is as wide as the widest of them, up to a limit', () => {
  const short = symbolWidth(sheet(['a', 'b'], ''));
  const one = symbolWidth(sheet(['a', ...Array.from({ length: 60 }, (_, at) => `b_${at}`), 'governs'], ''));
  expect(short).toBe(52);
  expect(one).toBeGreaterThan(70);
  expect(symbolWidth(sheet(['a_name_that_nobody_would_write_as_a_symbol'], ''))).toBe(140);
});

test.each([345, 405, 590, 740, 760, 905, 1300])('the columns fill a page of %i px', (width) => {
  const { maths: _, stacked, ...columns } = tracksFor(width, 70, 200);
  expect(Object.values(columns).reduce((a, b) => a + b)).toBe(width);
  expect(stacked).toBe(width < 620);
});

test('stacked, a formula beside its result has the room of the description, and below it that of all', () => {
  const narrow = tracksFor(405, 70, 200);
  const room = roomFor(narrow);
  expect(room.beside).toBeCloseTo((0.92 * (405 - 12 - 70 - 20 - 88 - 58 - 34 - 14)) / 15, 9);
  expect(room.below).toBeCloseTo((0.94 * (405 - 12 - 70 - 34 - 14)) / 15, 9);
});

test('a symbol however long leaves a narrow page its width', () => {
  const { maths: _, stacked: __, ...columns } = tracksFor(345, 140, 200);
  expect(Object.values(columns).reduce((a, b) => a + b)).toBe(345);
});

test('descriptions that need little leave the room to the calculations', () => {
  const wide = tracksFor(905, 70, describedWidth(sheet(['a'], 'kinetic energy with the added mass')));
  const narrow = tracksFor(905, 70, describedWidth(sheet(['a'], 'draught')));
  expect(narrow.label).toBe(140);
  expect(wide.label).toBeGreaterThan(220);
  expect(roomFor(narrow).beside).toBeGreaterThan(roomFor(wide).beside);
});

test('two words of a description stay together in the narrowest window the page is made for', () => {
  const { label } = tracksFor(641, 60, describedWidth(sheet(['a'], 'normal berthing energy')));
  expect(label).toBeGreaterThan('normal berthing'.length * 7.1 + 12);
});
