import { describe, expect, test } from 'vitest';
import { cellContent } from '../../../src/app/editing/cells/cell-content.ts';
import { enterText } from '../../../src/app/editing/cells/cell-edits.ts';
import { pasteCopies } from '../../../src/app/editing/clipboard/paste-lines.ts';
import { detailsAt, detailsEdit } from '../../../src/app/editing/lines/details.ts';
import { renameEdit } from '../../../src/app/editing/lines/rename.ts';
import { placeInForce } from '../../../src/app/editing/methods/method-place.ts';
import { renameSheetEdit } from '../../../src/app/editing/sheets/rename-sheet.ts';
import { formulaServiceAt } from '../../../src/app/editor/formula/formula-service.ts';
import { methodPlace, samePlace } from '../../../src/app/view-model/place.ts';
import { applyEdit, type Book, type Calc, type CalcColumn, type Edit } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { blockOf, bookOf, choice, given, numbers, tableOf, texts } from '../../make-book.ts';
import { sessionOn } from '../editor/completion/sample-session.ts';

const line: Calc = {
  id: 'a',
  kind: 'calc',
  name: 'a',
  by: 'rule',
  methods: [
    { id: 'api', for: ['API'], formula: '2*w', reference: 'R' },
    { id: 'other', for: ['USACE', 'beta'], formula: '3*w + t.y' },
  ],
};
const column: CalcColumn = {
  id: 'v',
  kind: 'calc',
  name: 'v',
  by: 'k',
  methods: [
    { id: 'c', for: ['clay'], formula: 'w' },
    { id: 's', for: ['sand'], formula: 's.w + y' },
  ],
};
const book = bookOf({
  s: [
    blockOf(
      'p',
      { ...choice('rule', 'API', { value: 'USACE', label: 'of USACE' }, 'beta'), id: 'r' },
      given('w', '2 m', 'm'),
      line,
    ),
    tableOf('t', 2, texts('k', ['clay', 'sand']), numbers('y', 'm', [1, 2]), column),
  ],
  u: [blockOf('up', { ...line, id: 'b', name: 'b', by: 's.rule', methods: [{ id: 'm', formula: 's.w' }] })],
});
const notebook = openNotebook(book);
const a = { sheet: 's', part: 'p', item: 'a', field: 'value' };

function edited(edit: { ok: true; value: Edit | undefined } | { ok: false }): Book {
  if (!edit.ok || !edit.value) throw new Error('refused');
  const applied = applyEdit(book, edit.value);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
}

function calcs(made: Book): readonly (Calc | CalcColumn)[] {
  return made.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => {
      const items = part.kind === 'rows' ? part.rows : part.kind === 'table' ? part.columns : [];
      return items.flatMap((one): readonly (Calc | CalcColumn)[] => (one.kind === 'calc' ? [one] : []));
    }),
  );
}

const formulas = (made: Book) => calcs(made).map((one) => one.methods?.map(({ formula }) => formula));

describe('what is typed on a line with methods', () => {
  test('is of the method in force, whatever is chosen before it is entered', () => {
    const place = placeInForce(notebook, a);
    expect(place.method).toBe('api');
    expect(cellContent(book, place)).toEqual({ kind: 'formula', text: '2*w' });
    expect(cellContent(book, { ...a, field: 'reference' })).toEqual({ kind: 'text', text: 'R' });
    expect(formulas(edited(enterText(book, place, '=5*w')))[0]).toEqual(['5*w', '3*w + t.y']);
    expect(formulas(edited(enterText(book, { ...a, method: 'other' }, '6*w')))[0]).toEqual(['2*w', '6*w']);
  });

  test('is of the method of the row on a cell of a column, and refused where no row says which', () => {
    const cell = { sheet: 's', part: 't', item: 'r1', field: 'v' };
    const place = { ...placeInForce(notebook, cell), item: 'head' };
    expect(place.method).toBe('s');
    expect(formulas(edited(enterText(book, place, 'y')))[1]).toEqual(['w', 'y']);
    const head = { ...cell, item: 'head' };
    expect(cellContent(book, head).kind).toBeUndefined();
    const refused = enterText(book, head, 'y');
    expect(!refused.ok && refused.problems).toMatchObject([
      { code: 'method-undecided', message: 'v has several methods, and k chooses none of them here' },
    ]);
  });
});

describe('what is typed in the list of methods', () => {
  const cell = { sheet: 's', part: 't', item: 'v', field: 'value' };

  test.each([
    [methodPlace(a, 'other', 'formula'), 'formula', '3*w + t.y', '= 4*w', { formula: '4*w' }],
    [methodPlace(a, 'api', 'reference'), 'text', 'R', ' S ', { reference: 'S' }],
    [methodPlace(a, 'other', 'note'), 'prose', '', 'why', { note: 'why' }],
    [methodPlace(cell, 's', 'formula'), 'formula', 's.w + y', 'y', { formula: 'y' }],
    [methodPlace(cell, 'c', 'reference'), 'text', '', 'T', { reference: 'T' }],
  ])('at %j is a %s, in force or not', (place, kind, text, typed, becomes) => {
    expect(placeInForce(notebook, place)).toEqual(place);
    expect(cellContent(book, place)).toEqual({ kind, text });
    const made = edited(enterText(book, place, typed));
    const found = calcs(made).flatMap(({ methods = [] }) => methods.filter(({ id }) => id === place.method));
    expect(found[0]).toMatchObject(becomes);
    expect(samePlace(place, { ...place, method: 'x' })).toBe(false);
  });

  test('of a method that is gone is nothing, and refused', () => {
    const place = methodPlace(a, 'x', 'formula');
    expect(cellContent(book, place)).toEqual({ kind: undefined, text: '' });
    expect(enterText(book, place, '1')).toMatchObject({
      ok: false,
      problems: [{ code: 'edit-place-missing' }],
    });
  });

  test('as a formula is told where it gives something else than the others, and no unit says which is meant', () => {
    const service = formulaServiceAt(sessionOn(book), methodPlace(a, 'other', 'formula'));
    const said = (text: string) => service?.tryIt(text).problems.map(({ code, message }) => [code, message]);
    expect(said('w')).toEqual([]);
    expect(said('w*w')).toEqual([
      ['methods-differ', 'it gives an area (m^2), where the method for “API” gives a length (m)'],
    ]);
  });
});

describe('names that methods say', () => {
  const at = (part: string, item: string) => ({ sheet: 's', part, item, field: 'name' });

  test('are renamed in every formula, in force or not', () => {
    expect(formulas(edited(renameEdit({ notebook }, at('p', 'w'), 'b_w')))).toEqual([
      ['2*b_w', '3*b_w + t.y'],
      ['b_w', 's.b_w + y'],
      ['s.b_w'],
    ]);
    expect(formulas(edited(renameEdit({ notebook }, at('t', 'y'), 'z')))[0]?.[1]).toBe('3*w + t.z');
  });

  test('are renamed where they choose', () => {
    const bys = (made: Book) => calcs(made).map(({ by }) => by);
    expect(bys(edited(renameEdit({ notebook }, at('p', 'r'), 'clay_rule')))).toEqual([
      'clay_rule',
      'k',
      's.clay_rule',
    ]);
    expect(bys(edited(renameEdit({ notebook }, at('t', 'k'), 'soil')))[1]).toBe('soil');
    const moved = edited(renameSheetEdit(book, 's', 'pile'));
    expect(bys(moved)[2]).toBe('pile.rule');
    expect(formulas(moved)[1]).toEqual(['w', 'pile.w + y']);
  });

  test('come along with lines that are copied', () => {
    const change = pasteCopies(book, { sheet: 'u', place: undefined }, [line], { sheet: 's', book });
    const made = change && applyEdit(book, change.edit);
    const copy = made?.ok ? calcs(made.value.book).at(-1) : undefined;
    expect(copy).toMatchObject({
      by: 's.rule',
      methods: [{ formula: '2*s.w' }, { formula: '3*s.w + s.t.y' }],
    });
  });
});

describe('options of a choice', () => {
  const place = { sheet: 's', part: 'p', item: 'r', field: 'value' };
  const options = (text: string) =>
    edited(detailsEdit({ notebook }, place, { ...detailsAt(book, place), options: text }));
  const fors = (made: Book) => calcs(made)[0]?.methods?.map((method) => method.for);

  test('of which one is written otherwise is followed by the methods for it, and by what is chosen', () => {
    const made = options('API 2GEO\nUSACE = of USACE\nbeta');
    expect(fors(made)).toEqual([['API 2GEO'], ['USACE', 'beta']]);
    expect(openNotebook(made).result('s.a')).toMatchObject({ status: 'ok', value: { si: 4 } });
    expect(fors(options('API\nEM = of USACE\nbeta'))).toEqual([['API'], ['EM', 'beta']]);
    expect(fors(options('API\nEM = of engineers\nbeta'))).toEqual([['API'], ['EM', 'beta']]);
  });

  test.each([
    ['two are others', 'API 2GEO\nEM = of USACE\nbeta'],
    ['the list is shorter', 'API 2GEO\nUSACE = of USACE'],
  ])('are not guessed where %s', (_, text) => {
    expect(fors(options(text))).toEqual([['API'], ['USACE', 'beta']]);
  });

  test('that change places leave the methods as they are', () => {
    expect(fors(options('beta\nAPI\nUSACE = of USACE'))).toEqual([['API'], ['USACE', 'beta']]);
  });

  test('that a formula compares with are not taken out, nor written otherwise', () => {
    const compares: Calc = { id: 'c', kind: 'calc', name: 'c', formula: 'IF(s.rule = "Beta"; 1; 2)' };
    const other = withRow(book, compares);
    const kept = (text: string, of = other) =>
      detailsEdit({ notebook: openNotebook(of) }, place, { ...detailsAt(of, place), options: text });
    const refused = {
      ok: false,
      problems: [
        {
          code: 'option-compared',
          message: 'the formula of u.c compares with “beta”, which the list would no longer have',
        },
      ],
    };
    expect(kept('API\nUSACE = of USACE\nβ')).toMatchObject(refused);
    expect(kept('API\nUSACE = of USACE')).toMatchObject(refused);
    expect(kept('beta = by the effective stress\nAPI\nUSACE')).toMatchObject({ ok: true });
    expect(kept('API\nUSACE = of USACE\nβ', book)).toMatchObject({ ok: true });
    const unrelated = withRow(book, { ...compares, formula: 'IF("beta" = "x"; s.w; s.w)' });
    expect(kept('API\nUSACE = of USACE\nβ', unrelated)).toMatchObject({ ok: true });
  });
});

/** The book with one more line on its second sheet. */
function withRow(from: Book, row: Calc): Book {
  return {
    ...from,
    sheets: from.sheets.map((sheet) => ({
      ...sheet,
      parts: sheet.parts.map((part) =>
        part.id === 'up' && part.kind === 'rows' ? { ...part, rows: [...part.rows, row] } : part,
      ),
    })),
  };
}
