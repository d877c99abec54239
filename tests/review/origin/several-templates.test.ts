import { expect, test } from 'vitest';
import { templateBook, templateCases } from '../../../src/cli/books.ts';
import {
  applyEdit,
  type Book,
  type Edit,
  removeSheet,
  setFormula,
  withStarts,
} from '../../../src/document/index.ts';
import { bringSheets, openNotebook } from '../../../src/notebook/index.ts';
import {
  changedSince,
  enteredInProject,
  idOfDifference,
  putCaseEdit,
  sheetsLacking,
  takeCaseBackEdit,
  templatesOf,
  verifyProject,
} from '../../../src/review/index.ts';

const [DEBRIS, PILE] = ['debris-haul', 'pile-bearing'];
const templates = new Map([DEBRIS, PILE].map((id) => [id, templateBook(id)]));

function template(id: string): Book {
  const found = templates.get(id);
  if (!found) throw new Error(id);
  return found;
}

const started = (id: string): Book =>
  withStarts(template(id), { template: id, title: id, version: 'Quaybook 0.1.0' });

function applied(book: Book, edit: Edit | undefined): Book {
  const done = edit && applyEdit(book, edit);
  if (!done?.ok) throw new Error('not applied');
  return done.value.book;
}

/** A book of the debris template with sheets of the pile template behind its own. */
function project(): Book {
  const book = started(DEBRIS);
  const keys = template(PILE).sheets.map(({ key }) => key);
  const brought = bringSheets(book, openNotebook(started(PILE)), keys, book.sheets.length);
  if (!brought.ok) throw new Error('not brought');
  return applied(book, brought.value.edit);
}

/** The same with another formula on one line. */
function withFormula(book: Book, id: string, change: (formula: string) => string): Book {
  for (const { key, parts } of book.sheets)
    for (const part of parts)
      if (part.kind === 'rows')
        for (const row of part.rows)
          if (`${key}.${row.name}` === id && row.kind === 'calc')
            return applied(
              book,
              setFormula({ sheet: key, part: part.id, row: row.id }, change(row.formula ?? '')),
            );
  throw new Error(`there is no ${id}`);
}

/** The first published cases of a template. */
const published = (id: string) => {
  const cases = templateCases(id);
  return { ...cases, cases: cases.cases.filter(({ kind }) => kind === 'published').slice(0, 8) };
};

test('sheets of two templates are each held against their own, with its cases', () => {
  const own = project();
  expect(templatesOf(own)).toEqual([DEBRIS, PILE]);
  const changed = withFormula(own, 'haul.t_c', (formula) => `1.05 * (${formula})`);
  const reports = [DEBRIS, PILE].map((id) => verifyProject(template(id), changed, published(id)));
  const [debris, pile] = reports;
  expect(debris?.sheets.flatMap(({ differences }) => differences.map(idOfDifference))).toEqual(['haul.t_c']);
  expect(pile?.sheets.flatMap(({ differences }) => differences)).toEqual([]);
  expect(debris?.cases.some(({ report }) => !report.agrees)).toBe(true);
  expect(pile?.cases).toHaveLength(8);
  expect(pile?.cases.filter(({ report }) => !report.agrees)).toEqual([]);
  expect(reports.flatMap((one) => one.without)).toEqual([]);
});

test('a sheet that was deleted is told by the template it came from', () => {
  const book = applied(applied(project(), removeSheet('dust')), removeSheet('depth'));
  const lacking = (id: string): readonly string[] =>
    sheetsLacking(template(id), id, book).map(({ key }) => key);
  expect(lacking(DEBRIS)).toEqual(['dust']);
  expect(lacking(PILE)).toEqual(['depth']);
  // A sheet under another key is the same sheet.
  const renamed = {
    ...book,
    sheets: book.sheets.map((one) => (one.key === 'haul' ? { ...one, key: 'h' } : one)),
  };
  expect(sheetsLacking(template(DEBRIS), DEBRIS, renamed).map(({ key }) => key)).toEqual(['dust']);
  // So are the sheets of a book of the time before they knew where they came from.
  const unaware = { ...book, sheets: book.sheets.map(({ start: _, ...sheet }) => sheet) };
  expect(sheetsLacking(template(DEBRIS), DEBRIS, unaware).map(({ key }) => key)).toEqual(['dust']);
});

test('what a template computes otherwise than when its sheets came is told, and makes no line of the book differ', () => {
  const own = project();
  const next = withFormula(template(PILE), 'loads.N_D', (formula) => `1.2 * (${formula})`);
  expect(changedSince(template(PILE), PILE, own)).toEqual([]);
  expect(changedSince(next, PILE, own).map(idOfDifference)).toEqual(['loads.N_D']);
  expect(changedSince(template(DEBRIS), DEBRIS, own)).toEqual([]);
  // Beside the template as it is shipped now, the line of the book is the one that differs.
  const [report] = verifyProject(next, own, { ...published(PILE), cases: [] }).sheets.filter(
    ({ differences }) => differences.length > 0,
  );
  expect(report?.differences.map(({ was }) => was?.id)).toEqual(['loads.N_D']);
});

test('a case of one template takes the place of one of another, and what stood there before both comes back', () => {
  const own = project();
  let book = own;
  for (const id of [PILE, DEBRIS]) {
    const [example] = published(id).cases;
    if (!example) throw new Error(id);
    const entered = enteredInProject(template(id), id, book, example);
    if (!entered.ok) throw new Error(id);
    book = applied(book, putCaseEdit(book, entered.value, id, example));
    const others = book.sheets.filter(({ start }) => start?.template !== id);
    // The sheets of the other template have their own entries.
    expect(others.map(({ parts }) => parts)).toEqual(
      own.sheets.filter(({ start }) => start?.template !== id).map(({ parts }) => parts),
    );
  }
  expect(applied(book, takeCaseBackEdit(book))).toEqual(own);
});
