import fc from 'fast-check';
import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import {
  applyEdit,
  type Book,
  canonicalJson,
  cellsOfColumn,
  rowIdsOf,
  rowWithId,
} from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { compareBooks } from '../../../src/review/index.ts';
import { dice, stepByChance } from '../../document/random-edits.ts';
import { everyPart } from '../../document/read-book.ts';
import { saidBy } from './mirrored.ts';

const SEED = 20_261_130;

/** What a book holds, without the identities by which its file keeps lines and rows. */
function contentOf(book: Book): string {
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) => {
      if (part.kind === 'rows')
        return { ...part, id: '', rows: part.rows.map((row) => ({ ...row, id: '' })) };
      if (part.kind !== 'table') return { ...part, id: '' };
      const ids = rowIdsOf(part);
      const columns = part.columns.map((column) => {
        if (column.kind === 'given') return { ...column, id: '', chunks: cellsOfColumn(column) };
        if (column.kind !== 'calc') return { ...column, id: '' };
        const stated = column.stated?.map((one) => ({ ...one, row: rowWithId(ids, one.row) ?? -1 }));
        return { ...column, id: '', ...(stated && { stated }) };
      });
      const { ids: _, ...rest } = part;
      return { ...rest, id: '', columns };
    }),
  }));
  return canonicalJson(JSON.parse(JSON.stringify({ ...book, sheets })));
}

function holds(start: Book, runs: number, most: number): void {
  let different = 0;
  fc.assert(
    fc.property(fc.array(dice, { minLength: 1, maxLength: most }), (tosses) => {
      let book = start;
      for (const toss of tosses) {
        const edit = stepByChance(book, [toss]);
        const applied = edit && applyEdit(book, edit);
        if (applied?.ok) book = applied.value.book;
      }
      const [old, next] = [openNotebook(start), openNotebook(book)];
      const there = compareBooks(old, next);
      expect(there.differences.length === 0).toBe(contentOf(start) === contentOf(book));
      expect(saidBy(there, true)).toEqual(saidBy(compareBooks(next, old), false));
      expect(compareBooks(next, next)).toEqual({ differences: [], tables: [] });
      different += there.differences.length > 0 ? 1 : 0;
    }),
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
  expect(different).toBeGreaterThan(runs / 2);
}

test('whatever is edited is told, and the other way round the same, of a book with every part', {
  timeout: 120_000,
}, () => {
  holds(everyPart(), 150, 5);
});

test('and of a template', { timeout: 120_000 }, () => {
  holds(templateBook('debris-haul'), 8, 5);
});
