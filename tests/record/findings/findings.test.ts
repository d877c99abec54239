import { describe, expect, test } from 'vitest';
import { nextFinding, placeOfProblem } from '../../../src/app/findings/finding-places.ts';
import type { Session } from '../../../src/app/session/session.ts';
import { type Book, blankBook, type Part, type Row, setFormula } from '../../../src/document/index.ts';
import { findingsOf } from '../../../src/record/findings/findings.ts';
import { computedSession } from '../../app/computed-session.ts';

const block = (id: string, rows: readonly Row[]): Part => ({ id, kind: 'rows', rows });
const calc = (id: string, formula: string, unit = ''): Row => ({ id, kind: 'calc', name: id, formula, unit });

const table: Part = {
  id: 't',
  kind: 'table',
  name: 'layers',
  length: 3,
  columns: [
    { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1, 'thick', 2]] },
    { id: 'twice', kind: 'calc', name: 'twice', formula: '2 * h', unit: 'm' },
    { id: 'wrong', kind: 'calc', name: 'wrong', formula: 'h + 1 s', unit: 'm' },
  ],
};

/** Four sheets, of which the last joins the group of the first: the list of sheets has it second. */
const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 'pile',
      title: 'Pile',
      group: 'new',
      parts: [
        block('p', [
          { id: 'w', kind: 'given', name: 'w', entry: '3 m', unit: 'm', range: { max: '2 m' } },
          calc('a', 'w + 1 s', 'm'),
          calc('b', 'a * 2', 'm'),
          calc('draft', '', 'm'),
          calc('later', 'draft * 2', 'm'),
          { id: 'c', kind: 'check', name: 'c', formula: 'w <= 2 m' },
          { id: 'd', kind: 'check', name: 'd', formula: 'w <= 4 m' },
          { id: 'e', kind: 'check', name: 'e', formula: 'b <= 4 m' },
        ]),
      ],
    },
    { key: 'soil', title: 'Soil', parts: [table] },
    { key: 'sound', title: 'Sound', parts: [block('s', [calc('x', '2 m', 'm')])] },
    { key: 'beam', title: 'Beam', group: 'new', parts: [block('q', [calc('y', 'nosuch')])] },
  ],
};

function sessionOn(opened: Book): Session {
  return computedSession(opened);
}

describe('what there is to look after', () => {
  const { notebook } = sessionOn(book);

  test('problems come in the order of the list of sheets, and what only waits is none', () => {
    const told = findingsOf(notebook).problems.map(({ cell, code }) => `${cell} ${code}`);
    expect(told).toEqual([
      'pile.a dimensions-differ',
      'beam.y name-unknown',
      'soil.layers.h row-fails',
      'soil.layers.wrong dimensions-differ',
    ]);
  });

  test('remarks are kept apart', () => {
    expect(findingsOf(notebook).remarks.map(({ cell }) => cell)).toEqual(['pile.w']);
  });

  test('a check without a value has no verdict', () => {
    const checks = findingsOf(notebook).checks.map(({ item, verdict }) => [item.id, verdict?.holds]);
    expect(checks).toEqual([
      ['pile.c', false],
      ['pile.d', true],
      ['pile.e', undefined],
    ]);
  });

  test('a problem of a row stands at that row, one of a calculated column at its formula', () => {
    const places = findingsOf(notebook).problems.map((found) => placeOfProblem(notebook, found));
    expect(places.slice(2)).toEqual([
      { sheet: 'soil', part: 't', item: 'r1', field: 'h' },
      { sheet: 'soil', part: 't', item: 'wrong', field: 'value' },
    ]);
  });
});

test('a blank row is told once, and what fails in a row that has something is told beside what it lacks', () => {
  const column = (name: string, cells: readonly (number | null)[], more: object) =>
    ({ id: name, kind: 'given', name, unit: 'm', chunks: [cells], ...more }) as const;
  const takeoff: Part = {
    id: 't',
    kind: 'table',
    name: 'takeoff',
    length: 3,
    columns: [
      column('a', [1, 2, null], {}),
      column('h', [1, 0, null], { default: '0 m' }),
      column('w', [3, null, null], {}),
      { id: 'r', kind: 'calc', name: 'r', formula: 'a * w', unit: 'm^2' },
      { id: 'q', kind: 'calc', name: 'q', formula: 'h / h', unit: '-' },
    ],
  };
  const { notebook } = sessionOn({ ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [takeoff] }] });
  const told = findingsOf(notebook).problems.map(
    ({ cell, code, data }) => `${cell} ${code} ${Number(data.row)}`,
  );
  expect(told).toEqual([
    's.takeoff.a row-incomplete 3',
    's.takeoff.w row-incomplete 2',
    's.takeoff.q row-fails 2',
  ]);
});

describe('the way from one to the next', () => {
  const stops = ['pile p a', 'pile p c', 'beam q y', 'soil t r1', 'soil t wrong'];

  /** Where steps lead, one after another. */
  function walk(session: Session, step: 1 | -1, steps: number): readonly string[] {
    return Array.from({ length: steps }, () => {
      const place = nextFinding(session, step);
      if (!place) return 'nowhere';
      session.goTo(place);
      return `${place.sheet} ${place.part} ${place.item}`;
    });
  }

  test('goes over problems and failing checks, and after the last to the first', () => {
    const session = sessionOn(book);
    expect(walk(session, 1, 6)).toEqual([...stops, stops[0]]);
    expect(walk(session, -1, 5)).toEqual([...stops].reverse());
  });

  test('goes on from where the person is', () => {
    const session = sessionOn(book);
    session.goTo({ sheet: 'pile', part: 'p', item: 'b', field: 'label' });
    expect(walk(session, 1, 1)).toEqual(['pile p c']);
    session.goTo({ sheet: 'pile', part: 'p', item: 'b', field: 'label' });
    expect(walk(session, -1, 1)).toEqual(['pile p a']);
    session.showSheet('soil');
    expect(walk(session, 1, 1)).toEqual(['soil t r1']);
    session.showOverview('problems');
    expect(walk(session, 1, 1)).toEqual(['pile p a']);
  });

  test('another cell of a line with a problem is the same place', () => {
    const session = sessionOn(book);
    session.goTo({ sheet: 'pile', part: 'p', item: 'a', field: 'name' });
    expect(walk(session, 1, 1)).toEqual(['pile p c']);
  });

  test('leads nowhere in a book with nothing to mend', () => {
    const sound = { ...book, sheets: book.sheets.filter(({ key }) => key === 'sound') };
    expect(walk(sessionOn(sound), 1, 1)).toEqual(['nowhere']);
  });

  test('forgets what was mended', () => {
    const session = sessionOn(book);
    session.apply(setFormula({ sheet: 'pile', part: 'p', row: 'a' }, 'w + 1 m'));
    expect(walk(session, 1, 1)).toEqual(['pile p c']);
  });
});
