import type { CursorMove } from './cursor-movement.ts';

/** What a key does on the page. */
export type Command =
  | { readonly kind: 'move'; readonly motion: CursorMove; readonly extend: boolean }
  | { readonly kind: 'edit'; readonly seed?: string }
  | {
      readonly kind:
        | 'clear'
        | 'undo'
        | 'redo'
        | 'select all'
        | 'collapse'
        | 'remedy'
        | 'fill down'
        | 'insert'
        | 'insert above'
        | 'delete lines'
        | 'line up'
        | 'line down'
        | 'duplicate'
        | 'menu';
    };

/** The parts of a keyboard event that commands look at. */
export type Key = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>;

const motions: Readonly<Record<string, CursorMove>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
  Home: 'row start',
  End: 'row end',
  PageUp: 'page up',
  PageDown: 'page down',
  'Ctrl+Home': 'first',
  'Ctrl+End': 'last',
};

const commands: Readonly<Record<string, Command>> = {
  Enter: { kind: 'edit' },
  F2: { kind: 'edit' },
  Tab: { kind: 'move', motion: 'next', extend: false },
  'Shift+Tab': { kind: 'move', motion: 'previous', extend: false },
  Escape: { kind: 'collapse' },
  Delete: { kind: 'clear' },
  Backspace: { kind: 'clear' },
  'Ctrl+z': { kind: 'undo' },
  'Ctrl+y': { kind: 'redo' },
  'Ctrl+Shift+z': { kind: 'redo' },
  'Ctrl+a': { kind: 'select all' },
  'Ctrl+d': { kind: 'fill down' },
  'Ctrl+Enter': { kind: 'insert' },
  'Ctrl+Shift+Enter': { kind: 'insert above' },
  Insert: { kind: 'insert' },
  'Ctrl+Shift+Backspace': { kind: 'delete lines' },
  'Alt+Enter': { kind: 'remedy' },
  'Alt+ArrowUp': { kind: 'line up' },
  'Alt+ArrowDown': { kind: 'line down' },
  'Ctrl+Shift+d': { kind: 'duplicate' },
  'Shift+F10': { kind: 'menu' },
  ContextMenu: { kind: 'menu' },
};

/** The command of a key; undefined for a key that means nothing here. Other characters type over the cell. */
export function commandOf(pressed: Key): Command | undefined {
  const { key, shiftKey, altKey } = pressed;
  const ctrl = pressed.ctrlKey || pressed.metaKey;
  const named = key.length === 1 ? key.toLowerCase() : key;
  const stem = `${ctrl ? 'Ctrl+' : ''}${altKey ? 'Alt+' : ''}`;
  const whole = `${stem}${shiftKey ? 'Shift+' : ''}${named}`;
  const known = commands[whole];
  if (known) return known;
  const motion = motions[`${stem}${named}`];
  if (motion) return { kind: 'move', motion, extend: shiftKey };
  // No entry and no formula begins with it, and it opens the sheet of keys.
  if (key === '?') return undefined;
  if (key.length === 1 && !ctrl && !altKey && key !== ' ') return { kind: 'edit', seed: key };
  return key === ' ' && whole === ' ' ? { kind: 'edit' } : undefined;
}
