import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
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
  expect(out).toContain('formulas   as in the template');
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
});

test('a book that was started from no template is refused', () => {
  const file = project('no-template', 'debris-haul', (_, book) => {
    delete book.about.id;
  });
  const { status, err } = quaybook('verify', file);
  expect(status).toBe(2);
  expect(err).toContain('does not say that it was started from a template');
});
