import { describe, expect, test } from 'vitest';
import { problem } from '../../src/diagnostics/index.ts';
import { readTable, type TableColumn } from '../../src/tables/index.ts';

const COLUMNS: readonly TableColumn[] = [
  { name: 'item', kind: 'given', type: 'text' },
  { name: 'V_s', kind: 'given', unit: 'cy' },
];

function readingOf(text: string) {
  const read = readTable(text, COLUMNS);
  const problems = read.ok ? read.value.problems : read.problems;
  return {
    cells: read.ok ? read.value.cells : undefined,
    codes: problems.map(({ code }) => code),
    told: problems.find(({ code }) => code === 'signs-unseen')?.message ?? '',
    account: read.account,
  };
}

describe('signs of a text that cannot be seen are left out, and told', () => {
  test.each([
    ['a zero-width space', 'con\u200bcrete', 'U+200B'],
    ['one at the end', 'concrete\u200b', 'U+200B'],
    ['a soft hyphen', 'con\u00adcrete', 'U+00AD'],
    ['a byte order mark within', 'con\ufeffcrete', 'U+FEFF'],
    ['a word joiner', 'con\u2060crete', 'U+2060'],
    ['a joiner', 'concrete\u200d', 'U+200D'],
    ['a mark of direction', '\u200econcrete', 'U+200E'],
  ])('%s', (_, word, sign) => {
    const { cells, told } = readingOf(`item,V_s\n${word},5\nsteel,6\n`);
    expect(cells).toEqual({ item: ['concrete', 'steel'], V_s: [5, 6] });
    expect(told).toBe(`a sign that cannot be seen is left out (${sign} in line 2)`);
  });

  test('in headings and in words for totals as well', () => {
    const text = 'item,V_s\u200b\nslab,5\ncaps,6\nTo\u200btal,11\n';
    expect(readingOf(text).codes).toEqual(['row-total']);
    expect(readingOf(text.replace(/To.*\n/, '')).told).toContain('(U+200B in line 1)');
  });

  test('all of them by number, kind and line', () => {
    expect(readingOf('item,V_s\na\u200b\u200b,5\nb\u00ad,6\n').told).toBe(
      '3 signs that cannot be seen are left out (U+00AD, U+200B in lines 2 and 3)',
    );
  });

  test('a cell with nothing else is blank', () => {
    const { cells, account } = readingOf('item,V_s\na,5\nc,\u200b\n');
    expect(cells).toEqual({ item: ['a', 'c'], V_s: [5, null] });
    expect(account?.counts.blank).toBe(1);
  });
});

test.each([
  ['a Persian word with its joiner', 'می\u200cشود'],
  ['a Devanagari word', 'क\u094d\u200dष'],
  ['Hebrew with a mark of direction', 'בטון\u200f'],
  ['a picture that is joined', '👷\u200d♂️'],
])('%s keeps its signs', (_, word) => {
  const { cells, told } = readingOf(`item,V_s\n${word},5\n`);
  expect(cells?.item).toEqual([word]);
  expect(told).toBe('');
});

test('a blank at the ends that is no space is no part of a word', () => {
  expect(readingOf('item,V_s\n\u00a0concrete\u00a0,5\n').cells?.item).toEqual(['concrete']);
});

test('what cannot be seen is named where a sentence quotes it', () => {
  const facts = { line: 3, header: 'item', again: 'con\u200bcrete\u00ad and\u00a0steel' };
  expect(problem('headings-change', { from: 0, to: 0 }, facts).message).toContain(
    '“con⟨U+200B⟩crete⟨U+00AD⟩ and⟨U+00A0⟩steel”',
  );
});
