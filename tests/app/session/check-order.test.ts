import { afterEach, expect, test, vi } from 'vitest';
import { computedSession } from '../computed-session.ts';
import { smallBook } from '../small-book.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

test('the order of checks is told to all who show it, and remembered for the next book', () => {
  const stored = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, value: string) => stored.set(key, value),
  });
  const session = computedSession(smallBook());
  const told: string[] = [];
  session.subscribe(({ kind }) => told.push(kind));
  expect(session.checkOrder).toBe('book');
  session.setCheckOrder('nearest');
  expect(session.checkOrder).toBe('nearest');
  expect(told).toEqual(['order']);
  expect(computedSession(smallBook(), 'another').checkOrder).toBe('nearest');
});

test('where the browser stores nothing it lasts as long as the book is open', () => {
  vi.stubGlobal('localStorage', {
    getItem: () => {
      throw new Error('refused');
    },
    setItem: () => {
      throw new Error('refused');
    },
  });
  const session = computedSession(smallBook());
  session.setCheckOrder('nearest');
  expect(session.checkOrder).toBe('nearest');
  expect(computedSession(smallBook(), 'another').checkOrder).toBe('book');
});
