import { expect, test } from 'vitest';
import { readEntry, readUnit, standardUnits, type Unit } from '../../src/units/index.ts';
import { expectClose, expectProblems, readFixtures, workOut } from './fixture.ts';

const lines = readFixtures('entries');

test('there are entries to read', () => {
  expect(lines.length).toBeGreaterThan(200);
});

test.each(lines)('$place $columns', ({ place, columns }) => {
  const [entry = '', rowText = '', expectation = ''] = columns;
  const result = readEntry(entry, standardUnits, unitOf(rowText));
  if (expectation.startsWith('! ')) {
    if (result.ok) throw new Error(`${place}: read as ${JSON.stringify(result.value)}`);
    expectProblems(result.problems, expectation.slice(2), place);
    return;
  }
  if (!result.ok)
    throw new Error(`${place}: ${result.problems.map((p) => `${p.code}: ${p.message}`).join('; ')}`);
  const value = result.value;
  const [, kind = '', rest = ''] = /^(\S+) ?(.*)$/.exec(expectation) ?? [];
  switch (kind) {
    case '=':
      if (value.kind !== 'number') throw new Error(`${place}: a ${value.kind}`);
      expect(Object.is(value.si, -0)).toBe(false);
      return expectClose(value.si, workOut(rest), place);
    case 'point': {
      if (value.kind !== 'point') throw new Error(`${place}: a ${value.kind}`);
      const [of = '', expression = ''] = rest.split(' = ');
      expect(value.of).toBe(of);
      expect(value.unit.point).toBe(of);
      return expectClose(value.si, workOut(expression), place);
    }
    case 'text':
      return expect(value).toEqual({ kind: 'text', text: rest });
    case 'truth':
      return expect(value).toEqual({ kind: 'truth', value: rest === 'true' });
    case 'missing':
      return expect(value).toEqual({ kind: 'missing' });
    default:
      throw new Error(`${place}: a case that expects nothing`);
  }
});

test.each([
  { says: 'a number of 201 digits', text: '1'.repeat(201), row: 'kN', longest: 200 },
  { says: 'a number where text would do', text: '1'.repeat(201), row: '', longest: 200 },
  { says: 'a text of 2001 letters', text: 'x'.repeat(2001), row: '', longest: 2000 },
  { says: 'a quoted text of 2001 letters', text: `"${'x'.repeat(1999)}"`, row: '', longest: 2000 },
])('$says is too long', ({ text, row, longest }) => {
  const result = readEntry(text, standardUnits, unitOf(row));
  if (result.ok) throw new Error('was read');
  expectProblems(
    result.problems,
    `entry-too-long@0-${text.length} longer than ${longest} characters`,
    'too long',
  );
});

test('a text of 2000 letters is not', () => {
  expect(readEntry('x'.repeat(2000), standardUnits)).toEqual({
    ok: true,
    value: { kind: 'text', text: 'x'.repeat(2000) },
  });
});

function unitOf(text: string): Unit | undefined {
  if (text === '') return undefined;
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${text}`);
  return unit.value;
}
