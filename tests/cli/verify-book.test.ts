import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { renameEdit } from '../../src/app/editing/lines/rename.ts';
import { templateBook, templateCases } from '../../src/cli/books.ts';
import { applyEdit, type Book, removeSheet, withStarts, writeBook } from '../../src/document/index.ts';
import { bringSheets, openNotebook } from '../../src/notebook/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { fileOf } from './small-book.ts';

interface Line {
  readonly kind: string;
  readonly name: string;
  entry?: string;
  formula?: string;
  methods?: { readonly id: string; formula: string }[];
}

interface BookFile {
  about: { id?: string };
  readonly sheets: readonly {
    readonly key: string;
    readonly parts: readonly { readonly kind: string; readonly rows?: Line[] }[];
  }[];
}

/** Where a line stands. */
function placeOf(book: Book, sheet: string, name: string) {
  const parts = book.sheets.find(({ key }) => key === sheet)?.parts ?? [];
  for (const part of parts) {
    const row = part.kind === 'rows' ? part.rows.find((one) => one.name === name) : undefined;
    if (row) return { sheet, part: part.id, item: row.id };
  }
  throw new Error(`there is no ${sheet}.${name}`);
}

/** A book started from a template, after some work on it. */
function project(
  name: string,
  id: string,
  work: (line: (sheet: string, name: string) => Line, book: BookFile) => void,
): string {
  const text = readFileSync(new URL(`../../templates/${id}/book.quaybook.json`, import.meta.url), 'utf8');
  const book: BookFile = JSON.parse(text);
  const line = (sheet: string, wanted: string): Line => {
    const rows = book.sheets.find(({ key }) => key === sheet)?.parts.flatMap((part) => part.rows ?? []);
    const found = rows?.find((row) => row.name === wanted);
    if (!found) throw new Error(`${id} has no ${sheet}.${wanted}`);
    return found;
  };
  work(line, book);
  return fileOf(`${name}.quaybook.json`, JSON.stringify(book));
}

test('a book with entries of its own agrees with every case of its template', () => {
  const file = project('own-entries', 'debris-haul', (line) => {
    line('haul', 'P').entry = '31.5';
  });
  const { status, out, err } = quaybook('verify', file);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(/cases {6}(\d+) of \1 agree/);
  expect(out).toContain('lines      as in the template');
});

test('a changed formula is told with what it was, and the cases that no longer agree name it', () => {
  const file = project('changed-formula', 'debris-haul', (line) => {
    const { formula = '' } = line('haul', 't_c');
    line('haul', 't_c').formula = `1.05 * (${formula})`;
  });
  const { run, json } = quaybookJson('verify', file);
  expect(run.status).toBe(1);
  expect(json.changed).toMatchObject([{ id: 'haul.t_c', what: 'changed' }]);
  const wrong = json.cases.filter(({ agrees }: { readonly agrees: boolean }) => !agrees);
  expect(wrong.length).toBeGreaterThan(0);
  for (const { through } of wrong) expect(through).toEqual(['haul.t_c']);
  // Each case is told with its source, and each value with what is expected and obtained, and how far these are apart.
  for (const { source, values } of json.cases) {
    expect(source).not.toBe('');
    expect(values.length).toBeGreaterThan(0);
  }
  const off = wrong[0].values.find(({ agrees }: { readonly agrees: boolean }) => !agrees);
  expect(off.difference).toBe(off.obtained - off.expected);
});

test('a line under another name is the same line, and the cases find it', () => {
  const book = templateBook('debris-haul');
  const place = placeOf(book, 'haul', 'P');
  const renamed = renameEdit({ notebook: openNotebook(book) }, { ...place, field: 'name' }, 'payload');
  const applied = renamed.ok ? applyEdit(book, renamed.value) : renamed;
  if (!applied.ok) throw new Error('not renamed');
  const file = fileOf('renamed.quaybook.json', writeBook(applied.value.book));
  const { run, json } = quaybookJson('verify', file);
  expect({ status: run.status, err: run.err }).toEqual({ status: 0, err: '' });
  expect(json.changed).toEqual([
    {
      template: 'debris-haul',
      id: 'haul.payload',
      was: 'haul.P',
      what: 'changed',
      words: 'name changed',
      fields: [{ field: 'name', was: 'P', is: 'payload' }],
    },
  ]);
});

test('an entry that became a formula is told as that, and a line that is gone is what cases fail through', () => {
  const file = project('computed-entry', 'debris-haul', (line, book) => {
    const entered = line('haul', 'P') as Line & { id: string; unit?: string };
    const { entry = '', unit = '' } = entered;
    Object.assign(entered, { kind: 'calc', formula: `2 * ${entry} ${unit}` });
    delete entered.entry;
    for (const key of ['range', 'optional']) Reflect.deleteProperty(entered, key);
    const rows = book.sheets
      .find(({ key }) => key === 'haul')
      ?.parts.find((part) => part.rows?.includes(line('haul', 't_c')))?.rows;
    rows?.splice(rows.indexOf(line('haul', 't_c')), 1);
  });
  const { json } = quaybookJson('verify', file);
  expect(json.changed).toMatchObject([
    { id: 'haul.P', what: 'changed', words: 'changed to a formula' },
    { id: 'haul.t_c', what: 'gone', words: 'deleted' },
  ]);
  const through = new Set(json.cases.flatMap((one: { readonly through?: string[] }) => one.through ?? []));
  expect(through).toEqual(new Set(['haul.P', 'haul.t_c']));
});

test('a book that was started from no template is refused', () => {
  const file = project('no-template', 'debris-haul', (_, book) => {
    delete book.about.id;
  });
  const { status, err } = quaybook('verify', file);
  expect(status).toBe(2);
  expect(err).toContain('does not say that it was started from a template');
});

test('a book of sheets of two templates runs the cases of both, and says which sheets of them it has not', () => {
  const from = (id: string): Book =>
    withStarts(templateBook(id), { template: id, title: id, version: 'Quaybook 0.1.0' });
  const book = from('debris-haul');
  const brought = bringSheets(book, openNotebook(from('pile-bearing')), ['loads'], book.sheets.length);
  const applied = brought.ok ? applyEdit(book, brought.value.edit) : brought;
  const less = applied.ok ? applyEdit(applied.value.book, removeSheet('dust')) : applied;
  if (!less.ok) throw new Error('not brought');
  const file = fileOf('two-templates.quaybook.json', writeBook(less.value.book));
  const { json } = quaybookJson('verify', file);
  expect(json.templates).toEqual([
    { template: 'debris-haul', without: ['dust'] },
    { template: 'pile-bearing', without: ['pile', 'depth', 'ref'] },
  ]);
  const counts = new Map<string, number>();
  for (const { template } of json.cases) counts.set(template, (counts.get(template) ?? 0) + 1);
  expect([...counts]).toEqual([
    ['debris-haul', templateCases('debris-haul').cases.length],
    ['pile-bearing', templateCases('pile-bearing').cases.length],
  ]);
});
