import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/document/index.ts';
import { quaybook, quaybookJson } from './run-quaybook.ts';
import { beam, bookFile, fileOf } from './small-book.ts';

const sound = bookFile('beam.quaybook.json', beam);

describe('calc', () => {
  test('computes, and exits 0 when every check holds', () => {
    const { run, json } = quaybookJson('calc', sound);
    expect(run.err).toBe('');
    expect(run.status).toBe(0);
    expect(json.results['s.A']).toMatchObject({ value: 2, unit: 'ft^2', text: '2 ft^2', status: 'ok' });
    expect(json.results['s.c']).toMatchObject({ status: 'pass', utilisation: 0.8 });
    expect(json.results['s.T'].value).toBeCloseTo(2 + 3.048, 12);
    expect(json.results['s.layers.bottom'].values[1]).toBeCloseTo(5.048, 12);
  });

  test('takes values as a person types them, in any unit of the dimension', () => {
    const { run, json } = quaybookJson(
      'calc',
      sound,
      '--set',
      'b=1\'-6"',
      '--set',
      's.d=0.6 m',
      '--get',
      'A',
    );
    expect(run.status).toBe(0);
    expect(Object.keys(json.results)).toEqual(['s.A']);
    expect(json.results['s.A'].value).toBeCloseTo((1.5 * 0.6) / 0.3048, 10);
  });

  test('exits 2 for a line whose formula is still to be written, and says so', () => {
    const rows = [{ id: 'z', kind: 'calc', name: 'z', formula: '', unit: 'm' }] as const;
    const drafted = bookFile('drafted.quaybook.json', [...beam, { id: 'q', kind: 'rows', rows }]);
    const { run, json } = quaybookJson('calc', drafted, '--get', 'z');
    expect(run.status).toBe(2);
    expect(json.results['s.z']).toEqual({ unit: 'm', text: 'there is no formula yet', status: 'waiting' });
    expect(run.err).toContain('s.z: there is no formula yet');
    expect(quaybook('calc', drafted).status).toBe(2);
    expect(quaybook('calc', drafted, '--get', 'A').status).toBe(0);
  });

  test('exits 1 when a check fails', () => {
    const { run, json } = quaybookJson('calc', sound, '--set', 'b=20 in');
    expect(run.status).toBe(1);
    expect(json.results['s.c']).toMatchObject({ status: 'fail', value: false });
    expect(json.results['s.c'].utilisation).toBeCloseTo(4 / 3, 9);
  });

  test('exits 1 where a check holds only with a value beyond its permitted range, and says it beside the verdict', () => {
    const args = ['calc', sound, '--set', 'b=0.5 in'] as const;
    const { run, json } = quaybookJson(...args);
    expect(run.status).toBe(1);
    expect(json.results['s.c']).toMatchObject({
      value: true,
      status: 'out-of-range',
      text: 'holds, rests on b beyond its permitted range',
      out_of_range: ['s.b'],
    });
    expect(json.results['s.A'].status).toBe('ok');
    const printed = quaybook(...args);
    expect(printed.status).toBe(1);
    expect(printed.out).toMatch(/^s\.c +holds, rests on b beyond its permitted range +3\.3 %$/m);
    expect(quaybook(...args, '--get', 'c').status).toBe(1);
    expect(quaybook(...args, '--get', 'A').status).toBe(0);
  });

  test('lists what can be set', () => {
    const { json } = quaybookJson('calc', sound);
    expect(json.givens.map((given: { name: string }) => given.name)).toEqual([
      's.b',
      's.d',
      's.x',
      's.layers',
    ]);
    expect(json.givens[0]).toMatchObject({
      unit: 'in',
      value: '12 in',
      limits: { min: '1 in', max: '100 in' },
    });
    expect(json.givens[3].columns.map((column: { name: string }) => column.name)).toEqual(['soil', 't']);
  });

  test('replaces a table by a file', () => {
    const csv = fileOf('layers.csv', 'soil,thickness (ft)\nclay,10\nsand,20\ngravel,35\n');
    const { run, json } = quaybookJson('calc', sound, '--table', `layers=${csv}`);
    expect(run.status).toBe(0);
    expect(json.results['s.T'].value).toBeCloseTo(65 * 0.3048, 10);
  });

  test('a blank cell gives no total, and tells the known part', () => {
    const csv = fileOf('blank.csv', 'soil,t\nclay,2\nsand,\n');
    const { run, json } = quaybookJson('calc', sound, '--table', `layers=${csv}`);
    expect(run.status).toBe(2);
    expect(json.results['s.T']).toMatchObject({ status: 'waiting', known_part: 2, known_rows: 1 });
    expect(json.results['s.T'].value).toBeUndefined();
    expect(run.err).toContain('row 2');
  });

  test('a value beyond its range is computed with and pointed out', () => {
    const { json } = quaybookJson('calc', sound, '--set', 'b=0.5 in');
    expect(json.problems).toMatchObject([{ code: 'out-of-range', severity: 'warning', cell: 's.b' }]);
  });

  test('a share set on a line of per cent is read in its unit, and both readings are pointed out', () => {
    const said = /0\.10 is read as 0\.10 %, and would be 10 % as a part of one/;
    const { json } = quaybookJson(
      'calc',
      'fender-energy',
      '--set',
      'panel.o_min=0.10',
      '--get',
      'panel.o_min',
    );
    expect(json.results['panel.o_min']).toMatchObject({ value: 0.1, unit: '%' });
    const plainly = quaybook('calc', 'fender-energy', '--set', 'panel.o_min=0.10', '--get', 'panel.o_min');
    expect(plainly.out + plainly.err).toMatch(said);
    const stated = quaybook('calc', 'fender-energy', '--set', 'panel.o_min=0.10 -', '--get', 'panel.o_min');
    expect(stated.out).toMatch(/10.%/);
    expect(stated.out + stated.err).not.toMatch(/as a part of one/);
  });
});

test('no text steers the terminal it is printed on: signs that would are written out', () => {
  const red = '\u001b[31mred';
  const run = quaybook('calc', `no${red}`);
  expect(run.status).toBe(2);
  expect(run.err).toContain('\\u001b[31mred');
  expect(run.err).not.toContain('\u001b');
  const rows = [{ id: 'a', kind: 'given', name: 'a', label: `a${red}\u009b2J`, entry: '1' }] as const;
  const steering = bookFile('steering.quaybook.json', [{ id: 'p', kind: 'rows', rows }]);
  const { run: printed, json } = quaybookJson('calc', steering, '--get', 'a');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  expect(printed.out).not.toMatch(/[\u001b\u009b]/);
  expect(json.givens[0].label).toBe(`a${red}\u009b2J`);
});

/** Each refusal: exit status 2, one sentence on standard error without a stack, nothing on standard output. */
const refusals: readonly (readonly [about: string, args: readonly string[], says: RegExp])[] = [
  ['a book that is not there', ['calc', 'nowhere.json'], /there is no file and no template “nowhere.json”/],
  ['a template misspelled', ['calc', 'pile-bering'], /did you mean the template pile-bearing/],
  ['no book', ['calc'], /calc takes one BOOK/],
  ['an unknown command', ['clac', 'x'], /no command “clac”; did you mean calc/],
  ['an unknown option', ['calc', sound, '--sett', 'b=1'], /no option --sett; did you mean --set/],
  ['a set without a value', ['calc', sound, '--set', 'b'], /--set takes NAME=VALUE/],
  ['a set of an unknown name', ['calc', sound, '--set', 'bb=1 in'], /no line “bb”.*did you mean b/],
  ['a set of a verdict', ['calc', sound, '--set', 'c=1 ft^2'], /“c” is a check, whose verdict cannot be set/],
  ['an unknown result', ['calc', sound, '--get', 'AA'], /no line or column “AA”/],
  [
    'a table that is not there',
    ['calc', sound, '--table', 'layrs=x.csv'],
    /no table “layrs”.*did you mean layers/,
  ],
  [
    'a file that is not there',
    ['calc', sound, '--table', 'layers=x.csv'],
    /x\.csv cannot be read \(there is no such file\)/,
  ],
  [
    'a wrong header',
    ['calc', sound, '--table', `layers=${fileOf('header.csv', 'soil,thicknes\nclay,1\n')}`],
    /header\.csv: .*thicknes/,
  ],
  [
    'a row too long',
    ['calc', sound, '--table', `layers=${fileOf('long.csv', 'soil,t\nclay,1,9\n')}`],
    /long\.csv: .*line 2/,
  ],
  ['a book that is no JSON', ['calc', fileOf('broken.json', '{"format": ')], /broken\.json: .*JSON/],
  ['another format', ['calc', fileOf('format.json', '{"format":"x","version":1}')], /format/],
  [
    'a newer version',
    ['calc', fileOf('newer.json', '{"format":"quaybook","version":7}')],
    /newer Quaybook.*version 7/,
  ],
  ['a deep book', ['calc', fileOf('deep.json', '['.repeat(100_000))], /deep\.json: /],
  [
    'a hostile key',
    ['calc', fileOf('proto.json', '{"format":"quaybook","version":1,"__proto__":{"a":1}}')],
    /__proto__/,
  ],
  ['a folder', ['calc', '.'], /cannot be read \(it is a folder\)/],
  ['a formula missing', ['eval'], /eval takes one FORMULA/],
  ['a template that is not there', ['verify', 'piles'], /no template “piles”/],
];

describe('refusals', () => {
  test.each(refusals)('%s', (_, args, says) => {
    const { status, out, err } = quaybook(...args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(says);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect(err).not.toMatch(/\bat .*:\d+:\d+|node:internal/);
  });
});

describe('a book with faults', () => {
  const faulty: readonly Part[] = [
    {
      id: 'p',
      kind: 'rows',
      rows: [
        { id: 'a', kind: 'given', name: 'a', entry: '3 quux', unit: 'm' },
        { id: 'r1', kind: 'calc', name: 'broken', formula: '1 +', unit: 'm' },
        { id: 'r2', kind: 'calc', name: 'unknown', formula: 'nosuch * 2', unit: 'm' },
        { id: 'r3', kind: 'calc', name: 'wrong', formula: '1 m + 1 kN', unit: 'm' },
        { id: 'r4', kind: 'calc', name: 'u', formula: 'v + 1 m', unit: 'm' },
        { id: 'r5', kind: 'calc', name: 'v', formula: 'u + 1 m', unit: 'm' },
        { id: 'r6', kind: 'calc', name: 'w', formula: 'a * 2', unit: 'm' },
        { id: 'r7', kind: 'calc', name: 'fine', formula: '2 m * 2', unit: 'm' },
      ],
    },
  ];
  const file = bookFile('faulty.quaybook.json', faulty);

  test('each says what and where; the rest computes', () => {
    const { run, json } = quaybookJson('calc', file);
    expect(run.status).toBe(2);
    const status = (name: string) => json.results[`s.${name}`].status;
    expect([status('broken'), status('unknown'), status('wrong')]).toEqual(['problem', 'problem', 'problem']);
    expect([status('u'), status('v')]).toEqual(['problem', 'problem']);
    expect(status('w')).toBe('waiting');
    expect(json.results['s.fine']).toMatchObject({ value: 4, status: 'ok' });
    expect(run.err).toMatch(/s\.u → s\.v → s\.u|s\.v → s\.u → s\.v/);
    expect(run.err).not.toMatch(/node:internal/);
    for (const result of Object.values<{ status: string; value?: unknown }>(json.results))
      if (result.status === 'problem' || result.status === 'waiting') expect(result.value).toBeUndefined();
  });

  test('a sound result asked for by name exits 0', () => {
    expect(quaybook('calc', file, '--get', 'fine')).toMatchObject({ status: 0, err: '' });
    expect(quaybook('calc', file, '--get', 'w').status).toBe(2);
  });
});

describe('eval', () => {
  test('prints value, unit, text and dimension', () => {
    const { run, json } = quaybookJson(
      'eval',
      'W * 9.80665 (m/s^2)',
      '--given',
      'W=96000 t',
      '--unit',
      'kip',
    );
    expect(run.status).toBe(0);
    expect(json).toMatchObject({ unit: 'kip', dimension: 'L M T^-2', problems: [] });
    expect(json.value).toBeCloseTo(211_643.7716974825, 4);
  });

  test('a refusal is a problem with its place, and exit 2', () => {
    const { run, json } = quaybookJson('eval', '12 ft + 3 kip');
    expect(run.status).toBe(2);
    expect(json.value).toBeNull();
    expect(json.problems[0]).toMatchObject({ code: 'dimensions-differ', from: 0, to: 13 });
  });

  test('a given of any name and a negative entry', () => {
    expect(quaybookJson('eval', "ABS(f'_c)", '--given', "f'_c=-3 kN", '--unit', 'kN').json.value).toBe(3);
    expect(quaybookJson('eval', 'result + 1', '--given', 'result=2', '--unit', '').json.value).toBe(3);
  });
});

test('a check that does not apply is told apart from what holds and what fails', () => {
  const book = bookFile('applies.quaybook.json', [
    {
      id: 'p',
      kind: 'rows',
      rows: [
        { id: 'u', kind: 'given', name: 'U', entry: '0', unit: 'kN' },
        { id: 'c', kind: 'check', name: 'c_up', formula: 'U <= -1 kN', applies: 'U > 0 kN', unit: 'kN' },
      ],
    },
  ]);
  const { run, json } = quaybookJson('calc', book);
  expect(run.status).toBe(0);
  expect(json.results['s.c_up']).toEqual({
    unit: 'kN',
    text: 'does not apply: it applies where U > 0 kN, which is not so',
    status: 'inapplicable',
    applies: 'U > 0 kN',
  });
  expect(json.problems).toEqual([]);
  expect(quaybook('calc', book).out).toContain('does not apply: it applies where U > 0 kN');
  expect(quaybookJson('calc', book, '--set', 'U=1').run.status).toBe(1);
  expect(quaybook('recheck', book).status).toBe(0);
});
