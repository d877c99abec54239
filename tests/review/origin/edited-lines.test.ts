import fc from 'fast-check';
import { expect, test } from 'vitest';
import { renameEdit } from '../../../src/app/editing/lines/rename.ts';
import { duplicateSheet } from '../../../src/app/editing/sheets/sheet-edits.ts';
import { templateBook } from '../../../src/cli/books.ts';
import {
  applyEdit,
  type Book,
  blankBook,
  type Edit,
  freshFor,
  hashBook,
  insertRow,
  insertTableRows,
  moveRow,
  openBook,
  type Row,
  removeRow,
  setColumnField,
  setEntry,
  setFormula,
  setRowField,
  setSheetField,
  stateCells,
  stateRow,
  withStarts,
  writeBook,
} from '../../../src/document/index.ts';
import { bringSheets, itemId, openNotebook } from '../../../src/notebook/index.ts';
import { idOfDifference, type OriginDifference, originsOf } from '../../../src/review/index.ts';

const SEED = 20_261_130;
const SOURCE = { template: 'fender-energy', title: 'Berthing energy and fenders', version: 'Quaybook 0.1.0' };

const differencesIn = (book: Book): readonly OriginDifference[] =>
  originsOf(book).flatMap(({ differences }) => differences);

/** What is marked, by identity. */
const markedIn = (book: Book): ReadonlyMap<string, string> =>
  new Map(
    differencesIn(book).flatMap(({ was, is, what }) => {
      const one = is ?? was;
      return one ? [[itemId(one), what] as const] : [];
    }),
  );

interface Line {
  readonly sheet: string;
  readonly part: string;
  readonly row: Row;
}

const linesOf = (book: Book): readonly Line[] =>
  book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) =>
      part.kind === 'rows' ? part.rows.map((row) => ({ sheet: key, part: part.id, row })) : [],
    ),
  );

/** One edit as a person makes it, and what it makes of the marks. */
type Step = (
  book: Book,
  line: Line,
  at: number,
) => { readonly edit: Edit; readonly mark?: 'changed' | 'gone' | 'added'; readonly of?: string } | undefined;

const place = ({ sheet, part, row }: Line) => ({ sheet, part, row: row.id });

const STEPS: readonly Step[] = [
  // What is entered, noted, cited or moved is no difference.
  (_, line, at) => (line.row.kind === 'given' ? { edit: setEntry(place(line), `${at + 1}`) } : undefined),
  (_, line, at) => ({ edit: setRowField(place(line), 'note', `note ${at}`) }),
  (_, line, at) => ({ edit: setRowField(place(line), 'reference', `source ${at}`) }),
  (_, line) => ({ edit: moveRow(place(line), 0) }),
  ({ sheets }, line, at) => ({ edit: setSheetField(line.sheet, 'title', `${sheets.length} ${at}`) }),
  // All else is.
  (_, { row, ...on }) =>
    (row.kind === 'calc' || row.kind === 'check') && row.formula !== undefined && !('link' in row)
      ? { edit: setFormula(place({ row, ...on }), ` ${row.formula}`) }
      : undefined,
  (_, line, at) =>
    line.row.kind === 'calc' && line.row.formula !== undefined
      ? { edit: setFormula(place(line), `(${line.row.formula}) * ${at + 2}`), mark: 'changed' }
      : undefined,
  (_, line, at) => ({ edit: setRowField(place(line), 'label', `label ${at}`), mark: 'changed' }),
  (_, line, at) =>
    line.row.kind === 'calc' && !line.row.methods
      ? { edit: stateRow(place(line), { entry: `${at}`, reason: 'as built' }), mark: 'changed' }
      : undefined,
  (book, line, at) => {
    const field = { sheet: line.sheet, part: line.part, item: line.row.id, field: 'name' };
    const renamed = renameEdit({ notebook: openNotebook(book) }, field, `z_${at}`);
    return renamed.ok ? { edit: renamed.value, mark: 'changed' } : undefined;
  },
  (_, line) => ({ edit: removeRow(place(line)), mark: 'gone' }),
  (book, line, at) => {
    const sheet = book.sheets.find(({ key }) => key === line.sheet);
    const id = sheet && freshFor(book, sheet).id('r');
    if (id === undefined) return undefined;
    const row: Row = { id, kind: 'given', name: `new_${at}`, entry: '' };
    return { edit: insertRow(line, 0, row), mark: 'added', of: id };
  },
  (book, _, at) => {
    const columns = book.sheets.flatMap(({ key, parts }) =>
      parts.flatMap((part) =>
        part.kind === 'table'
          ? part.columns.flatMap((column) =>
              column.kind === 'calc' && column.formula !== undefined
                ? [{ sheet: key, table: part.id, column }]
                : [],
            )
          : [],
      ),
    );
    const found = columns[at % columns.length];
    if (!found) return undefined;
    const { column, ...on } = found;
    const to = { ...on, column: column.id };
    return {
      edit: setColumnField(to, 'formula', `(${column.formula}) * ${at + 2}`),
      mark: 'changed',
      of: column.id,
    };
  },
];

test('exactly what a person changed is marked, and nothing once it is undone', { timeout: 240_000 }, () => {
  const start = withStarts(templateBook('debris-haul'), SOURCE);
  expect(differencesIn(start)).toEqual([]);
  const dice = fc.tuple(fc.nat(1_000_000), fc.nat(1_000_000));
  const made = new Set<number>();
  fc.assert(
    fc.property(fc.array(dice, { minLength: 1, maxLength: 8 }), (tosses) => {
      let book = start;
      const expected = new Map<string, string>();
      const back: Edit[] = [];
      for (const [at, [which, where]] of tosses.entries()) {
        const lines = linesOf(book);
        const line = lines[where % lines.length];
        const step = line && STEPS[which % STEPS.length]?.(book, line, at);
        const applied = step && applyEdit(book, step.edit);
        if (!step || !applied?.ok) continue;
        made.add(which % STEPS.length);
        back.unshift(applied.value.inverse);
        book = applied.value.book;
        const id = step.of ?? line.row.id;
        if (step.mark === 'gone' && expected.get(id) === 'added') expected.delete(id);
        else if (step.mark && expected.get(id) !== 'added') expected.set(id, step.mark);
      }
      expect(markedIn(book)).toEqual(expected);
      for (const edit of back) {
        const undone = applyEdit(book, edit);
        if (!undone.ok) throw new Error('an edit cannot be undone');
        book = undone.value.book;
      }
      expect(differencesIn(book)).toEqual([]);
    }),
    { seed: SEED, numRuns: 60, endOnFailure: true },
  );
  expect(made.size).toBe(STEPS.length);
});

test('a sheet knows where it came from in its file, and a book without that has the content hash it had', () => {
  const template = templateBook('fender-energy');
  const book = withStarts(template, SOURCE);
  const opened = openBook(writeBook(book));
  expect(opened.ok && opened.value.book).toEqual(book);
  expect(book.sheets[0]?.start).toMatchObject({ ...SOURCE, content: hashBook(template) });
  const untaught = { ...book, sheets: book.sheets.map(({ start: _, ...sheet }) => sheet) };
  expect(hashBook(untaught)).toBe(hashBook(template));
  // What a signature stands under tells of the origin as well.
  expect(hashBook(book)).not.toBe(hashBook(template));
});

test('a sheet brought into a book that has its names and ids differs in nothing, but for what was changed before', () => {
  const source = withStarts(templateBook('fender-energy'), SOURCE);
  const line = linesOf(source).find(({ row }) => row.kind === 'calc' && row.formula !== undefined);
  if (line?.row.kind !== 'calc') throw new Error('no formula');
  const edited = applyEdit(source, setFormula(place(line), `(${line.row.formula}) * 2`));
  if (!edited.ok) throw new Error('not edited');
  // Twice into a book that has all its keys, names and ids already: one sheet alone, and all of them.
  for (const keys of [[line.sheet], source.sheets.map(({ key }) => key)]) {
    const brought = bringSheets(source, openNotebook(edited.value.book), keys, source.sheets.length);
    const applied = brought.ok ? applyEdit(source, brought.value.edit) : brought;
    if (!applied.ok) throw new Error('not brought');
    const found = differencesIn(applied.value.book);
    expect(found.map(({ what, was }) => [what, was?.id])).toEqual([
      ['changed', `${line.sheet}.${line.row.name}`],
    ]);
  }
});

test('a sheet of another book keeps what it was there', () => {
  const made = templateBook('debris-haul');
  const { revision: _, ...title } = made.title;
  const source = openNotebook({ ...made, title: { ...title, subject: 'Wharf 3', revision: 'B' } });
  const brought = bringSheets(blankBook(), source, ['haul'], 0);
  const applied = brought.ok ? applyEdit(blankBook(), brought.value.edit) : brought;
  if (!applied.ok) throw new Error('not brought');
  const { book } = applied.value;
  const sheet = book.sheets.find(({ start }) => start);
  expect(sheet?.start).toMatchObject({ title: 'Wharf 3', version: 'B', key: 'haul' });
  expect(differencesIn(book)).toEqual([]);
});

test('a sheet that is copied differs from where it came from as the first one does', () => {
  const source = withStarts(templateBook('fender-energy'), SOURCE);
  const line = linesOf(source).find(({ row }) => row.kind === 'calc');
  if (!line) throw new Error('no line');
  const edited = applyEdit(source, setRowField(place(line), 'label', 'another'));
  if (!edited.ok) throw new Error('not edited');
  const copy = duplicateSheet(edited.value.book, line.sheet);
  const applied = copy && applyEdit(edited.value.book, copy.edit);
  if (!applied?.ok) throw new Error('not copied');
  const found = differencesIn(applied.value.book);
  expect(found.map(idOfDifference)).toEqual([
    `${line.sheet}.${line.row.name}`,
    `${copy?.sheet}.${line.row.name}`,
  ]);
});

test('cells that are stated otherwise are told one by one with the rows they stand in now', () => {
  const start = withStarts(templateBook('debris-haul'), SOURCE);
  const sheet = start.sheets.find(({ key }) => key === 'basis');
  const table = sheet?.parts.find((part) => part.kind === 'table' && part.name === 'bands');
  const column = table?.kind === 'table' ? table.columns.find(({ name }) => name === 'x') : undefined;
  if (table?.kind !== 'table' || column?.kind !== 'calc') throw new Error('no column');
  const at = { sheet: 'basis', table: table.id };
  const state = (book: Book, of: typeof column, cells: readonly (readonly [number, string])[]): Book => {
    const said = cells.map(([row, entry]) => [row, { entry, reason: 'survey' }] as const);
    const done = applyEdit(book, stateCells({ ...at, column: column.id }, of, new Map(said)));
    if (!done.ok) throw new Error('not stated');
    return done.value.book;
  };
  const seven = state(
    start,
    column,
    [1, 2, 3, 4, 5, 6, 7].map((row) => [row, `${row}`] as const),
  );
  // Its sheets came with these from another book; the one that is changed is beyond the first few.
  const came = withStarts({ ...seven, sheets: seven.sheets.map(({ start: _, ...one }) => one) }, SOURCE);
  const stated = came.sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === 'table' ? part.columns : []))
    .find(({ id }) => id === column.id);
  if (stated?.kind !== 'calc') throw new Error('no column');
  const inserted = applyEdit(
    state(came, stated, [[6, '60']]),
    insertTableRows(at, table, 0, { length: 2, cells: {} }),
  );
  if (!inserted.ok) throw new Error('no rows');
  const fields = differencesIn(inserted.value.book).map(({ is, fields: told }) => [is?.id, told]);
  expect(fields).toEqual([
    [
      'basis.bands.x',
      [
        {
          field: 'stated value, row 8',
          says: 'words',
          computes: false,
          was: '6 (survey)',
          is: '60 (survey)',
        },
      ],
    ],
  ]);
});
