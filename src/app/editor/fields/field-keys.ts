import type { CommitMove } from '../cell-edit.ts';

/** What a key does to the field of a cell. */
export type FieldKey =
  | { readonly kind: 'commit'; readonly move: CommitMove }
  | { readonly kind: 'cancel' | 'fix' };

const arrowMoves: Readonly<Record<string, CommitMove>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/**
 * Enter commits and goes down, Shift+Enter up, Tab right, Shift+Tab left; Escape cancels; Alt+Enter takes the first
 * remedy. `arrows`: the field was opened by typing over, so arrow keys commit and move as in a spreadsheet.
 */
export function fieldKey(event: KeyboardEvent, arrows: boolean): FieldKey | undefined {
  const { key, altKey, shiftKey, ctrlKey, metaKey } = event;
  if (event.isComposing) return undefined;
  if (key === 'Enter') {
    if (altKey) return { kind: 'fix' };
    return { kind: 'commit', move: shiftKey ? 'up' : 'down' };
  }
  if (key === 'Tab') return { kind: 'commit', move: shiftKey ? 'left' : 'right' };
  if (key === 'Escape') return { kind: 'cancel' };
  const move = arrowMoves[key];
  if (!arrows || move === undefined || altKey || shiftKey || ctrlKey || metaKey) return undefined;
  return { kind: 'commit', move };
}
