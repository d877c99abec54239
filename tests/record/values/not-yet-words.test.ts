import { expect, test } from 'vitest';
import { noProblemWords } from '../../../src/record/values/not-yet-words.ts';

test.each([
  [undefined, 'No problem anywhere in the book.'],
  [{ cells: 1 }, 'No problem so far; 1 line is not computed yet.'],
  [{ cells: 20, isStopped: true }, 'No problem so far; 20 lines are not computed yet.'],
])('nothing is said of lines that are left over: %o', (left, words) => {
  expect(noProblemWords(left)).toBe(words);
});
