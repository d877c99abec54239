import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FORMAT_VERSION, openBook } from '../../src/document/index.ts';
import { MIGRATIONS } from '../../src/document/opening/migrations/migrate.ts';
import { everyPart, textBeside } from './read-book.ts';

test('a sound book opens as it was written', () => {
  const text = textBeside('books/every-part.quaybook.json');
  expect(openBook(text)).toEqual({ ok: true, value: { book: JSON.parse(text), migrated: false } });
  expect(openBook(`\ufeff${text}`).ok).toBe(true);
});

test('the book of these tests has every kind of part, row and column', () => {
  const parts = everyPart().sheets.flatMap((sheet) => sheet.parts);
  const kinds = (items: readonly { readonly kind: string }[]): string[] => [
    ...new Set(items.map(({ kind }) => kind)),
  ];
  expect(kinds(parts)).toEqual(['prose', 'rows', 'table', 'figure', 'chart']);
  expect(kinds(parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])))).toEqual([
    'given',
    'choice',
    'calc',
    'check',
  ]);
  expect(kinds(parts.flatMap((part) => (part.kind === 'table' ? part.columns : [])))).toEqual([
    'given',
    'calc',
    'series',
  ]);
});

test('there is a migration and an old file for every version before this one', () => {
  expect(MIGRATIONS).toHaveLength(FORMAT_VERSION);
  const kept = readdirSync(new URL('formats', import.meta.url));
  for (let version = 0; version < FORMAT_VERSION; version++) {
    expect(kept.filter((name) => name.startsWith(`v${version}-`))).not.toEqual([]);
  }
});

test('a draft of version 0 gets a title block, settings and a review', () => {
  const draft = JSON.parse(textBeside('formats/v0-draft.json'));
  const opened = openBook(textBeside('formats/v0-draft.json'));
  expect(opened).toEqual({
    ok: true,
    value: {
      migrated: true,
      book: {
        format: 'quaybook',
        version: 3,
        title: {
          project: '',
          subject: 'Rail beam, bay 4',
          job: '',
          client: '',
          prepared: '',
          checked: '',
          date: '',
          revision: '',
        },
        settings: { system: 'SI', currency: 'USD', units: [], datums: [] },
        sheets: draft.sheets,
        review: { handValues: [], seen: [], comments: [], signOffs: [], revisions: [], bases: [] },
      },
    },
  });
});

test.each([
  ['{"format":"quaybook","version":0,"title":7,"sheets":[]}', 'title is 7, and should be an object'],
  ['{"format":"quaybook","version":0,"sheets":[]}', 'title is null, and should be an object'],
  ['{"format":"quaybook","version":0,"title":"a"}', 'the book has no “sheets”'],
])('a draft that is not sound is refused: %s', (text, message) => {
  const opened = openBook(text);
  expect(opened.ok ? [] : opened.problems.map((found) => found.message)).toEqual([message]);
});
