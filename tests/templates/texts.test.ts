import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Book, openBook, type Row } from '../../src/document/index.ts';
import { projectFiles, readProjectFile } from '../architecture/project-files.ts';

const folder = new URL('../../templates/', import.meta.url);
const books = readdirSync(folder).map((id): readonly [id: string, book: Book] => {
  const opened = openBook(readFileSync(new URL(`${id}/book.quaybook.json`, folder), 'utf8'));
  if (!opened.ok) throw new Error(`the book ${id} cannot be read`);
  return [id, opened.value.book];
});

interface Text {
  readonly field: string;
  readonly text: string;
}

/** Every text of a book that a person reads, with the field it stands in; cells of text columns among them. */
function textsOf(value: unknown, field = ''): readonly Text[] {
  if (typeof value === 'string') return [{ field, text: value }];
  if (Array.isArray(value)) return value.flatMap((item) => textsOf(item, field));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => textsOf(item, key));
}

const read = new Set(
  'text note label reference title group purpose standard scope limits cautions assumptions chunks value'.split(
    ' ',
  ),
);

const readTexts = (book: Book): readonly Text[] => textsOf(book).filter(({ field }) => read.has(field));

/** Words that point at something without naming it, or say that there is nothing. */
const noReference =
  /^(above|below|same|ditto|ibid\.?|idem|question|n\/a|none|unknown|tbd|various|handbook|see (above|below))$|\b(as|see) (above|below|before|listed|chosen|given)\b|\b(stated|chosen|given|named) (above|below)\b|\b(checks|lines|rows) (above|below)\b/i;

/**
 * What an institution, a firm or a maker's own publication is called, whoever it is. Standards, their bodies, public
 * agencies and textbooks by their authors may be named; everything else is cited in full in the cases alone.
 */
const namesSomebody = [
  /\buniversit/i,
  /\b(school|college|institute|academy) of\b/i,
  /\bpolytechnic/i,
  /\b(gmbh|ltd|llc|inc|corp|pty|plc)\b\.?/i,
  /[®™]/,
  /\bperformance handbook\b/i,
  /\bport of [A-Z]/,
  /\b(?!(?:The|This|Each|Old|New|Any|One|No)\b)[A-Z][a-z]+ (port|harbour|terminal)\b/,
  /\b(?!(?:The|This|Each|Any|One|No)\b)[A-Z][A-Za-z]+ wiki\b/,
  /\bconsultant’?'?s? (calculation )?sheet\b/i,
  /\bLEED\b/,
];

const somebodyIn = (text: string): boolean => namesSomebody.some((pattern) => pattern.test(text));

describe.each(books)('the texts of %s', (_, book) => {
  test('every reference names something', () => {
    const found = textsOf(book).filter(({ field, text }) => field === 'reference' && noReference.test(text));
    expect(found).toEqual([]);
  });

  test('no institution, firm or maker is named', () => {
    expect(readTexts(book).filter(({ text }) => somebodyIn(text))).toEqual([]);
  });

  test('another sheet is called by the title that people see', () => {
    const wrong = readTexts(book).filter(({ text }) =>
      book.sheets.some(({ key, title }) => {
        const mentions = [...text.matchAll(new RegExp(`\\bsheets? ["“']?${key}\\b(?![_.])`, 'g'))];
        return mentions.some(({ index, 0: mention }) => {
          const from = index + mention.length - key.length;
          return !text.slice(from).startsWith(title);
        });
      }),
    );
    expect(wrong).toEqual([]);
  });

  test('its paragraphs stay true when an entry changes', () => {
    const entries = book.sheets.flatMap(({ parts }) =>
      parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])).flatMap(entryOf),
    );
    expect(entries.length).toBeGreaterThan(0);
    const paragraphs = book.sheets.flatMap(({ parts }) =>
      parts.flatMap((part) =>
        part.kind === 'prose' && ['text', 'open item', 'assumption'].includes(part.role) ? [part.text] : [],
      ),
    );
    expect(paragraphs.length).toBeGreaterThan(0);
    const quoted = paragraphs.flatMap((text) =>
      entries
        .filter((entry) => new RegExp(`(?<![\\w.,])${escaped(entry)}(?!\\w)`).test(text))
        .map((entry) => ({ entry, text })),
    );
    expect(quoted).toEqual([]);
  });
});

/**
 * The entry of a line with its unit, or what was chosen from a table: what a paragraph must not repeat. Angles and shares
 * are left out, for a paragraph may define them (90 deg is square off the berth, whatever was entered).
 */
function entryOf(row: Row): readonly string[] {
  if (row.kind === 'choice') return row.from === undefined ? [] : [row.entry];
  if (row.kind !== 'given' || !/^[\d.,]*\d\s*(?!deg\b)[a-z].*$/i.test(row.entry)) return [];
  return [row.entry];
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

test('no document, no text of the program and no test names an institution, a firm or a maker', () => {
  const files = [
    'README.md',
    'DEVELOPERS.md',
    ...projectFiles('docs', /\.md$/),
    ...projectFiles('src', /\.ts$/),
  ];
  const tests = projectFiles('tests', /\.ts$/).filter((file) => file !== 'tests/templates/texts.test.ts');
  expect(files.length).toBeGreaterThan(100);
  const found = [...files, ...tests].flatMap((file) =>
    readProjectFile(file)
      .split('\n')
      .filter(somebodyIn)
      .map((line) => `${file}: ${line.trim()}`),
  );
  expect(found).toEqual([]);
});

test('the words that are no reference, and the names, are known when they come', () => {
  const none = ['above', 'as below', 'question', 'N/A', 'same', 'as above, 1/1.12', 'as stated above'];
  expect(none.filter((text) => !noReference.test(text))).toEqual([]);
  const references = ['weight of the column above the base', 'PIANC WG 33 (2002), 4.6', 'geometry'];
  expect(references.filter((text) => noReference.test(text))).toEqual([]);
  const names = [
    'University of Anywhere',
    'Anywhere port',
    'Maker Performance Handbook, ed. 9',
    'Maker GmbH',
  ];
  expect(names.filter((text) => !somebodyIn(text))).toEqual([]);
  expect(somebodyIn('Thoresen, Port Designer’s Handbook, from memory')).toBe(false);
});

test('the fenders of the demo book are whole: rated energy is reaction × deflection × area under the curve', () => {
  const table = (name: string) =>
    books
      .find(([id]) => id === 'demo')?.[1]
      .sheets.flatMap(({ parts }) => parts)
      .find((part) => part.kind === 'table' && part.name === name);
  const column = (of: string, name: string): readonly unknown[] => {
    const part = table(of);
    const found = part?.kind === 'table' ? part.columns.find((one) => one.name === name) : undefined;
    return found?.kind === 'given' ? found.chunks.flat() : [];
  };
  const [d, r] = [column('curve', 'd').map(Number), column('curve', 'r').map(Number)];
  const area = d.slice(1).reduce((sum, to, at) => {
    const [from = 0, low = 0, high = 0] = [d[at], r[at], r[at + 1]];
    return sum + ((to - from) * (low + high)) / 2;
  }, 0);
  const reactions = column('fenders', 'R_r').map(Number);
  const deflections = column('fenders', 'd_r').map(Number);
  expect(reactions).toHaveLength(5);
  const energies = reactions.map((reaction, at) =>
    Math.round((reaction * (deflections[at] ?? 0) * area) / 1000),
  );
  expect(column('fenders', 'E_r')).toEqual(energies);
  expect(column('fenders', 'size')).toEqual(
    column('fenders', 'H').map((height, at) => `${height} ${at === 1 || at === 3 ? 'firm' : 'soft'}`),
  );
});
