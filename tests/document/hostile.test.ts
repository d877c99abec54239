import { expect, test } from 'vitest';
import { BOOK_LENGTH_LIMIT, openBook } from '../../src/document/index.ts';

/** Texts that are no book whatever their rest, with the whole refusal. */
const HOSTILE: readonly (readonly [text: string, code: string, message: string])[] = [
  ['', 'book-not-json', 'the file is not JSON: line 1, column 1 should have a value'],
  ['hello', 'book-not-json', 'the file is not JSON: line 1, column 1 should have a value'],
  ['{', 'book-not-json', 'the file is not JSON: line 1, column 2 should have a key in double quotes'],
  ['{"a" 1}', 'book-not-json', 'the file is not JSON: line 1, column 6 should have a colon'],
  ['{"a":1\n "b":2}', 'book-not-json', 'the file is not JSON: line 2, column 2 should have a comma or }'],
  ['[1 2]', 'book-not-json', 'the file is not JSON: line 1, column 4 should have a comma or ]'],
  ['[1,]', 'book-not-json', 'the file is not JSON: line 1, column 4 should have a value'],
  ['{"a":1,}', 'book-not-json', 'the file is not JSON: line 1, column 8 should have a key in double quotes'],
  ['{} {}', 'book-not-json', 'the file is not JSON: line 1, column 4 should have the end of the text'],
  ['["ab', 'book-not-json', 'the file is not JSON: line 1, column 5 should have a closing double quote'],
  ['["\\q"]', 'book-not-json', 'the file is not JSON: line 1, column 3 should have an escape that JSON has'],
  [
    '["\\u12"]',
    'book-not-json',
    'the file is not JSON: line 1, column 3 should have an escape that JSON has',
  ],
  [
    '["a\tb"]',
    'book-not-json',
    'the file is not JSON: line 1, column 4 should have an escape in place of a control character',
  ],
  ['[01]', 'book-not-json', 'the file is not JSON: line 1, column 3 should have a comma or ]'],
  ['[+1]', 'book-not-json', 'the file is not JSON: line 1, column 2 should have a value'],
  ['[NaN]', 'book-not-json', 'the file is not JSON: line 1, column 2 should have a value'],
  ['[nul]', 'book-not-json', 'the file is not JSON: line 1, column 2 should have a value'],
  [
    '[1e999]',
    'book-not-json',
    'the file is not JSON: line 1, column 2 should have a number that fits a float64',
  ],
  [
    '{"sheets":[{"__proto__":{"x":1}}]}',
    'book-key-forbidden',
    'sheets[0] has the forbidden key “__proto__” at line 1, column 13',
  ],
  [
    '{"\\u005f_proto__":1}',
    'book-key-forbidden',
    'the book has the forbidden key “__proto__” at line 1, column 2',
  ],
  [
    '{"title":{"constructor":1}}',
    'book-key-forbidden',
    'title has the forbidden key “constructor” at line 1, column 11',
  ],
  ['{"prototype":1}', 'book-key-forbidden', 'the book has the forbidden key “prototype” at line 1, column 2'],
  ['{"a":1,"a":2}', 'book-key-twice', 'the book has the key “a” a second time at line 1, column 8'],
  ['[]', 'book-format-wrong', 'the file is not a book: its format is missing, not “quaybook”'],
  ['null', 'book-format-wrong', 'the file is not a book: its format is missing, not “quaybook”'],
  ['{}', 'book-format-wrong', 'the file is not a book: its format is missing, not “quaybook”'],
  [
    '{"format":"other"}',
    'book-format-wrong',
    'the file is not a book: its format is “other”, not “quaybook”',
  ],
  [
    '{"format":["quaybook"]}',
    'book-format-wrong',
    'the file is not a book: its format is a list of 1, not “quaybook”',
  ],
  [
    '{"format":"quaybook"}',
    'book-version-wrong',
    'the book’s format version is missing, and should be a whole number',
  ],
  [
    '{"format":"quaybook","version":"1"}',
    'book-version-wrong',
    'the book’s format version is “1”, and should be a whole number',
  ],
  [
    '{"format":"quaybook","version":1.5}',
    'book-version-wrong',
    'the book’s format version is 1.5, and should be a whole number',
  ],
  [
    '{"format":"quaybook","version":-1}',
    'book-version-wrong',
    'the book’s format version is -1, and should be a whole number',
  ],
  [
    '{"format":"quaybook","version":7,"sheets":"of another kind"}',
    'book-newer',
    'the book was made by a newer Quaybook (version 7; this one reads up to 3)',
  ],
];

test.each(HOSTILE)('%s', (text, code, message) => {
  const opened = openBook(text);
  expect(opened.ok ? [] : opened.problems.map((found) => [found.code, found.message])).toEqual([
    [code, message],
  ]);
});

test.each(['[', '{"a":'])('a text of 100,000 times %s is too deep, not too much', (opening) => {
  const opened = openBook(opening.repeat(100_000));
  expect(opened).toMatchObject({
    ok: false,
    problems: [{ code: 'book-too-deep', data: { limit: 32, line: 1 } }],
  });
  expect(opened.ok ? '' : opened.problems[0]?.message).toBe(
    `the file nests lists and objects more than 32 levels deep at line 1, column ${32 * opening.length + 1}`,
  );
});

test('a text over the limit is refused before it is read', () => {
  const text = ' '.repeat(BOOK_LENGTH_LIMIT + 1);
  const opened = openBook(text);
  expect(opened.ok ? [] : opened.problems.map((found) => [found.code, found.message])).toEqual([
    ['book-too-large', 'the file has 100000001 characters, and a book has at most 100000000'],
  ]);
});

test('nothing a hostile text says reaches the prototype of objects', () => {
  openBook('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}');
  expect('polluted' in {}).toBe(false);
});
