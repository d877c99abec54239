import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openSession, type SessionEvent } from '../../../src/app/session/session.ts';
import { type Check, setEntry, stateRow } from '../../../src/document/index.ts';
import { blockOf, bookOf, calc, given } from '../../make-book.ts';
import { noAutosave } from '../no-autosave.ts';

const check: Check = { id: 'c', kind: 'check', name: 'c', formula: 'R <= F' };
const book = bookOf({
  s: [
    blockOf(
      'p',
      given('P', '60 kN', 'kN'),
      calc('R', { formula: '2 * P', unit: 'kN' }),
      calc('F', { formula: '200 kN', unit: 'kN' }),
      check,
    ),
  ],
});
const at = (row: string) => ({ sheet: 's', part: 'p', row });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('which checks stated values ease is worked out when the person pauses, and told of these checks alone', () => {
  const session = openSession('book', book, noAutosave);
  const heard: SessionEvent[] = [];
  const judgings = vi.spyOn(session.notebook, 'judgeStated');
  const leave = session.subscribe((event) => heard.push(event));
  const values = () => heard.filter((event) => event.kind === 'values').map(({ changed }) => [...changed]);
  session.apply(stateRow(at('R'), { entry: '90 kN', reason: 'measured' }));
  vi.advanceTimersByTime(250);
  // Keys that follow one another make it wait.
  session.apply(setEntry(at('P'), '61 kN'));
  vi.advanceTimersByTime(250);
  expect(judgings).not.toHaveBeenCalled();
  expect(session.notebook.easedBy('s.c')).toBeUndefined();
  vi.advanceTimersByTime(500);
  expect(session.notebook.easedBy('s.c')?.message).toBe('eased by the stated R, 90 kN for 122 kN');
  expect(values()).toEqual([['s.c']]);
  // What may be so no longer is said no more, and again once it is known.
  session.apply(setEntry(at('P'), '62 kN'));
  expect(session.notebook.easedBy('s.c')).toBeUndefined();
  vi.advanceTimersByTime(500);
  expect(session.notebook.easedBy('s.c')?.message).toBe('eased by the stated R, 90 kN for 124 kN');
  expect(values()).toEqual([['s.c'], ['s.c']]);
  leave();
  judgings.mockClear();
  session.redo();
  vi.advanceTimersByTime(5000);
  expect(judgings).not.toHaveBeenCalled();
});
