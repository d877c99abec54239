import fc from 'fast-check';
import { expect, test } from 'vitest';
import { optionsFrom, optionText } from '../../../../src/app/editing/choices/options-text.ts';

const refusal = (text: string): string => {
  const read = optionsFrom(text);
  if (read.ok) return 'taken';
  const [found] = read.problems;
  expect(found?.code).toBe('option-unread');
  return found?.message ?? '';
};

test.each([
  ['a = API\n = steel', 'line 2 of the options, “= steel”, has words and no value'],
  ['= steel', 'line 1 of the options, “= steel”, has words and no value'],
  ['a\n\tsteel', 'line 2 of the options, “steel”, has words and no value'],
  ['a\tb\tc', 'line 1 of the options, “a b c”, has 3 cells'],
  ['a = one\nb\n\na = two', 'line 4 of the options, “a = two”, has a value that stands there already'],
])('%j is refused whole, with its line', (text, words) => {
  expect(refusal(text)).toBe(words);
});

test('an option is a value, or a value and words after a sign or in the cell beside it', () => {
  expect(optionsFrom('a = API = new\r\nb\tBS\r\nc =\nd=e\n\nf\t\n')).toEqual({
    ok: true,
    value: [
      { value: 'a', label: 'API = new' },
      { value: 'b', label: 'BS' },
      { value: 'c' },
      { value: 'd=e' },
      { value: 'f' },
    ],
  });
});

const seed = 20_260_727;
const word = fc.stringMatching(/^[A-Za-z0-9ü°.,;/-]{1,8}( [A-Za-z0-9ü°.,;/-]{1,8})?$/);
const option = fc.record({ value: word, label: fc.option(word, { nil: undefined }), tab: fc.boolean() });
const list = fc.uniqueArray(option, { selector: ({ value }) => value, maxLength: 12 });

test(`every option that is written is one that is read, in its place (seed ${seed})`, () => {
  fc.assert(
    fc.property(list, fc.constantFrom('\n', '\r\n', '\n\n'), (written, end) => {
      const lines = written.map(({ value, label, tab }) =>
        label === undefined ? value : `${value}${tab ? '\t' : ' = '}${label}`,
      );
      const wanted = written.map(({ value, label }) => (label === undefined ? { value } : { value, label }));
      const read = optionsFrom(lines.join(end));
      expect(read).toEqual({ ok: true, value: wanted });
      const again = wanted.map(optionText).join('\n');
      expect(optionsFrom(again)).toEqual({ ok: true, value: wanted });
    }),
    { seed, numRuns: 300 },
  );
});
