import { describe, expect, test } from 'vitest';
import type { Session } from '../../../../src/app/session/session.ts';
import { lineBody } from '../../../../src/app/sheet/line/line-body.ts';
import { type Book, blankBook, type Row } from '../../../../src/document/index.ts';
import { namesIn } from '../../../../src/language/index.ts';
import { workFormula } from '../../../../src/record/numbers/worked-formula.ts';
import { comparedSides } from '../../../../src/record/values/compared-sides.ts';
import type { UnitsView } from '../../../../src/record/values/units-view.ts';
import { sessionOn } from '../../editor/completion/sample-session.ts';

const given = (name: string, entry: string, unit: string): Row => ({
  id: name,
  kind: 'given',
  name,
  entry,
  unit,
});
const check = (name: string, formula: string, unit?: string): Row => ({
  id: name,
  kind: 'check',
  name,
  formula,
  ...(unit !== undefined && { unit }),
});
const calc = (name: string, formula: string, unit: string): Row => ({
  id: name,
  kind: 'calc',
  name,
  formula,
  unit,
});

const rows: readonly Row[] = [
  given('R', '1845 kN', 'kN'),
  given('R_lim', '404 kip', 'kip'),
  given('a', '3 ft', 'ft'),
  given('b', '6 in', 'in'),
  given('n', '2', '-'),
  { id: 'area', kind: 'given', name: 'area', entry: '', unit: 'sf', optional: true },
  check('plain', 'R <= R_lim'),
  check('turned', 'R_lim >= R'),
  check('computed', '0.9 * R_lim >= R * n'),
  check('stated', 'R <= R_lim', 'MN'),
  check('literal', 'n * R <= 500 kip'),
  check('balance', 'ABS(R / 3 + R / 3 + R / 3 - R + 1e-12 kN) <= R'),
  check('little', '0.001 N <= R'),
  calc('h', 'a + b', 'm'),
  calc('A', 'a * b', 'm^2'),
  calc('most', 'IF(n > 1; a - b; a)', 'in'),
];
const book: Book = {
  ...blankBook(),
  settings: { ...blankBook().settings, system: 'SI' },
  sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }] }],
};

function item(session: Session, name: string) {
  const found = session.notebook.model.items.get(`s.${name}`);
  if (found?.kind !== 'formula') throw new Error(`${name} has no formula`);
  return found;
}

const inOneUnit = { plain: 'kN', turned: 'kN', stated: 'MN', literal: 'kip' } as const;

describe('both sides of a check are read in one unit', () => {
  test.each(Object.entries(inOneUnit))('%s: %s', (name, unit) => {
    const { demand, capacity } = sessionOn(book).notebook.verdict(`s.${name}`) ?? {};
    expect([demand?.unit.text, capacity?.unit.text]).toEqual([unit, unit]);
  });

  test('as the line shows them, the way round they are written', () => {
    const session = sessionOn(book);
    const sides = (name: string) => comparedSides(session.notebook, item(session, name), 'written');
    expect(sides('plain')).toEqual({ left: '1845\u00a0kN', sign: '≤', right: '1797\u00a0kN' });
    expect(sides('turned')).toEqual({ left: '1797\u00a0kN', sign: '≥', right: '1845\u00a0kN' });
    expect(sides('computed')).toEqual({ left: '1617\u00a0kN', sign: '≥', right: '3690\u00a0kN' });
    // What rounding left of a balance, and a demand that is small but there.
    expect(sides('balance')).toEqual({ left: '0\u00a0kN', sign: '≤', right: '1845\u00a0kN' });
    expect(sides('little')?.left).toBe('0.001\u00a0N');
  });
});

/** What is put in for the names of a line's formula, in the order written. */
function putIn(line: string) {
  const session = sessionOn(book);
  const found = item(session, line);
  const { syntax, shown } = workFormula(session, { item: found, checked: found.checked });
  return namesIn(syntax).map((name) => `${shown(name)?.number} ${shown(name)?.unit}`);
}

describe('the numbers put in', () => {
  test.each([
    ['plain', ['1845 kN', '1797.1 kN']],
    ['stated', ['1.845 MN', '1.7971 MN']],
    ['h', ['0.9144 m', '0.1524 m']],
    ['most', ['36 in', '6 in']],
  ] as const)(
    'of %s, which are compared or added as they stand, have the unit of the line',
    (line, shown) => {
      expect(putIn(line)).toEqual(shown);
    },
  );

  test.each([
    ['computed', ['404 kip', '1845 kN', '2 ']],
    ['A', ['3 ft', '6 in']],
  ] as const)('of %s are factors, and have the units they were entered in', (line, shown) => {
    expect(putIn(line)).toEqual(shown);
  });
});

test.each([
  ['written', 'sf'],
  ['SI', 'm²'],
  ['US', 'sf'],
] as const)('a blank given has the unit of the view %s', (view: UnitsView, unit) => {
  const session = sessionOn(book);
  session.setUnits(view);
  const source = rows.find(({ name }) => name === 'area');
  const blank = session.notebook.model.items.get('s.area');
  if (!source) throw new Error('the line is gone');
  const context = {
    session,
    sheet: 's',
    source,
    item: blank,
    full: false,
    numbers: false,
    paper: undefined,
    room: { beside: 10, below: 20, numbers: 1, result: 6, across: 500 },
  };
  expect(lineBody(context).unit).toBe(unit);
});
