import { expect, test } from 'vitest';
import { commandOf } from '../../../../src/app/sheet/place/keys.ts';

const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false };

test.each([
  [{ key: 'ArrowDown' }, { kind: 'move', motion: 'down', extend: false }],
  [
    { key: 'ArrowDown', shiftKey: true },
    { kind: 'move', motion: 'down', extend: true },
  ],
  [
    { key: 'Home', ctrlKey: true },
    { kind: 'move', motion: 'first', extend: false },
  ],
  [{ key: 'ArrowDown', altKey: true }, { kind: 'line down' }],
  [
    { key: 'Tab', shiftKey: true },
    { kind: 'move', motion: 'previous', extend: false },
  ],
  [{ key: 'Z', ctrlKey: true, shiftKey: true }, { kind: 'redo' }],
  [{ key: 'z', metaKey: true }, { kind: 'undo' }],
  [{ key: 'Backspace', ctrlKey: true, shiftKey: true }, { kind: 'delete lines' }],
  [{ key: '7' }, { kind: 'edit', seed: '7' }],
  [
    { key: 'É', shiftKey: true },
    { kind: 'edit', seed: 'É' },
  ],
  [{ key: ' ' }, { kind: 'edit' }],
  [{ key: 'p', ctrlKey: true }, undefined],
  [{ key: 'F5' }, undefined],
  [{ key: 'Shift', shiftKey: true }, undefined],
] as const)('%o', (key, command) => {
  expect(commandOf({ ...plain, ...key })).toEqual(command);
});
