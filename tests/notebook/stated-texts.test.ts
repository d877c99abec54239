import { describe, expect, test } from 'vitest';
import {
  type Book,
  blankBook,
  type Column,
  insertMethod,
  type Method,
  openBook,
  type Row,
  removeMethod,
  stateCell,
  stateRow,
  type Table,
  writeBook,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook, tryStated } from '../../src/notebook/index.ts';

const methods: readonly Method[] = [
  { id: 'one', for: ['clay'], formula: '2 kPa' },
  { id: 'rest', formula: '0 kPa' },
];
const line = (name: string, formula: string): Row => ({ id: name, kind: 'calc', name, formula });

/** Lines and columns whose text is made in different ways; `f` has one method for clay and one for all others. */
function bookOf(soil: string, more: readonly Row[] = []): Book {
  const table: Table = {
    id: 't',
    kind: 'table',
    name: 't',
    length: 2,
    columns: [
      { id: 'k', kind: 'given', name: 'k', type: 'text', chunks: [['clay', 'silt']] },
      { id: 'soil_i', kind: 'calc', name: 'soil_i', formula: 'INDEX(t.k; ROW())' },
      { id: 'f_i', kind: 'calc', name: 'f_i', by: 'soil_i', methods },
    ],
  };
  const rows: readonly Row[] = [
    { id: 'b', kind: 'given', name: 'b', entry: '3 m' },
    {
      id: 'material',
      kind: 'choice',
      name: 'material',
      entry: 'steel',
      options: [{ value: 'steel' }, { value: 'oak' }],
    },
    { id: 'soil', kind: 'calc', name: 'soil', formula: soil },
    ...more,
    { id: 'f', kind: 'calc', name: 'f', by: 'soil', methods },
  ];
  return {
    ...blankBook(),
    sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }, table] }],
  };
}

const place = { sheet: 's', part: 'p', row: 'soil' };

function stated(book: Book, entry: string): Notebook {
  const notebook = openNotebook(book);
  const outcome = notebook.apply(stateRow(place, { entry, reason: 'borehole 3' }));
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  return notebook;
}

const soil = 'IF(b > 2 m; "clay"; "sand")';

describe('a stated text that chooses methods', () => {
  test('is refused where no method is for it and the formula never comes to it, with the texts that are known', () => {
    const notebook = stated(bookOf(soil), 'caly');
    expect(notebook.result('s.f').status).not.toBe('ok');
    expect(notebook.result('s.soil')).toMatchObject({
      status: 'problem',
      problem: {
        code: 'stated-text-unknown',
        severity: 'error',
        from: 0,
        to: 4,
        message: '“clay”, “sand” choose a method of s.f; “caly” is none of them',
        hints: ['did you mean “clay”?'],
        fixes: [{ from: 0, to: 4, insert: 'clay' }],
      },
    });
  });

  test('stands where a method is for it that is chosen by another line which passes it on', () => {
    const chalk: readonly Method[] = [
      { id: 'one', for: ['chalk'], formula: '3 kPa' },
      { id: 'rest', formula: '0 kPa' },
    ];
    const more: readonly Row[] = [
      line('soil_t', 'IF(b > 1 m; soil; "none")'),
      { id: 'g', kind: 'calc', name: 'g', by: 'soil_t', methods: chalk },
    ];
    expect(stated(bookOf(soil, more), 'chalk').problems()).toEqual([]);
    const [found] = stated(bookOf(soil, more), 'chlk').problems();
    expect(found).toMatchObject({ code: 'stated-text-unknown', hints: ['did you mean “chalk”?'] });
  });

  test.each(['clay', ' Clay ', 'sand'])(
    '%j stands: a method is for it, or the formula comes to it',
    (text) => {
      const notebook = stated(bookOf(soil), text);
      expect(notebook.problems()).toEqual([]);
      expect(notebook.result('s.f').status).toBe('ok');
    },
  );

  test.each([
    ['material & ", " & IF(b > 2 m; "wet"; "dry")', 'oak, dry', 'oak, damp'],
    ['LOOKUP("clay"; t.k; t.k; "exact")', 'silt', 'sitl'],
    ['material', 'oak', 'pine'],
    ['IFS(b > 2 m; "clay"; TRUE; t_2)', 'till', 'tll'],
  ])('the texts of %s are found through what it is made of', (formula, known, unknown) => {
    const book = bookOf(formula, [line('t_2', '"till"')]);
    expect(stated(book, known).problems()).toEqual([]);
    expect(stated(book, unknown).problems()[0]).toMatchObject({
      code: 'stated-text-unknown',
      cell: 's.soil',
    });
  });

  test('is only pointed out where the formula could come to any text', () => {
    const notebook = stated(bookOf('LEFT(material; 3)'), 'caly');
    expect(notebook.problems()).toMatchObject([
      { code: 'stated-text-unknown', severity: 'warning', cell: 's.soil' },
    ]);
    expect(notebook.result('s.f')).toMatchObject({ status: 'ok', value: { si: 0 } });
  });

  test('is refused too where it chooses through another text', () => {
    const rows: readonly Row[] = [
      line('kind', 'soil'),
      { id: 'g', kind: 'calc', name: 'g', by: 'kind', methods },
    ];
    const book = bookOf(soil, rows);
    const sheet = book.sheets[0];
    const alone: Book = {
      ...book,
      sheets: sheet
        ? [
            {
              ...sheet,
              parts: sheet.parts.map((part) =>
                part.kind === 'rows' ? { ...part, rows: part.rows.filter(({ id }) => id !== 'f') } : part,
              ),
            },
          ]
        : [],
    };
    expect(stated(alone, 'caly').problems()[0]).toMatchObject({
      code: 'stated-text-unknown',
      message: expect.stringContaining('a method of s.g;'),
    });
    expect(stated(alone, 'sand').problems()).toEqual([]);
  });

  test('chooses nothing, and is any text', () => {
    const notebook = openNotebook(bookOf(soil));
    const outcome = notebook.apply(
      stateRow({ ...place, row: 'f' }, { entry: '3 kPa', reason: 'borehole 3' }),
    );
    expect(outcome.ok).toBe(true);
    const book = bookOf('"clay"', [line('words', 'IF(b > 2 m; "deep"; "shallow")')]);
    const words = openNotebook(book);
    words.apply(stateRow({ ...place, row: 'words' }, { entry: 'half deep', reason: 'seen' }));
    expect(words.problems()).toEqual([]);
  });

  test('the problem comes and goes with the methods', () => {
    const notebook = stated(bookOf(soil), 'peat');
    expect(notebook.problems()[0]?.code).toBe('stated-text-unknown');
    const known: Method = { id: 'p', for: ['peat'], formula: '1 kPa' };
    const method = notebook.apply(insertMethod({ ...place, row: 'f' }, 0, known));
    expect(method.ok).toBe(true);
    expect(notebook.problems()).toEqual([]);
    expect(notebook.result('s.f')).toMatchObject({ value: { si: 1000 } });
    notebook.apply(removeMethod({ ...place, row: 'f' }, 'p'));
    expect(notebook.problems()[0]?.code).toBe('stated-text-unknown');
  });
});

describe('a stated cell that chooses methods row by row', () => {
  const at = { sheet: 's', table: 't', column: 'soil_i' };
  const columnOf = (book: Book): Extract<Column, { kind: 'calc' }> => {
    const found = book.sheets[0]?.parts
      .flatMap((part) => (part.kind === 'table' ? part.columns : []))
      .find(({ id }) => id === 'soil_i');
    if (found?.kind !== 'calc') throw new Error('there is no column soil_i');
    return found;
  };
  const withCell = (entry: string): Book => {
    const notebook = openNotebook(bookOf(soil));
    const outcome = notebook.apply(stateCell(at, columnOf(notebook.book), 2, { entry, reason: 'core' }));
    if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
    return notebook.book;
  };

  test('is refused in its row where no method and no row knows it', () => {
    const opened = openBook(writeBook(withCell('slit')));
    if (!opened.ok) throw new Error('the book does not open');
    const notebook = openNotebook(opened.value.book);
    expect(notebook.problems()[0]).toMatchObject({
      code: 'row-fails',
      cell: 's.t.soil_i',
      message: expect.stringContaining('“clay”, “silt” choose a method of s.t.f_i; “slit” is none of them'),
    });
    const column = notebook.column('s.t.f_i');
    expect(column.status === 'ok' && [column.reading.statusAt(0), column.reading.statusAt(1)]).toEqual([
      'ok',
      'waiting',
    ]);
  });

  test('stands where it is known', () => {
    expect(openNotebook(withCell('CLAY')).problems()).toEqual([]);
  });

  test('is refused before it is stated', () => {
    const notebook = openNotebook(bookOf(soil));
    expect(tryStated(notebook, { id: 's.t.soil_i', row: 1 }, 'slit').problems).toMatchObject([
      { code: 'stated-text-unknown' },
    ]);
  });
});
