import { describe, expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  blankBook,
  type Part,
  type Settings,
  type Sheet,
} from '../../src/document/index.ts';
import { bringSheets, openLinks, openNotebook } from '../../src/notebook/index.ts';

let ids = 0;
const id = (): string => {
  ids += 1;
  return `x${ids}`;
};
const given = (name: string, entry: string, unit = '') =>
  ({ id: id(), kind: 'given', name, entry, unit }) as const;
const text = (name: string, entry: string) => ({ id: id(), kind: 'given', name, entry }) as const;
const calc = (name: string, formula: string, unit = '') =>
  ({ id: id(), kind: 'calc', name, formula, unit }) as const;
type Rows = Extract<Part, { kind: 'rows' }>['rows'];
const rows = (...lines: Rows): Part => ({ id: id(), kind: 'rows', rows: lines });
const sheet = (key: string, ...parts: readonly Part[]): Sheet => ({ key, title: `Sheet ${key}`, parts });
const book = (sheets: readonly Sheet[], settings: Partial<Settings> = {}): Book => {
  const blank = blankBook();
  return { ...blank, sheets, settings: { ...blank.settings, ...settings } };
};

function bring(into: Book, source: Book, wanted: readonly string[]): Book {
  const brought = bringSheets(into, openNotebook(source), wanted, into.sheets.length);
  if (!brought.ok) throw new Error(brought.problems.map(({ message }) => message).join('; '));
  const applied = applyEdit(into, brought.value.edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  return applied.value.book;
}

/** The lines held on the first part of the last sheet: name, entry, unit. */
function heldLines({ sheets }: Book): readonly string[] {
  const [part] = sheets.at(-1)?.parts ?? [];
  return part?.kind === 'rows'
    ? part.rows.map((row) =>
        [row.name, 'entry' in row ? row.entry : '', 'unit' in row ? row.unit : ''].join(' | '),
      )
    : [];
}

const empty = book([sheet('a')]);

describe('what does not come along is held as it was', () => {
  const basis = sheet(
    'basis',
    rows(
      given('H', '12\'-6"', 'ft'),
      calc('twice', '2 * H', 'm'),
      text('soil', 'clay'),
      calc('words', '"12 ft of " & soil'),
      calc('share', '0.5', '%'),
      given('due', '2026-11-25', 'date'),
      { id: id(), kind: 'check', name: 'deep', formula: 'H > 3 m' },
      calc('gone', '1 / 0'),
    ),
  );
  const uses = (formula: string, unit = '') => sheet('use', rows(calc('y', formula, unit)));

  test.each([
    ['an entry as it was typed', 'basis.H', 'H | 12\'-6" | ft'],
    ['a result, with every digit', 'basis.twice / 3', 'twice | 7.62 | m'],
    ['a text', 'basis.soil', 'soil | clay | '],
    ['a text that reads as a quantity', 'basis.words', 'words | "12 ft of clay" | '],
    ['per cent, written out', 'basis.share', 'share | 50 % | %'],
    ['a date', 'basis.due', 'due | 2026-11-25 | date'],
    ['a verdict', 'IF(basis.deep; 1; 2)', 'deep | TRUE | '],
    ['nothing, where there is no value', 'basis.gone', 'gone |  | '],
    ['nothing, for a name that stands for nothing and would come to mean something', 'a.H', 'H |  | '],
  ])('%s', (_, formula, held) => {
    const source = book([basis, uses(formula)]);
    const target = book([sheet('a', rows(given('H', '9', 'm')))]);
    const after = openNotebook(bring(target, source, ['use']));
    expect(heldLines(after.book)).toEqual([held]);
    expect(openLinks(after).map(({ item, toLink }) => `${item.id}: ${toLink}`)).toEqual([
      expect.stringMatching(/^use\./),
    ]);
    const before = openNotebook(source).result('use.y');
    if (before.status === 'ok') expect(after.result('use.y')).toEqual(before);
    else expect(after.result('use.y').status).not.toBe('ok');
  });

  test('once for all sheets that say it', () => {
    const source = book([
      basis,
      sheet('u', rows(calc('y', 'basis.H'))),
      sheet('v', rows(calc('z', 'basis.H'))),
    ]);
    const after = bring(empty, source, ['u', 'v']);
    const formulas = after.sheets.slice(1).map(({ parts }) => {
      const last = parts.at(-1);
      return last?.kind === 'rows' ? last.rows.map((row) => ('formula' in row ? row.formula : '')) : [];
    });
    expect(formulas).toEqual([['H'], ['u.H']]);
  });

  test('under a name that nothing there waits for', () => {
    const source = book([basis, sheet('u', rows(calc('y', 'basis.H'), calc('z', 'H + 1 ft')))]);
    const after = openNotebook(bring(empty, source, ['u']));
    expect(heldLines(after.book)).toEqual(['H_2 | 12\'-6" | ft']);
    expect(after.result('u.z').status).toBe('problem');
  });
});

test('keys are free, and formulas that wait for a sheet do not find another one', () => {
  const target = book([sheet('a', rows(calc('y', 'fender.E')))]);
  const source = book([
    sheet('fender', rows(given('E', '5', 'kN'))),
    sheet('a', rows(calc('z', 'fender.E'))),
  ]);
  const after = openNotebook(bring(target, source, ['fender', 'a']));
  expect(after.book.sheets.map(({ key }) => key)).toEqual(['a', 'fender_2', 'a_2']);
  expect(after.result('a.y').status).toBe('problem');
  expect(after.result('a_2.z')).toMatchObject({ status: 'ok', value: { si: 5000 } });
});

test('a table that is called as a sheet of the book gets another name, wherever it is said', () => {
  const table: Part = {
    id: id(),
    kind: 'table',
    name: 'a',
    length: 2,
    columns: [
      { id: id(), kind: 'given', name: 'h', unit: 'm', chunks: [[1, 2]] },
      { id: id(), kind: 'calc', name: 'k', formula: '2 * h', unit: 'm' },
    ],
  };
  const source = book([sheet('s', rows(calc('y', 'SUM(a.k)'), calc('z', 'SUM(s.a.h)')), table)]);
  const after = openNotebook(bring(empty, source, ['s']));
  expect(after.model.tables.has('s.a_2')).toBe(true);
  expect(after.result('s.y')).toMatchObject({ status: 'ok', value: { si: 6 } });
  expect(after.result('s.z')).toMatchObject({ status: 'ok', value: { si: 3 } });
});

describe('units of the two books', () => {
  const source = book([sheet('s', rows(given('t', '2', 'wd'), calc('y', '3 * t', 'h')))], {
    units: [
      { symbol: 'shift', definition: '10 h' },
      { symbol: 'wd', definition: '2 shift' },
      { symbol: 'yr', definition: '365 d' },
    ],
    datums: ['MLLW'],
  });

  test('come along as far as they are used, with those that define them', () => {
    const after = bring(empty, source, ['s']);
    expect(after.settings.units.map(({ symbol }) => symbol)).toEqual(['shift', 'wd']);
    expect(after.settings.datums).toEqual([]);
    expect(openNotebook(after).result('s.y')).toMatchObject({ status: 'ok', value: { si: 120 * 3600 } });
  });

  test('are refused where they differ', () => {
    const other = book([sheet('a')], { units: [{ symbol: 'shift', definition: '8 h' }] });
    const brought = bringSheets(other, openNotebook(source), ['s'], 1);
    expect(brought.ok ? [] : brought.problems).toMatchObject([
      {
        code: 'sheets-unit-differs',
        message: '“shift” is 8 h in this book and 10 h in the book of the sheets',
      },
    ]);
  });

  test('$ of another currency is refused', () => {
    const euros = book([sheet('s', rows(given('c', '$5', '$')))], { currency: 'EUR' });
    const brought = bringSheets(empty, openNotebook(euros), ['s'], 1);
    expect(brought.ok ? [] : brought.problems).toMatchObject([
      { code: 'sheets-currency-differs', message: 'the sheets write $ for EUR, which is USD in this book' },
    ]);
    const plain = book([sheet('s', rows(given('c', '5', 'm')))], { currency: 'EUR' });
    expect(bringSheets(empty, openNotebook(plain), ['s'], 1).ok).toBe(true);
  });
});
