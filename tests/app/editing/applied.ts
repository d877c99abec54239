import { expect } from 'vitest';
import { cellContent } from '../../../src/app/editing/cells/cell-content.ts';
import type { Outcome } from '../../../src/diagnostics/index.ts';
import { applyEdit, type Book, type Edit } from '../../../src/document/index.ts';
import { at } from '../small-book.ts';

/** The book after an edit, whose inverse leads back. */
export function after(book: Book, edit: Edit): Book {
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  const back = applyEdit(applied.value.book, applied.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
  return applied.value.book;
}

/** What was done; throws if it was refused. */
export function done<Done>(outcome: Outcome<Done>): Done {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.value;
}

/** What is said of something refused. */
export function refusal(outcome: Outcome<unknown>): readonly string[] {
  return outcome.ok ? [] : outcome.problems.map(({ code, message }) => `${code}: ${message}`);
}

/** The cells of the table of the small book, row by row, its given columns. */
export function spans(book: Book): readonly (readonly string[])[] {
  const table = book.sheets[0]?.parts.find(({ id }) => id === 'p3');
  const length = table?.kind === 'table' ? (table.length ?? 0) : 0;
  return Array.from({ length }, (_, row) =>
    ['k1', 'k2'].map((column) => cellContent(book, at('p3', `r${row}`, column)).text),
  );
}
