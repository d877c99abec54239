import { expect, test } from 'vitest';
import { findFunction } from '../../src/language/index.ts';
import { RECHECK_LIMITS, recheck, reportLines } from '../../src/recheck/index.ts';
import { bookOf, computed, instead } from './books.ts';

const geometry = {
  'D [in]': '36 in',
  'L [ft]': '100 ft',
  'A [in^2]': '=PI() * (D/2)^2',
  'V [cy]': '=A * L',
};

test('a sound book: every value agrees, entered ones included', async () => {
  const { program, values } = computed(bookOf(geometry));
  const report = await recheck(program, values);
  expect(report).toEqual({
    agree: 4,
    entries: 2,
    withoutValue: 0,
    findings: [],
    indeterminate: [],
    notRechecked: [],
    resting: [],
  });
  expect(reportLines(report)).toEqual(['4 values agree (2 computed twice, 2 entries).']);
});

// By hand: a circle of 3 ft over 100 ft, π · 2.25 · 100 / 27 = 26.17993877991 cy; 1 m² = 1550.0031000062 in².
test('a value that is off by 2 in 10^9 is a finding that names both values in the unit of the line', async () => {
  const { program, values } = computed(bookOf(geometry));
  const volume = values('s.V') as number;
  const report = await recheck(program, instead(values, { 's.V': volume * (1 + 2e-9) }));
  expect(report.agree).toBe(3);
  expect(report.findings).toEqual([
    {
      id: 's.V',
      engine: volume * (1 + 2e-9),
      recheck: expect.closeTo(volume, 9),
      message: 's.V: the book has 26.1799388323 cy, the recheck 26.1799387799 cy',
    },
  ]);
  expect(reportLines(report)[0]).toBe('3 values agree (1 computed twice, 2 entries); 1 value disagrees.');
  const near = await recheck(program, instead(values, { 's.V': volume * (1 + 5e-10) }));
  expect(near.findings).toEqual([]);
});

test('an entry whose factor is wrong is found, and what follows from it says so', async () => {
  const { program, values } = computed(bookOf(geometry));
  const wrong = instead(values, { 's.D': (values('s.D') as number) * 1.000002, 's.A': 1 });
  const { findings } = await recheck(program, wrong);
  expect(findings.map(({ message }) => message)).toEqual([
    's.D: the book has 36.000072 in, the recheck 36 in',
    's.A: the book has 1550.00310001 in^2, the recheck 1017.87601976 in^2 (it depends on s.D)',
  ]);
});

test('what is left of a balance agrees within 1e-12 of the magnitudes, not beyond', async () => {
  const { program, values } = computed(
    bookOf({ 'P [kN]': '1200 kN', 'Q [kN]': '=P / 3', 'R [kN]': '=P - Q - Q - Q', 'S [kN·m]': '=R * 2 m' }),
  );
  expect(Math.abs(values('s.R') as number)).toBeLessThan(1e-6);
  const off = (force: number) => recheck(program, instead(values, { 's.R': force, 's.S': 2 * force }));
  expect((await off(2e-6)).findings).toEqual([]);
  expect((await off(4e-6)).findings.map(({ id }) => id)).toEqual(['s.R', 's.S']);
});

test('where the engine has no value the grid must have none, and the reverse', async () => {
  const { program, values } = computed(
    bookOf({ 'x [m]': '', 'y [m]': '=x + 1 m', 'z [m]': '=IF(ISBLANK(x); 2 m; x)', 'q [m]': '=z / (z - z)' }),
  );
  const report = await recheck(program, values);
  expect(report).toMatchObject({ agree: 1, withoutValue: 3, findings: [] });
  const { findings } = await recheck(program, instead(values, { 's.y': 3, 's.z': undefined }));
  expect(findings.map(({ message }) => message)).toEqual([
    's.y: the book has 3 m, the recheck no value',
    's.z: the book has no value, the recheck 2 m',
  ]);
});

test('a loop has no value in either engine', async () => {
  const { program, values } = computed(bookOf({ 'a [m]': '=b + 1 m', 'b [m]': '=a / 2' }));
  expect(await recheck(program, values)).toMatchObject({ agree: 0, withoutValue: 2, findings: [] });
});

test('a rounded quotient on the edge of the rounding rule is listed, and what depends on it is compared', async () => {
  const { program, values } = computed(
    bookOf({ x: '3.000000001', c: '=CEILING(x; 1)', d: '=c * 2', sure: '=CEILING(3.1; 1)' }),
  );
  const other = values('s.c') === 4 ? 3 : 4;
  const report = await recheck(program, instead(values, { 's.c': other, 's.d': 2 * other }));
  expect(report.indeterminate.map(({ message }) => message)).toEqual([
    's.c: not decided: it rounds a quotient whose last digit settles which way',
  ]);
  expect(report.findings).toEqual([]);
  expect(report.agree).toBe(3);
});

test('a chance in the far tail is listed, a usual one compared', async () => {
  const { program, values } = computed(
    bookOf({ far: '=NORMSINV(0.000000000001)', near: '=NORMSINV(0.0001)' }),
  );
  const report = await recheck(program, values);
  expect(report.indeterminate.map(({ id }) => id)).toEqual(['s.far']);
  expect(report).toMatchObject({ agree: 1, findings: [] });
});

test('what is not rechecked is named with the reason, and what depends on it is rechecked with its value', async () => {
  const { program, values } = computed(
    bookOf({ soil: '"stiff clay"', n: '=LEN(soil)', twice: '=2 * n', wet: '=soil & "!"' }),
  );
  const report = await recheck(program, values);
  expect(report.notRechecked).toEqual([
    { id: 's.n', reason: 'LEN: texts stand as codes in the recheck', values: 1 },
    { id: 's.wet', reason: 'texts stand as codes in the recheck, and codes do not join', values: 1 },
  ]);
  expect(report).toMatchObject({ agree: 2, findings: [] });
  expect(reportLines(report)).toEqual([
    '2 values agree (1 computed twice, 1 entry); 2 values of 2 lines not rechecked.',
    's.n: not rechecked: LEN: texts stand as codes in the recheck',
    's.wet: not rechecked: texts stand as codes in the recheck, and codes do not join',
    'these rest on what was not rechecked, whose values they take from the first computation: s.twice',
  ]);
  expect(report.resting).toEqual(['s.twice']);
  const { findings } = await recheck(program, instead(values, { 's.twice': 21 }));
  expect(findings.map(({ id }) => id)).toEqual(['s.twice']);
});

test('an entry in a unit without an independent factor is not rechecked', async () => {
  const { program, values } = computed(bookOf(geometry));
  const cells = program.cells.map((cell) =>
    cell.kind === 'input' && cell.entry.kind === 'number' && cell.entry.unit
      ? { ...cell, entry: { ...cell.entry, unit: { ...cell.entry.unit, text: 'cubit' } } }
      : cell,
  );
  const report = await recheck({ ...program, cells }, values);
  expect(report.notRechecked[0]).toEqual({
    id: 's.D',
    reason: 'the factor of its unit cubit is not in the independent table',
    values: 1,
  });
  expect(report).toMatchObject({ agree: 2, findings: [] });
});

test('texts are compared without case and outer spaces', async () => {
  const { program, values } = computed(
    bookOf({
      soil: '" Clay"',
      same: '=soil = "CLAY "',
      less: '=soil < "sand"',
      pick: '=IF(same; "Straße"; "")',
    }),
  );
  expect(await recheck(program, values)).toMatchObject({ agree: 4, findings: [] });
  const { findings } = await recheck(program, instead(values, { 's.pick': 'clay' }));
  expect(findings.map(({ message }) => message)).toEqual([
    's.pick: the book has "clay", the recheck "strasse"',
  ]);
});

test('a formula the second engine cannot read is a finding even where the engine has no value', async () => {
  const { program, values } = computed(bookOf({ x: '', y: '=ABS(x)' }));
  const abs = findFunction('ABS');
  if (!abs) throw new Error('no ABS');
  const cells = program.cells.map((cell) =>
    cell.kind === 'formula' && cell.tree.kind === 'call'
      ? { ...cell, tree: { ...cell.tree, fn: { ...abs, lower: () => 'NOSUCH()' } } }
      : cell,
  );
  const { findings } = await recheck({ ...program, cells }, values);
  expect(findings.map(({ message }) => message)).toEqual([
    's.y: the recheck could not read the formula it wrote itself (#NAME?)',
  ]);
});

test('the report says what agreement does not prove', () => {
  for (const word of ['formulas', 'checking of types', 'translation', 'entry is true'])
    expect(RECHECK_LIMITS).toContain(word);
});
