import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { printResult } from '../../src/cli/results.ts';
import { openBook, writeBook } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';

const kept = (name: string): string =>
  readFileSync(new URL(`../document/formats/${name}`, import.meta.url), 'utf8');

// Each book beside the results that the last program of its version printed for it.
describe.each([
  [1, 'bollard-pull'],
  [1, 'debris-haul'],
  [1, 'demo'],
  [1, 'fender-energy'],
  [1, 'pile-bearing'],
  [1, 'every-part'],
  [2, 'debris-haul'],
  [2, 'every-part'],
])('version %i of %s', (version, id) => {
  const file = `v${version}-${id}`;
  const opened = openBook(kept(`${file}.quaybook.json`));
  if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
  const { book, migrated } = opened.value;

  test('opens, and gives the same results', () => {
    expect(migrated).toBe(true);
    const notebook = openNotebook(book);
    const expected: Readonly<Record<string, object>> = JSON.parse(kept(`${file}.results.json`));
    expect(Object.keys(expected).length).toBeGreaterThan(0);
    for (const [name, result] of Object.entries(expected)) {
      const item = notebook.model.items.get(name);
      expect(item && printResult(notebook, item), name).toMatchObject(result);
    }
  });

  test('is saved as version 3, which opens as the same book', () => {
    const text = writeBook(book);
    expect(JSON.parse(text).version).toBe(3);
    expect(openBook(text)).toEqual({ ok: true, value: { book, migrated: false } });
  });

  test('of version 4 is refused in a sentence', () => {
    const newer = kept(`${file}.quaybook.json`).replace(`"version": ${version}`, '"version": 4');
    const refused = openBook(newer);
    expect(refused.ok ? [] : refused.problems.map(({ message }) => message)).toEqual([
      'the book was made by a newer Quaybook (version 4; this one reads up to 3)',
    ]);
  });
});
