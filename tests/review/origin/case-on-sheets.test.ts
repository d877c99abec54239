import { expect, test } from 'vitest';
import { templateBook, templateCases } from '../../../src/cli/books.ts';
import { applyEdit, type Book, type Edit, setEntry, withStarts } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { enteredInProject, putCaseEdit, takeCaseBackEdit, verifyProject } from '../../../src/review/index.ts';
import { fromSI, readUnit } from '../../../src/units/index.ts';

const ID = 'debris-haul';
const template = templateBook(ID);
const cases = templateCases(ID);

function applied(book: Book, edit: Edit | undefined): { readonly book: Book; readonly inverse: Edit } {
  const done = edit && applyEdit(book, edit);
  if (!done?.ok) throw new Error('not applied');
  return done.value;
}

/** A book of its own: every number that is entered is another than the template's. */
function project(): Book {
  let book = withStarts(template, { template: ID, title: 'Debris', version: 'Quaybook 0.1.0' });
  for (const { key, parts } of book.sheets)
    for (const part of parts)
      if (part.kind === 'rows')
        for (const row of part.rows)
          if (row.kind === 'given' && /^\d+(\.\d+)?( |$)/.test(row.entry))
            book = applied(
              book,
              setEntry(
                { sheet: key, part: part.id, row: row.id },
                row.entry.replace(/^\d+/, (n) => `${Number(n) + 1}`),
              ),
            ).book;
  return book;
}

test('the inputs of a case give what the case gives, are one edit, and leave the book as it was', () => {
  const own = project();
  const published = cases.cases.filter(({ kind }) => kind === 'published');
  const report = verifyProject(template, own, { ...cases, cases: published });
  expect(report.cases.every(({ report: { agrees } }) => agrees)).toBe(true);
  let compared = 0;
  for (const example of published.slice(0, 6)) {
    const entered = enteredInProject(template, ID, own, example);
    if (!entered.ok) throw new Error(example.id);
    const edit = putCaseEdit(own, entered.value, ID, example);
    const put = applied(own, edit);
    expect(put.book.example?.case).toBe(example.id);
    const notebook = openNotebook(put.book);
    for (const { name, value, unit, row, reproduces, tolerance } of example.expect) {
      if (value === undefined || row !== undefined || reproduces === false) continue;
      const result = notebook.result(name);
      const read = readUnit(unit ?? '', notebook.model.registry);
      if (result.status !== 'ok' || result.value.kind !== 'number' || !read.ok) continue;
      const near = tolerance && 'digits' in tolerance ? tolerance.digits : 0.01 * Math.abs(value);
      expect(Math.abs(fromSI(result.value.si, read.value) - value)).toBeLessThanOrEqual(near * 1.000001);
      compared += 1;
    }
    expect(applied(put.book, takeCaseBackEdit(put.book)).book).toEqual(own);
    expect(applied(put.book, put.inverse).book).toEqual(own);
  }
  expect(compared).toBeGreaterThan(4);
});

test('of two cases one after the other, what stood there first comes back, with what was changed meanwhile', () => {
  const own = project();
  const [first, second] = cases.cases.filter(({ kind }) => kind === 'published');
  if (!first || !second) throw new Error('no cases');
  let book = own;
  for (const example of [first, second]) {
    const entered = enteredInProject(template, ID, book, example);
    if (!entered.ok) throw new Error(example.id);
    book = applied(book, putCaseEdit(book, entered.value, ID, example)).book;
  }
  const [sheet] = book.sheets;
  const part = sheet?.parts.find(({ kind }) => kind === 'rows');
  if (!sheet || part?.kind !== 'rows' || !part.rows[0]) throw new Error('no line');
  const at = ['sheets', sheet.key, 'parts', part.id, 'rows', part.rows[0].id, 'label'];
  const relabelled = { label: '', patches: [{ kind: 'set' as const, at, value: 'called otherwise' }] };
  book = applied(book, relabelled).book;
  book = applied(book, takeCaseBackEdit(book)).book;
  expect(book).toEqual(applied(own, relabelled).book);
  expect(takeCaseBackEdit(book)).toBeUndefined();
});

test('a case that enters a line which the book has not is refused, and names it', () => {
  const own = project();
  const example = cases.cases.find(({ set }) => set && 'haul.P' in set);
  if (!example) throw new Error('no case enters it');
  const lacking = {
    ...own,
    sheets: own.sheets.map((sheet) => ({
      ...sheet,
      parts: sheet.parts.map((part) =>
        part.kind === 'rows' && sheet.key === 'haul'
          ? { ...part, rows: part.rows.filter(({ name }) => name !== 'P') }
          : part,
      ),
    })),
  };
  const entered = enteredInProject(template, ID, lacking, example);
  expect(entered.ok ? [] : entered.problems.map(({ code, message }) => [code, message])).toEqual([
    ['case-lacks-line', 'the case enters haul.P, a line of the template that the book has not'],
  ]);
});
