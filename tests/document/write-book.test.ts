import { expect, test } from 'vitest';
import { blankBook, bookJsonSchema, openBook, writeBook } from '../../src/document/index.ts';
import { everyPart, textBeside } from './read-book.ts';

test('a blank book is written in the order of the format, small things on one line', () => {
  expect(writeBook(blankBook())).toBe(`{
  "format": "quaybook",
  "version": 3,
  "title": {
    "project": "",
    "subject": "",
    "job": "",
    "client": "",
    "prepared": "",
    "checked": "",
    "date": "",
    "revision": ""
  },
  "settings": { "system": "SI", "currency": "USD", "units": [], "datums": [] },
  "sheets": [{ "key": "sheet", "title": "", "parts": [] }],
  "review": { "handValues": [], "seen": [], "comments": [], "signOffs": [], "revisions": [], "bases": [] }
}
`);
});

test('a written book opens as the same book, and is written as the same text', () => {
  const text = writeBook(everyPart());
  expect(openBook(text)).toEqual({ ok: true, value: { book: everyPart(), migrated: false } });
  expect(JSON.parse(text)).toEqual(JSON.parse(textBeside('books/every-part.quaybook.json')));
});

test('the text does not depend on the order in which fields were set', () => {
  const backwards = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(backwards);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .reverse()
        .map(([key, item]) => [key, backwards(item)]),
    );
  };
  const book = everyPart();
  expect(writeBook(backwards(book) as typeof book)).toBe(writeBook(book));
});

test('the JSON Schema says what the format says', () => {
  const schema = bookJsonSchema();
  expect(schema).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    type: 'object',
    additionalProperties: false,
    required: ['format', 'version', 'title', 'settings', 'sheets', 'review'],
    properties: {
      format: { const: 'quaybook' },
      version: { const: 3 },
      sheets: { type: 'array', maxItems: 200 },
    },
  });
  const text = JSON.stringify(schema);
  for (const kind of [
    'prose',
    'rows',
    'table',
    'figure',
    'chart',
    'given',
    'choice',
    'calc',
    'check',
    'series',
  ]) {
    expect(text).toContain(`"const":"${kind}"`);
  }
});
