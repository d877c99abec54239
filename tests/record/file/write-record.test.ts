import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Book,
  hashBook,
  openBook,
  setEntry,
  setFormula,
  withStarts,
  writeBook,
} from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { writeRecord } from '../../../src/record/index.ts';
import {
  enterHandValue,
  issueRevision,
  markSeen,
  raiseComment,
  setTolerance,
  signOff,
} from '../../../src/review/index.ts';
import { apply } from '../../apply-edit.ts';
import { everyPart } from '../../document/read-book.ts';
import { blockOf, bookOf, calc, given } from '../../make-book.ts';
import { type ReadElement, readPage } from './read-page.ts';

const program = 'Quaybook 0.0.0';
const record = (book: Book): string => writeRecord({ book, program, recheck: [] });

function opened(text: string): Book {
  const read = openBook(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.value.book;
}

const shipped = ['demo', 'bollard-pull', 'debris-haul', 'fender-energy', 'pile-bearing'].map((id) => {
  const path = new URL(`../../../templates/${id}/book.quaybook.json`, import.meta.url);
  const book = opened(readFileSync(path, 'utf8'));
  return { id, book, text: record(book) };
});

/** What may stand around an element: HTML reads a page otherwise where these are not kept. */
function misplaced({ name, within }: ReadElement): boolean {
  const around = within.at(-1) ?? '';
  const wanted: Readonly<Record<string, readonly string[]>> = {
    tr: ['thead', 'tbody'],
    th: ['tr'],
    td: ['tr'],
    thead: ['table'],
    tbody: ['table'],
    li: ['ul'],
    dt: ['div'],
    dd: ['div'],
    math: ['div', 'span'],
    svg: ['div'],
  };
  const block = ['p', 'div', 'table', 'ul', 'dl', 'section', 'h1', 'h2', 'h3', 'h4'];
  if (block.includes(name) && within.some((one) => ['p', 'span', 'b', 'a', 'h3', 'h4'].includes(one)))
    return true;
  return wanted[name] !== undefined && !wanted[name].includes(around);
}

describe.each(shipped)('the record of $id', ({ book, text }) => {
  const page = readPage(text);

  test('is sound XML whose elements stand where HTML has them', () => {
    expect(page.strange).toEqual([]);
    expect(page.elements.filter(misplaced)).toEqual([]);
    expect(page.elements.length).toBeGreaterThan(1000);
  });

  test('has each id once, and each of its links leads to one', () => {
    const ids = page.elements.flatMap(({ attributes }) => attributes.get('id') ?? []);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
    const links = page.elements.flatMap(({ attributes }) => attributes.get('href') ?? []);
    expect(links.filter((href) => !ids.includes(decodeURIComponent(href.slice(1))))).toEqual([]);
  });

  test('names its tables, and says what each head is the head of', () => {
    const of = (name: string) => page.elements.filter((one) => one.name === name);
    expect(of('table').filter(({ attributes }) => !attributes.get('aria-label'))).toEqual([]);
    expect(of('th').filter(({ attributes }) => !/^(col|row)$/.test(attributes.get('scope') ?? ''))).toEqual(
      [],
    );
  });

  test('has headings that go down one level at a time', () => {
    const levels = page.elements.flatMap(({ name }) => (/^h\d$/.test(name) ? [Number(name.slice(1))] : []));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, at) => level > (levels[at - 1] ?? 0) + 1)).toEqual([]);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
  });

  test('has every line by its symbol, description and reference', () => {
    const lines = book.sheets.flatMap(({ parts }) =>
      parts.flatMap((part) => (part.kind === 'rows' ? part.rows : [])),
    );
    // A line with methods has the references of those in force.
    const missing = lines.filter((line) => {
      const { name, label = '', reference = '' } = line;
      const wanted = 'methods' in line && line.methods ? [name, label] : [name, label, reference];
      return !wanted.every((one) => page.words.includes(one));
    });
    expect(missing).toEqual([]);
    expect(lines.length).toBeGreaterThan(10);
  });

  test('opens as the same book', () => {
    const again = opened(text);
    expect(hashBook(again)).toBe(hashBook(book));
    expect(writeBook(again)).toBe(writeBook(book));
    expect(text).toContain(hashBook(book));
  });
});

test('the record of the demo book is under 1.5 MB', () => {
  expect(Buffer.byteLength(shipped[0]?.text ?? '')).toBeLessThan(1_500_000);
});

test('the record of a small book is as it was read over', async () => {
  const small = bookOf({
    deck: [
      blockOf(
        'loads',
        given('p', '3 kPa', 'kPa'),
        given('A', '4 m^2', 'm^2'),
        calc('F', { formula: 'p * A', unit: 'kN' }),
        {
          id: 'c',
          kind: 'check',
          name: 'c',
          formula: 'F <= 10 kN',
          label: 'the deck carries <it> & more',
        },
      ),
    ],
  });
  const notebook = openNotebook(small);
  const said = { by: 'K <b> L', date: '2026-03-01' };
  const mark = (name: string): void => {
    const item = notebook.model.items.get(`deck.${name}`);
    if (item) apply(notebook, markSeen(notebook, { item: name }, item, said));
  };
  apply(notebook, enterHandValue(notebook, { item: 'F' }, { entry: '11.9 kN', ...said }));
  apply(notebook, enterHandValue(notebook, { item: 'c' }, { entry: '1.3', ...said, note: 'by chart' }));
  mark('p');
  mark('A');
  apply(notebook, raiseComment(notebook, { item: 'A' }, { ...said, text: 'Which </script> drawing?' }));
  apply(notebook, setTolerance('2 %'));
  const signed = signOff(
    notebook,
    { role: 'checked', ...said },
    ['1 check that fails'],
    'to be strengthened',
  );
  if (signed.ok) apply(notebook, signed.value);
  apply(notebook, issueRevision(notebook, { label: 'A', ...said, note: 'for comment' }));
  // What was seen as 4 m² is another now: its mark and the hand values are stale, and the signature does not hold.
  apply(notebook, setEntry({ sheet: 'deck', part: 'loads', row: 'A' }, '4.2 m^2'));
  const text = record(notebook.book);
  // 3 kPa on 4.2 m² are 12.6 kN, which 10 kN do not carry: 126 %.
  const words = readPage(text).words.replaceAll(/[\u00a0\u202f]/g, ' ');
  for (const one of [
    '12.6 kN',
    '12.6 kN ≤ 10 kN',
    '126 % fails',
    'deck.F  by hand 11.9 kN (K <b> L, 2026-03-01) beside 12.6 kN',
    'stale since deck.A: 4 m^2 → 4.2 m^2',
    'Which </script> drawing?',
    'to be strengthened',
    'for comment',
    'the deck carries <it> & more',
    '0 of 1 check holds',
  ])
    expect(words).toContain(one);
  // The styles are data of their own.
  await expect(text.replace(/<style>[\s\S]*?<\/style>/, '<style></style>')).toMatchFileSnapshot(
    'small-book.html',
  );
});

test('a value by hand and what is not as it came stand beside their line, and the record says so at its head', () => {
  const made = bookOf({
    deck: [
      blockOf(
        'loads',
        given('p', '3 kPa', 'kPa'),
        given('A', '4 m^2', 'm^2'),
        calc('F', { formula: 'p * A', unit: 'kN' }),
        calc('G', { formula: 'F - 20 kN', unit: 'kN' }),
      ),
    ],
  });
  const started = withStarts(made, { template: 'deck', title: 'Deck', version: 'Quaybook 0.1.0' });
  const notebook = openNotebook(started);
  expect(record(started)).toContain('every line is as it came');
  apply(notebook, setFormula({ sheet: 'deck', part: 'loads', row: 'F' }, '1.5 * p * A'));
  // 1.5 × 3 kPa × 4 m² = 18 kN, and 18 − 20 = −2 kN; by hand −2.5 kN are 0.5 kN less, a quarter.
  apply(notebook, enterHandValue(notebook, { item: 'G' }, { entry: '-2.5 kN', by: 'KL' }));
  const text = record(notebook.book);
  const row = (id: string): string => {
    const [, after = ''] = text.split(`<tr id="line:deck.${id}"`);
    const [own = ''] = after.split('</tr>');
    return own.replaceAll(/<[^>]*>/g, ' ').replaceAll(/[\u00a0\u202f]/g, ' ');
  };
  expect(row('F')).toContain('≠ not as it came: formula changed');
  expect(row('G')).not.toContain('≠');
  expect(row('G')).toContain('by hand -2.5 kN (KL) beside −2 kN: differs by −0.5 kN (−25.0 %)');
  expect(row('F')).not.toContain('by hand');
  expect(readPage(text).words).toContain('1 line not as it came');
});

test('a formula between signs that a font may lack stands as text too', () => {
  const rounded = bookOf({
    s: [blockOf('p', given('a', '4 in', 'in'), calc('b', { formula: 'CEILING(a / 2; 1 in)', unit: 'in' }))],
  });
  const shown = readPage(record(rounded)).elements.filter(
    ({ name, attributes }) => name === 'code' && attributes.get('class') === 'plain fenced',
  );
  expect(shown.length).toBe(2);
});

describe('a record that is not as it was written', () => {
  const text = record(everyPart());
  const codeOf = (changed: string) => {
    const read = openBook(changed);
    return read.ok ? 'opens' : read.problems[0]?.code;
  };
  test.each([
    ['cut short', text.slice(0, -200), 'record-damaged'],
    ['without its end', text.slice(0, text.indexOf('</script')), 'record-damaged'],
    ['with pages of another content', text.replace(hashBook(everyPart()), 'f'.repeat(64)), 'record-damaged'],
    ['with another title', text.replace('"project":"', '"project":"x'), 'record-damaged'],
    ['without the book', text.replace('id="quaybook-book"', 'id="book"'), 'page-without-book'],
    [
      'with two books',
      text.replace('<script', '<script id="quaybook-book"></script><script'),
      'record-damaged',
    ],
    ['any other page', '<html><body>hello</body></html>', 'page-without-book'],
  ])('%s is refused', (_, changed, code) => {
    expect(codeOf(changed)).toBe(code);
  });

  test('opens where a copy has laid it out otherwise', () => {
    expect(codeOf(`\ufeff\n${text.replaceAll('\n', '\r\n')}`)).toBe('opens');
  });
});

const SEED = 20_261_130;
const words = new Set(
  'label reference note text reason group purpose standard scope question by client project subject job prepared checked date revision title entryText'.split(
    ' ',
  ),
);
const lists = new Set(['limits', 'cautions', 'assumptions']);

/** A book with a text in every place that takes words. */
function withText(value: unknown, text: string, key = ''): unknown {
  if (Array.isArray(value))
    return value.map((one) => (lists.has(key) && typeof one === 'string' ? text : withText(one, text)));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, withText(one, text, name)]));
  return typeof value === 'string' && words.has(key) ? text : value;
}

test(`no text of a book becomes an element or an attribute (1,000 texts, seed ${SEED})`, () => {
  const skeleton = (text: string): string => {
    const { elements, strange } = readPage(record(opened(JSON.stringify(withText(everyPart(), text)))));
    expect(strange).toEqual([]);
    // Text decides where lines break, and so how many of these there are.
    const own = elements.filter(({ name }) => name !== 'text' && name !== 'tspan');
    return own.map(({ name, attributes }) => `${name} ${[...attributes.keys()].join(' ')}`).join('\n');
  };
  const plain = skeleton('word');
  const sign = fc.constantFrom(
    ...`<>&;"'/=-![]x# \\{}()`,
    '</script>',
    '</style>',
    '<script>',
    '<!--',
    '-->',
    ']]>',
    '&lt;',
    '\\3c ',
    '\u2028',
    '𝛼',
    '\u007f',
    '\ufeff',
  );
  const text = fc.array(sign, { minLength: 1, maxLength: 12 }).map((signs) => `x${signs.join('')}x`);
  fc.assert(
    fc.property(text, (hostile) => {
      expect(skeleton(hostile)).toBe(plain);
    }),
    { seed: SEED, numRuns: 1000 },
  );
}, 300_000);

test('in text the power of a value with its unit or its sign is that of all of it', () => {
  const book = bookOf({
    s: [
      blockOf(
        'b',
        given('L', '262 m', 'm'),
        given('n', '3', '-'),
        given('d', '-2', '-'),
        calc('K', { formula: 'L^2 / 2', unit: 'm^2' }),
        calc('N', { formula: 'n^2 + d^2', unit: '-' }),
      ),
    ],
  });
  const { words } = readPage(record(book));
  const plain = words.replaceAll(/[\u00a0\u202f]/g, ' ');
  expect(plain).toContain('(262 m)^2 / 2');
  expect(plain).toContain('3^2 + (−2)^2');
});
