import { describe, expect, test } from 'vitest';
import type { Book, Column, Row } from '../../../src/document/index.ts';
import { printSyntax, type Syntax } from '../../../src/language/index.ts';
import { formulaInForce } from '../../../src/notebook/index.ts';
import { governingRow } from '../../../src/record/numbers/governing-row.ts';
import { type WorkedFormula, workFormula } from '../../../src/record/numbers/worked-formula.ts';
import { quantityText } from '../../../src/record/values/format-quantity.ts';
import { sessionOn } from '../../app/editor/completion/sample-session.ts';
import {
  blockOf,
  bookOf,
  calcColumn,
  calc as calcLine,
  choice,
  given,
  numbers,
  tableOf,
  texts,
} from '../../make-book.ts';

const calc = (name: string, formula: string, unit = '-'): Row => calcLine(name, { formula, unit });
const column = (name: string, formula: string, unit = '-'): Column => calcColumn(name, { formula, unit });
const check = (name: string, formula: string): Row => ({ id: name, kind: 'check', name, formula });
/** Five piles with their loads, and a table to interpolate in. */
function pilesWith(lines: readonly Row[], columns: readonly Column[] = []): Book {
  return bookOf({
    s: [
      blockOf(
        'p',
        given('q', '4', 'kN/m'),
        given('φ', '32', 'deg'),
        given('m2', '3', 'm^2'),
        choice('kind', 'clay', 'sand'),
        ...lines,
      ),
      tableOf(
        'piles',
        5,
        texts('kind_p', ['raker', 'plumb', 'Raker', 'plumb', 'plumb']),
        numbers('N', 'kN', [12, 8.5, 7, 20, 1]),
        numbers('L', 'm', [2, 3, 1, 4, 5]),
        { ...numbers('c', 'm', [1, null, 3, null, null]), optional: true },
        ...columns,
      ),
      tableOf(
        'grid',
        4,
        numbers('d', 'm', [0, 0, 10, 10]),
        numbers('a', 'deg', [0, 40, 0, 40]),
        numbers('C', '-', [1, 3, 5, 11]),
      ),
      tableOf('nq', 3, numbers('φ_t', 'deg', [30, 35, 40]), numbers('N_q', '-', [20, 40, 80])),
    ],
  });
}

/** A formula as it is printed, with what stands in place of its names in brackets. */
function written({ syntax, shown }: WorkedFormula): string {
  const named = (node: unknown): unknown => {
    if (Array.isArray(node)) return node.map(named);
    if (node === null || typeof node !== 'object') return node;
    const part = node as Syntax;
    const value = part.kind === 'name' ? shown(part) : undefined;
    if (value) return { ...part, name: `[${quantityText(value).replaceAll('\u00a0', ' ')}]` };
    return Object.fromEntries(Object.entries(node).map(([key, inner]) => [key, named(inner)]));
  };
  return printSyntax(named(syntax) as Syntax);
}

/** The numbers put into a line, or into a row (from 0) of a column of `piles`, and the notes. */
function workedIn(book: Book, id: string, row?: number) {
  const session = sessionOn(book);
  const item = session.notebook.model.items.get(id);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column') throw new Error(`${id} has no formula`);
  const checked = formulaInForce(session.notebook, item, row)?.checked;
  if (!checked) throw new Error(`${id} has no formula in force`);
  const worked = workFormula(session, { item, checked, ...(row !== undefined && { row }) });
  const notes = worked.notes.map((note) => {
    if (typeof note === 'string') return note.replaceAll('\u00a0', ' ');
    return [printSyntax(note.asked), written({ ...worked, syntax: note.put }), note.answer].join(' | ');
  });
  return { text: written(worked), notes };
}

const line = (formula: string, unit: string) => workedIn(pilesWith([calc('x', formula, unit)]), 's.x');

describe('an aggregate over a column has its first terms, and how many more there are', () => {
  test.each([
    ['SUM(piles.N)', 'kN', '[12 kN] + [8.5 kN] + [7 kN] + [… 2 more]', []],
    ['2 * SUM(piles.N)', 'kN', '2 * ([12 kN] + [8.5 kN] + [7 kN] + [… 2 more])', []],
    [
      'SUM(piles.N * piles.L)',
      'kN·m',
      '[12 kN] * [2 m] + [8.5 kN] * [3 m] + [7 kN] * [1 m] + [… 2 more]',
      [],
    ],
    ['SUM(nq.N_q)', '-', '[20] + [40] + [80]', []],
    ['SUM(KNOWN(piles.c))', 'm', '[1 m] + [3 m]', []],
    [
      'MAX(piles.N)',
      'kN',
      'MAX([12 kN]; [8.5 kN]; [7 kN]; [20 kN]; [1 kN])',
      ['greatest in row 4 of piles: 20 kN'],
    ],
    // 8.5 kN and 7 kN are less than 12 kN, and 20 kN counts as 12 kN: the first and the fourth pile give the same.
    [
      'MAX(LESSER(piles.N; 12 kN))',
      'kN',
      'MAX(LESSER([12 kN]; 12 kN); LESSER([8.5 kN]; 12 kN); LESSER([7 kN]; 12 kN); [… 2 more])',
      ['greatest in rows 1, 4 of piles: 12 kN'],
    ],
    ['MIN(nq.N_q)', '-', 'MIN([20]; [40]; [80])', ['least in row 1 of nq: 20']],
    ['AVERAGE(piles.N)', 'kN', 'AVERAGE([12 kN]; [8.5 kN]; [7 kN]; [… 2 more])', []],
    ['COUNT(piles.N)', '-', '[5]', []],
    [
      'SUMIF(piles.kind_p = "raker"; piles.N)',
      'kN',
      '[12 kN] + [7 kN]',
      ['SUMIF counts 2 of 5 rows of piles: rows 1, 3'],
    ],
    ['COUNTIF(piles.L > 2 m)', '-', '[3]', ['COUNTIF counts 3 of 5 rows of piles: rows 2, 4–5']],
    [
      'MAXIF(piles.L < 4 m; piles.N)',
      'kN',
      'MAX([12 kN]; [8.5 kN]; [7 kN])',
      ['MAXIF counts 3 of 5 rows of piles: rows 1–3', 'greatest in row 1 of piles: 12 kN'],
    ],
    ['SUMIF(piles.L > 9 m; piles.N)', 'kN', '[0 kN]', ['SUMIF counts 0 of 5 rows of piles']],
  ] as const)('%s', (formula, unit, text, notes) => {
    expect(line(formula, unit)).toEqual({ text, notes });
  });
});

describe('what is looked up says what was sought and where it was found', () => {
  test.each([
    ['INDEX(piles.N; 2) * 3', 'kN', '[8.5 kN] * 3', ['INDEX takes row 2 of piles']],
    ['MATCH(7 kN; piles.N; "exact")', '-', '[3]', ['7 kN found in row 3 of piles']],
    [
      'LOOKUP(φ; nq.φ_t; nq.N_q; "at or below")',
      '-',
      '[20]',
      ['32° found in row 1 of nq (at or below: 30°)'],
    ],
    [
      'LOOKUP("PLUMB"; piles.kind_p; piles.N; "first")',
      'kN',
      '[8.5 kN]',
      ['“PLUMB” found in row 2 of piles'],
    ],
    [
      'INTERPOLATE(φ; nq.φ_t; nq.N_q)',
      '-',
      '[20] + ([40] - [20]) * ([32°] - [30°]) / ([35°] - [30°])',
      ['32° between row 1 (30°; 20) and row 2 (35°; 40) of nq'],
    ],
    ['INTERPOLATE(35 deg; nq.φ_t; nq.N_q)', '-', '[40]', ['35°: at row 2 of nq (35°; 40)']],
    // Along d: 1 + (5 - 1)·5/10 and 3 + (11 - 3)·5/10; between them half of the way.
    [
      'INTERPOLATE2(5 m; 20 deg; grid.d; grid.a; grid.C)',
      '-',
      '[3] + ([7] - [3]) * ([20°] - [0°]) / ([40°] - [0°])',
      [
        'grid at 0°: 1 + (5 − 1) (5 m − 0 m) / (10 m − 0 m) = 3',
        'grid at 40°: 3 + (11 − 3) (5 m − 0 m) / (10 m − 0 m) = 7',
      ],
    ],
    [
      'INTERPOLATE2(10 m; 10 deg; grid.d; grid.a; grid.C)',
      '-',
      '[5] + ([11] - [5]) * ([10°] - [0°]) / ([40°] - [0°])',
      ['grid at 10 m and 0°: 5', 'grid at 10 m and 40°: 11'],
    ],
    [
      'INTERPOLATE2(5 m; 40 deg; grid.d; grid.a; grid.C)',
      '-',
      '[7]',
      ['grid at 40°: 3 + (11 − 3) (5 m − 0 m) / (10 m − 0 m) = 7'],
    ],
    ['INTERPOLATE2(12 m; 50 deg; grid.d; grid.a; grid.C; "hold")', '-', '[11]', ['grid at 10 m and 40°: 11']],
    ['INTERPOLATE(50 deg; nq.φ_t; nq.N_q; "hold")', '-', '[80]', ['50°: held at row 3 of nq (40°; 80)']],
  ] as const)('%s', (formula, unit, text, notes) => {
    expect(line(formula, unit)).toEqual({ text, notes });
  });
});

describe('of a choice between formulas the one that holds is shown, and why', () => {
  test.each([
    [
      'IF(q > 3 (kN/m); q * 2 m; 0 kN)',
      'kN',
      '[4 kN/m] * 2 m',
      ['q > 3 (kN/m) | [4 kN/m] > 3 (kN/m) | is so'],
    ],
    [
      'IF(kind = "sand"; 1; 2) * q',
      'kN/m',
      '2 * [4 kN/m]',
      ['kind = "sand" | [“clay”] = "sand" | is not so'],
    ],
    ['2 * IF(q > 0; q + q; q)', 'kN/m', '2 * ([4 kN/m] + [4 kN/m])', ['q > 0 | [4 kN/m] > 0 | is so']],
    ['IF(q^2 > 8 (kN^2/m^2); 1; 2)', '-', '1', ['q^2 > 8 (kN^2/m^2) | [4 kN/m]^2 > 8 (kN^2/m^2) | is so']],
    ['IF(12 kN / q > 3 m; 1; 2)', '-', '2', ['12 kN / q > 3 m | 12 kN / [4 kN/m] > 3 m | is not so']],
    [
      'IF(AND(-q < 0; q > 0); 1; 2)',
      '-',
      '1',
      ['AND(-q < 0; q > 0) | AND(-[4 kN/m] < 0; [4 kN/m] > 0) | is so'],
    ],
    ['IF(MAX(piles.N) > 15 kN; 1; 2)', '-', '1', ['MAX(piles.N) > 15 kN | [20 kN] > 15 kN | is so']],
    [
      'IF(SUM(piles.N * piles.L) > 2 * q * m2; 1; 2)',
      '-',
      '1',
      ['SUM(piles.N * piles.L) > 2 * q * m2 | [141.5 kN·m] > 2 * [4 kN/m] * [3 m²] | is so'],
    ],
    ['SWITCH(kind; "sand"; q; "clay"; 3 * q)', 'kN/m', '3 * [4 kN/m]', ['kind | [“clay”] | chosen']],
  ] as const)('%s', (formula, unit, text, notes) => {
    expect(line(formula, unit)).toEqual({ text, notes });
  });
});

describe('a row of a column has the numbers of that row', () => {
  const columns = [
    column('u', 'N / (q * L)'),
    column('depth', 'ABOVE(depth; 0 m) + L', 'm'),
    column('total', 'RUNNINGSUM(N)', 'kN'),
    column('share', 'N / SUM(piles.N)'),
    column('low', 'COUNTIF(piles.N < N)'),
    column('no', 'ROW() * q', 'kN/m'),
  ];
  test.each([
    ['u', 1, '[8.5 kN] / ([4 kN/m] * [3 m])', []],
    ['depth', 0, '[0 m] + [2 m]', []],
    ['depth', 2, '[5 m] + [1 m]', []],
    ['total', 2, '[20.5 kN] + [7 kN]', ['RUNNINGSUM in row 2, the row above: 20.5 kN']],
    ['share', 3, '[20 kN] / ([12 kN] + [8.5 kN] + [7 kN] + [… 2 more])', []],
    ['low', 0, '[3]', ['COUNTIF counts 3 of 5 rows of piles: rows 2–3, 5']],
    ['no', 4, '[5] * [4 kN/m]', []],
  ] as const)('%s, row %i', (name, row, text, notes) => {
    expect(workedIn(pilesWith([], columns), `s.piles.${name}`, row)).toEqual({ text, notes });
  });

  test('by the method of its own row', () => {
    const methods: Column = {
      id: 'm',
      kind: 'calc',
      name: 'm',
      formula: '',
      unit: 'kN',
      by: 'kind_p',
      methods: [
        { id: 'm1', for: ['raker'], formula: '1.2 * N' },
        { id: 'm2', formula: 'N + 1 kN' },
      ],
    };
    const book = pilesWith([], [methods]);
    expect(workedIn(book, 's.piles.m', 2).text).toBe('1.2 * [7 kN]');
    expect(workedIn(book, 's.piles.m', 3).text).toBe('[20 kN] + 1 kN');
  });
});

test('a stated side of a check is the number stated', () => {
  const stated: Row = {
    ...check('c', '2 m * q <= 3 m * q'),
    stated: { capacity: { entry: '9 kN', reason: 'letter' } },
  } as Row;
  expect(workedIn(pilesWith([stated]), 's.c').text).toBe('2 m * [4 kN/m] <= [9 kN]');
});

test('a running sum says that it does not go on from what is stated in the row above', () => {
  const total = calcColumn('total', { formula: 'RUNNINGSUM(N)', unit: 'kN' });
  const book = pilesWith([], [{ ...total, stated: [{ row: 2, entry: '30', reason: 'weighed' }] }]);
  // 12 kN and 8.5 kN stand in the rows above, whatever is stated there for their sum.
  expect(workedIn(book, 's.piles.total', 2)).toEqual({
    text: '[20.5 kN] + [7 kN]',
    notes: [
      'RUNNINGSUM in row 2, the row above: 20.5 kN, as computed: it does not go on from the 30 kN stated there',
    ],
  });
});

describe('the row that governs', () => {
  const columns = [
    column('u', 'N * L', 'kN·m'),
    column('v', '2 * L', 'm'),
    column('w', 'v / 2', 'm'),
    column('f', 'L', 'm'),
  ];
  const rowOf = (lines: readonly Row[], name: string) => {
    const { notebook } = sessionOn(pilesWith(lines, columns));
    const item = notebook.model.items.get(`s.piles.${name}`);
    if (item?.kind !== 'formula column') throw new Error(`${name} is no column`);
    const { row = -1, reader } = governingRow(notebook, item) ?? {};
    return [row + 1, reader?.does, reader?.name];
  };

  test('gives the greatest or the least value that a line reads', () => {
    expect(rowOf([calc('u_max', 'MAX(piles.u)', 'kN·m')], 'u')).toEqual([4, 'gives', 'u_max']);
    expect(rowOf([calc('u_min', 'MIN(piles.u)', 'kN·m')], 'u')).toEqual([5, 'gives', 'u_min']);
    expect(rowOf([calc('r', 'MAXIF(piles.kind_p = "raker"; piles.u)', 'kN·m')], 'u')).toEqual([
      1,
      'gives',
      'r',
    ]);
  });

  test('is that of a check that fails before that of any other line', () => {
    const lines = [calc('u_min', 'MIN(piles.u)', 'kN·m'), check('c', 'MAX(piles.u) <= 50 (kN*m)')];
    expect(rowOf(lines, 'u')).toEqual([4, 'gives', 'c']);
  });

  test('says which others give the same', () => {
    const { notebook } = sessionOn(
      pilesWith([calc('a_max', 'MAX(piles.a)', 'm')], [column('a', 'LESSER(L; 3 m)', 'm')]),
    );
    const item = notebook.model.items.get('s.piles.a');
    if (item?.kind !== 'formula column') throw new Error('a is no column');
    expect(governingRow(notebook, item)).toEqual({
      row: 1,
      same: [3, 4],
      reader: { name: 'a_max', does: 'gives' },
    });
  });

  test('is one that a line looks up', () => {
    const found = calc('r', 'LOOKUP(3 m; piles.L; piles.u; "exact")', 'kN·m');
    // 3 m stands in the second row.
    expect(rowOf([found], 'u')).toEqual([2, 'gives', 'r']);
    expect(rowOf([calc('at', 'INDEX(piles.u; 4)', 'kN·m')], 'u')).toEqual([4, 'gives', 'at']);
    // What the looked-up column is made of has its numbers in the same row.
    expect(rowOf([calc('r', 'LOOKUP(3 m; piles.L; piles.w; "exact")', 'm')], 'v')).toEqual([2, 'gives', 'r']);
  });

  test('is none that stands in an arm of a choice that is not taken', () => {
    const either = (condition: string) => [
      calc('u_max', `IF(${condition}; MAX(piles.u); MIN(piles.u))`, 'kN·m'),
    ];
    expect(rowOf(either('q > 0 (kN/m)'), 'u')).toEqual([4, 'gives', 'u_max']);
    expect(rowOf(either('q < 0 (kN/m)'), 'u')).toEqual([5, 'gives', 'u_max']);
    expect(rowOf([calc('r', 'IF(q > 0 (kN/m); 0 (kN*m); MAX(piles.u))', 'kN·m')], 'u')).toEqual([
      1,
      undefined,
      undefined,
    ]);
  });

  test('is no row that a line asks for and the table lacks', () => {
    for (const asked of ['0', '6', '1.5', '-1'])
      expect(rowOf([calc('at', `INDEX(piles.u; ${asked})`, 'kN·m')], 'u')).toEqual([1, undefined, undefined]);
  });

  test('is the first one of which a check wants none', () => {
    expect(rowOf([check('none', 'COUNTIF(piles.v > 5 m) = 0')], 'v')).toEqual([2, 'counts', 'none']);
  });

  test('is that of the column of its table that reads it', () => {
    expect(rowOf([calc('w_max', 'MAX(piles.w)', 'm')], 'v')).toEqual([5, 'gives', 'w_max']);
  });

  test('is else that of a column that it reads itself', () => {
    const lines = [calc('v_max', 'MAX(piles.v)', 'm')];
    expect(rowOf(lines, 'w')).toEqual([5, 'gives', 'v_max']);
  });

  test('is the first where no line reads one', () => {
    expect(rowOf([calc('sum', 'SUM(piles.f)', 'm')], 'f')).toEqual([1, undefined, undefined]);
  });
});
