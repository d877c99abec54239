import { readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Book, type Cases, openBook, openCases, writeBook } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { mutateTemplate, verifyTemplate } from '../../src/review/index.ts';

const folder = new URL('../../templates/', import.meta.url);
function read(id: string): { book: Book; cases: Cases } {
  const text = (name: string) => readFileSync(new URL(`${id}/${name}`, folder), 'utf8');
  const book = openBook(text('book.quaybook.json'));
  const cases = openCases(text('cases.json'));
  if (!book.ok || !cases.ok) throw new Error(`the template ${id} cannot be read`);
  return { book: book.value.book, cases: cases.value };
}

/**
 * The tests that every shipped template meets: its cases, its coverage, its sources, its file.
 *
 * @param publishedAtLeast so many published cases it has at least
 */
export function describeTemplate(id: string, publishedAtLeast: number): void {
  describe(`template ${id}`, () => {
    const { book, cases } = read(id);
    const report = verifyTemplate(book, cases);

    test('every case agrees', () => {
      const wrong = report.cases.flatMap((one) => [
        ...(one.refused === undefined ? [] : [`${one.id}: ${one.refused}`]),
        ...one.judgements.filter((found) => !found.agrees).map((found) => `${one.id}: ${found.words}`),
      ]);
      expect(wrong).toEqual([]);
      expect(report.cases.length).toBeGreaterThan(0);
    });

    test('every result is covered', () => {
      expect(report.uncovered).toEqual([]);
    });

    // All of them, in every way, are for `npm run mutate`.
    test('each thirtieth line, spoiled, is noticed', { timeout: 240_000 }, () => {
      const { made, survivors } = mutateTemplate(book, cases, 'values', [], 30);
      expect(survivors).toEqual([]);
      expect(made).toBeGreaterThan(4);
    });

    test('the published cases are there, each with its source', () => {
      const published = cases.cases.filter((one) => one.kind === 'published');
      expect(published.length).toBeGreaterThanOrEqual(publishedAtLeast);
      expect(cases.cases.filter((one) => one.source.trim() === '')).toEqual([]);
    });

    test('an independent value is what its route gives in mathjs', () => {
      for (const one of cases.cases)
        for (const expected of one.expect) {
          if (one.kind === 'independent' && expected.value !== undefined && expected.reproduces !== false)
            expect(expected.by, `${one.id} ${expected.name}`).toBeDefined();
          if (expected.by === undefined || expected.value === undefined) continue;
          const route = Number(evaluate(expected.by));
          const off = Math.abs(route - expected.value);
          expect(off, `${one.id} ${expected.name}: ${route}`).toBeLessThanOrEqual(
            1e-6 * Math.max(Math.abs(expected.value), 1e-9),
          );
        }
    });

    test('a value marked as not reproducing says why', () => {
      const silent = cases.cases.flatMap((one) =>
        one.expect.filter((expected) => expected.reproduces === false && !expected.reason),
      );
      expect(silent).toEqual([]);
    });

    test('as shipped it has no problem, and units and references everywhere', () => {
      const notebook = openNotebook(book);
      expect(notebook.problems()).toEqual([]);
      const bare = [...notebook.model.items.values()].flatMap((item) => {
        if (item.kind === 'input' || item.kind === 'input column') return [];
        const source = item.kind === 'formula' ? item.row : item.column;
        const methods = 'methods' in source ? (source.methods ?? []) : [];
        const isReferenced =
          source.reference || (methods.length > 0 && methods.every(({ reference }) => reference));
        const wantsUnit = item.type.kind === 'number' || item.type.kind === 'point';
        const unitless = wantsUnit && item.unit === undefined && source.unit === undefined;
        return [
          ...(unitless ? [`${item.id} has no unit`] : []),
          ...(isReferenced ? [] : [`${item.id} has no reference`]),
        ];
      });
      expect(bare).toEqual([]);
    });

    test('it states purpose, standard, scope, limits, cautions and assumptions', () => {
      const about = book.about;
      expect(about?.id).toBe(id);
      for (const text of [about?.purpose, about?.standard, about?.scope])
        expect(text?.length).toBeGreaterThan(20);
      for (const list of [about?.limits, about?.cautions, about?.assumptions])
        expect(list?.length).toBeGreaterThan(0);
    });

    test('its file is written as the program writes books', () => {
      const reopened = openBook(writeBook(book));
      expect(reopened.ok && reopened.value.book).toEqual(book);
    });
  });
}
