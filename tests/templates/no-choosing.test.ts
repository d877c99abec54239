import { expect, test } from 'vitest';
import { templateBook } from '../../src/cli/books.ts';
import type { Book } from '../../src/document/index.ts';

/** Every formula of a book that gives a value, with the id of its line or column. */
function formulasOf(book: Book): readonly (readonly [id: string, formula: string])[] {
  return book.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => {
      const lines = part.kind === 'rows' ? part.rows : part.kind === 'table' ? part.columns : [];
      return lines.flatMap((line) => [
        ...('formula' in line && line.formula !== undefined ? [[line.id, line.formula] as const] : []),
        ...('methods' in line ? (line.methods ?? []).map(({ formula }) => [line.id, formula] as const) : []),
      ]);
    }),
  );
}

/** The names of what somebody chooses: lines with options, and columns whose cells are chosen. */
function choicesOf(book: Book): readonly string[] {
  return book.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => {
      if (part.kind === 'rows') return part.rows.flatMap((row) => (row.kind === 'choice' ? [row.name] : []));
      if (part.kind !== 'table') return [];
      return part.columns.flatMap((column) =>
        column.kind === 'given' && column.options ? [column.name] : [],
      );
    }),
  );
}

const asksForBlank = /\bISBLANK\(/;

/** Whether a formula takes one way or another by what was chosen; the counting of rows by their choice is no rule. */
function picksByChoice(formula: string, choices: readonly string[]): boolean {
  if (!/\bIFS?\(/.test(formula)) return false;
  return choices.some((name) => new RegExp(`(?<![\\p{L}\\w])${name}\\s*(=|<>)\\s*"`, 'u').test(formula));
}

test.each(['pile-bearing', 'fender-energy', 'bollard-pull', 'debris-haul'])(
  'no formula of %s asks what is blank, or picks a rule by a choice: a line with methods does',
  (id) => {
    const book = templateBook(id);
    const [formulas, choices] = [formulasOf(book), choicesOf(book)];
    expect(formulas.length).toBeGreaterThan(100);
    expect(choices.length).toBeGreaterThan(5);
    const found = formulas.filter(([, text]) => asksForBlank.test(text) || picksByChoice(text, choices));
    expect(found).toEqual([]);
  },
);

test('a formula that does is known', () => {
  expect(picksByChoice('L_p / IF(absorber.section = "rectangle"; h_r; D_o)', ['section'])).toBe(true);
  expect(picksByChoice('COUNTIF(takeoff.from = "area")', ['from'])).toBe(false);
  expect(asksForBlank.test('IF(ISBLANK(a); 0 cy; a)')).toBe(true);
});
