import { describe, expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import type { Expectation } from '../../src/document/index.ts';
import { enterValues, openNotebook } from '../../src/notebook/index.ts';
import { judge } from '../../src/review/cases/judge.ts';

const book = templateBook('fender-energy');

function judged(entered: Readonly<Record<string, string>>, expected: Expectation) {
  const notebook = openNotebook(book);
  const edit = enterValues(book, entered, 'a test');
  if (!edit.ok || !notebook.apply(edit.value).ok) throw new Error('a value cannot be entered');
  return judge(notebook, expected);
}

describe('a case that expects no value', () => {
  const tooSmall = { fender_size: 'size 812' };

  test('agrees where a line, a check or a cell is refused', () => {
    for (const name of ['R_d', 'c_R']) {
      expect(judged(tooSmall, { name, verdict: 'no value' })).toMatchObject({ agrees: true, covers: false });
      expect(judged({}, { name, verdict: 'no value' }).agrees).toBe(false);
      expect(judged(tooSmall, { name, verdict: 'passes' }).agrees).toBe(false);
    }
    const cell = { name: 'wharf.bents.H', row: 1, verdict: 'no value' } as const;
    expect([judged(tooSmall, cell).agrees, judged({}, cell).agrees]).toEqual([true, false]);
  });

  test('does not agree with a name that is not there, a row that is not there, or a check that does not apply', () => {
    expect(judged(tooSmall, { name: 'no_such_line', verdict: 'no value' }).agrees).toBe(false);
    expect(judged({}, { name: 'wharf.bents.H', row: 99, verdict: 'no value' }).agrees).toBe(false);
    expect(judged({}, { name: 'c_a', verdict: 'no value' }).agrees).toBe(false);
  });
});
