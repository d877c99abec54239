import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { printResult } from '../../src/cli/results.ts';
import { openBook, writeBook } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';

const kept = (name: string): string =>
  readFileSync(new URL(`../document/formats/${name}`, import.meta.url), 'utf8');

// Each book beside the results that the last program of version 1 printed for it.
describe.each(['bollard-pull', 'debris-haul', 'demo', 'fender-energy', 'pile-bearing', 'every-part'])(
  '%s as version 1 had it',
  (id) => {
    const opened = openBook(kept(`v1-${id}.quaybook.json`));
    if (!opened.ok) throw new Error(opened.problems.map(({ message }) => message).join('\n'));
    const { book, migrated } = opened.value;

    test('opens, and gives the same results', () => {
      expect(migrated).toBe(true);
      const notebook = openNotebook(book);
      const expected: Readonly<Record<string, object>> = JSON.parse(kept(`v1-${id}.results.json`));
      expect(Object.keys(expected).length).toBeGreaterThan(0);
      for (const [name, result] of Object.entries(expected)) {
        const item = notebook.model.items.get(name);
        expect(item && printResult(notebook, item), name).toMatchObject(result);
      }
    });

    test('is saved as version 2, which opens as the same book', () => {
      const text = writeBook(book);
      expect(JSON.parse(text).version).toBe(2);
      expect(openBook(text)).toEqual({ ok: true, value: { book, migrated: false } });
    });

    test('of version 3 is refused in a sentence', () => {
      const newer = kept(`v1-${id}.quaybook.json`).replace('"version": 1', '"version": 3');
      const refused = openBook(newer);
      expect(refused.ok ? [] : refused.problems.map(({ message }) => message)).toEqual([
        'the book was made by a newer Quaybook (version 3; this one reads up to 2)',
      ]);
    });
  },
);
