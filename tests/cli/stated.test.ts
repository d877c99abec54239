import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { beam, bookFile, fileOf } from './small-book.ts';

// 12 in by 24 in are 2 ft²; two layers of 2 m and 10 ft reach down to 2 m and 5.048 m.
const sound = bookFile('stated.quaybook.json', beam);
const refused = (...args: readonly string[]): string => {
  const run = quaybook('calc', sound, ...args);
  expect(run).toMatchObject({ status: 2, out: '' });
  return run.err.trim();
};

describe('--set on a calculated line', () => {
  test('states it: the value is used, the computed one stands beside it', () => {
    const { run, json } = quaybookJson(
      'calc',
      sound,
      '--set',
      'A=3 ft^2',
      '--reason',
      'A=client’s letter of 3 May',
    );
    // The check A <= 2.5 ft² fails now.
    expect(run.status).toBe(1);
    expect(json.results['s.A']).toMatchObject({
      value: 3,
      unit: 'ft^2',
      stated: { entry: '3 ft^2', reason: 'client’s letter of 3 May' },
      computed: 2,
    });
    expect(json.stated).toEqual([
      {
        name: 's.A',
        entry: '3 ft^2',
        reason: 'client’s letter of 3 May',
        value: 3,
        computed: 2,
        difference: 1,
        difference_unit: 'ft^2',
        unit: 'ft^2',
        feeds: ['s.c'],
      },
    ]);
  });

  test('a reason that was given for another value says so', () => {
    const carried = bookFile('carried.quaybook.json', [
      {
        id: 'p',
        kind: 'rows',
        rows: [
          {
            id: 'w',
            kind: 'calc',
            name: 'w',
            formula: '2 * 3 m',
            unit: 'm',
            stated: { entry: '7', reason: 'letter', reasonFor: '8 m' },
          },
        ],
      },
    ]);
    const { json } = quaybookJson('calc', carried);
    expect(json.stated).toMatchObject([{ entry: '7', reason: 'letter', reason_for: '8 m' }]);
    const run = quaybook('calc', carried);
    expect(run.out).toContain('reason: letter (given for 8 m, to be confirmed)');
    expect(run.err).toContain('s.w: the reason for the stated value was given for 8 m');
  });

  test('is said in words', () => {
    const run = quaybook('calc', sound, '--set', 'A=2.2', '--reason', 's.A=measured');
    expect(run.status).toBe(0);
    expect(run.out).toMatch(/^s\.A +2\.2 ft\^2 {2}stated$/m);
    expect(run.out).toContain(
      's.A: stated 2.2 ft^2 (as typed: 2.2); computed 2 ft^2; difference +0.2 ft^2 (+10.0 %); reason: measured; feeds s.c',
    );
    expect(run.err).toBe('');
  });

  test('without a reason is an open item', () => {
    const run = quaybook('calc', sound, '--set', 'A=2.2');
    expect(run.status).toBe(0);
    expect(run.err).toContain('s.A: the reason for the stated value is open');
    expect(run.out).toContain('reason: open');
  });

  test('far from the computed one is an open item, as it is in the list and as a problem', () => {
    const { run, json } = quaybookJson('calc', sound, '--set', 'A=3 yd^2', '--reason', 'A=measured');
    const open = 'the stated value, 27 ft^2, is far from the computed 2 ft^2';
    expect(json.stated).toMatchObject([{ name: 's.A', open: [open] }]);
    expect(json.problems).toContainEqual(expect.objectContaining({ code: 'stated-far', message: open }));
    expect(run.err).toContain(`s.A: ${open}`);
  });

  test('states a side of a check', () => {
    const run = quaybook(
      'calc',
      sound,
      '--set',
      'c.capacity=1.5 ft^2',
      '--reason',
      'c.capacity=criteria',
      '--get',
      'c',
    );
    expect(run.status).toBe(1);
    expect(run.out).toMatch(/^s\.c +fails {2}133 % {2}capacity stated$/m);
    expect(run.out).toContain(
      's.c, capacity: stated 1.5 ft^2; computed 2.5 ft^2; difference −1 ft^2 (−40.0 %); reason: criteria; feeds s.c',
    );
  });

  test.each([
    [['--set', 'A=3', '--reason', 'B=letter'], '--reason B: no value is stated for that'],
    [['--set', 'b=3', '--reason', 'b=letter'], '--reason b: no value is stated for that'],
    [['--reason', 'A'], '--reason takes NAME=WORDS'],
    [['--set', 'A=3', '--reason', 'A=x', '--reason', 'A=y'], '--reason A is given twice'],
    [['--set', 'A='], 'the stated value is blank'],
    [['--set', 'A=3', '--set', 's.A=4'], 'given twice'],
    [['--set', 'c.verdict=3'], 'there is no line “c.verdict”'],
  ])('%j is refused in a sentence', (args, said) => {
    const err = refused(...args);
    expect(err).toContain(said);
    expect(err.split('\n')).toHaveLength(1);
  });
});

describe('--table on a calculated column', () => {
  const stating = (text: string) => ['--table', `layers.bottom=${fileOf('bottom.csv', text)}`];

  test('says beside its row and below all results that a cell is stated', () => {
    const run = quaybook(
      'calc',
      sound,
      ...stating('row,bottom (ft)\n2,20\n'),
      '--reason',
      'layers.bottom=boring 4',
      '--get',
      'layers.bottom',
    );
    expect(run.out).toMatch(/^ +1 {2}2 m$/m);
    expect(run.out).toMatch(/^ +2 {2}6\.096 m {2}stated$/m);
    // 20 ft are 6.096 m, and the layers reach down to 2 m and 3.048 m more.
    expect(run.out).toContain(
      's.layers.bottom, row 2: stated 6.096 m (as typed: 20 ft); computed 5.048 m; difference +1.048 m (+20.8 %); reason: boring 4',
    );
  });

  test('states the cells of the rows it lists; the others stay computed', () => {
    const { run, json } = quaybookJson(
      'calc',
      sound,
      ...stating('row,bottom (ft)\n1,\n2,20\n'),
      '--reason',
      'layers.bottom=boring 4',
    );
    expect(run.status).toBe(0);
    const { values, stated } = json.results['s.layers.bottom'];
    expect(values[0]).toBeCloseTo(2, 12);
    expect(values[1]).toBeCloseTo(6.096, 12);
    expect(stated).toEqual([
      { row: 2, entry: '20 ft', reason: 'boring 4', computed: expect.closeTo(5.048, 12) },
    ]);
    expect(json.stated[0]).toMatchObject({
      name: 's.layers.bottom',
      row: 2,
      difference: expect.closeTo(1.048, 12),
    });
  });

  test.each([
    ['bottom\n20\n', 'a column “row” and a column “bottom”'],
    ['row,bottom\n3,20\n', '“3” is no row of this table, which has rows 1 to 2'],
    ['row,bottom\n1.5,20\n', '“1.5” is no row'],
    ['row,bottom\n1,20\n1,30\n', 'row 1 stands there twice'],
    ['row,bottom (kN)\n1,20\n', 'kN'],
    ['row,bottom\n1,deep\n', 'deep'],
  ])('refuses %j in a sentence (stated-row-unknown where the row is none)', (text, said) =>
    expect(refused(...stating(text))).toContain(said),
  );

  test('rows that take the place of others end the stated cells, with a word: table-stated-gone', () => {
    const kept = readFileSync(sound, 'utf8').replace(
      '"formula": "RUNNINGSUM(t)"',
      '"formula": "RUNNINGSUM(t)", "stated": [{ "row": 2, "entry": "6 m", "reason": "boring 4" }]',
    );
    const book = fileOf('with-stated.quaybook.json', kept);
    const csv = fileOf('others.csv', 'soil,t\nclay,1\nsand,1\n');
    const run = quaybook('calc', book, '--table', `layers=${csv}`, '--get', 'layers.bottom');
    expect(run.status).toBe(0);
    expect(run.err).toContain('1 stated value is deleted: bottom of sand 6 m (boring 4)');
    expect(run.out).not.toContain('stated');
  });
});

describe('a stated text that chooses methods', () => {
  const methods = [
    { id: 'c', for: ['clay'], formula: '20 kPa' },
    { id: 'e', formula: '0 kPa' },
  ];
  const book = bookFile('texts.quaybook.json', [
    {
      id: 'p',
      kind: 'rows',
      rows: [
        { id: 'b', kind: 'given', name: 'b', entry: '3', unit: 'm' },
        { id: 's', kind: 'calc', name: 'soil', formula: 'IF(b > 2 m; "clay"; "sand")' },
        { id: 'f', kind: 'calc', name: 'f', unit: 'kPa', by: 'soil', methods },
      ],
    },
    {
      id: 't',
      kind: 'table',
      name: 't',
      length: 2,
      columns: [
        { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1, 3]] },
        { id: 'k', kind: 'calc', name: 'k', formula: 'IF(h > 2 m; "clay"; "sand")' },
        { id: 'g', kind: 'calc', name: 'g', unit: 'kPa', by: 'k', methods },
      ],
    },
  ]);

  test.each([
    [['--set', 'soil=cley'], '“clay”, “sand” choose a method of s.f; “cley” is none of them'],
    [
      ['--table', `t.k=${fileOf('kinds.csv', 'row,k\n1,cley\n')}`],
      '“clay”, “sand” choose a method of s.t.g; “cley” is none of them',
    ],
  ])('%j is refused with the texts that are known', (args, said) => {
    const run = quaybook('calc', book, ...args, '--reason', `${args[1]?.split('=')[0]}=core 2`);
    expect(run).toMatchObject({ status: 2, out: '' });
    expect(run.err).toContain(said);
  });

  test('is taken where it is known', () => {
    const { json } = quaybookJson('calc', book, '--set', 'soil=sand', '--reason', 'soil=core 2');
    expect(json.results['s.f']).toMatchObject({ value: 0 });
  });
});

describe('a check that holds only by a stated value', () => {
  const demand = (formula: string, more: object) =>
    bookFile(`${formula}.quaybook.json`, [
      {
        id: 'p',
        kind: 'rows',
        rows: [
          { id: 'R', kind: 'calc', name: 'R', formula, unit: 'kN', ...more },
          { id: 'c', kind: 'check', name: 'c', formula: 'R <= 100 kN', unit: 'kN' },
        ],
      },
    ]);
  const stated = { stated: { entry: '90 kN', reason: 'letter' } };

  test('is told beside it and ends with 3', () => {
    const { run, json } = quaybookJson('calc', demand('120 kN', stated));
    expect(run.status).toBe(3);
    expect(json.results['s.c']).toMatchObject({
      value: true,
      status: 'by-stated',
      eased_by: ['s.R'],
      holds_only_by_stated: true,
    });
    const text = quaybook('calc', demand('120 kN', stated), '--get', 'c');
    expect(text.status).toBe(3);
    expect(text.out).toContain('holds, holds only by the stated R, 90 kN for 120 kN');
  });

  test.each([
    ['one that holds with the computed value too is eased, and ends with 0', '98 kN', '70 kN', 0, 'pass'],
    ['one that fails all the same ends with 1', '120 kN', '110 kN', 1, 'fail'],
  ])('%s', (_, formula, entry, status, word) => {
    const { run, json } = quaybookJson('calc', demand(formula, { stated: { entry, reason: 'letter' } }));
    expect(run.status).toBe(status);
    expect(json.results['s.c'].status).toBe(word);
    if (word === 'pass') expect(json.results['s.c'].holds_only_by_stated).toBe(false);
  });
});
