import { expect, test } from 'vitest';
import { fieldKey } from '../../../../src/app/editor/fields/field-keys.ts';

const none = { altKey: false, shiftKey: false, ctrlKey: false, metaKey: false, isComposing: false };
const press = (key: string, arrows = false, held: Partial<typeof none> = {}) =>
  fieldKey({ key, ...none, ...held } as KeyboardEvent, arrows);

test('Enter and Tab commit and go on', () => {
  expect(press('Enter')).toEqual({ kind: 'commit', move: 'down' });
  expect(press('Enter', false, { shiftKey: true })).toEqual({ kind: 'commit', move: 'up' });
  expect(press('Tab')).toEqual({ kind: 'commit', move: 'right' });
  expect(press('Tab', false, { shiftKey: true })).toEqual({ kind: 'commit', move: 'left' });
});

test('Escape cancels and Alt+Enter takes the remedy', () => {
  expect(press('Escape')).toEqual({ kind: 'cancel' });
  expect(press('Enter', false, { altKey: true })).toEqual({ kind: 'fix' });
});

test('arrow keys commit only where typing over began, and never with another key held', () => {
  expect(press('ArrowLeft')).toBeUndefined();
  expect(press('ArrowLeft', true)).toEqual({ kind: 'commit', move: 'left' });
  expect(press('ArrowLeft', true, { shiftKey: true })).toBeUndefined();
});

test('a letter being composed of several keys is left alone', () => {
  expect(press('Enter', false, { isComposing: true })).toBeUndefined();
});
