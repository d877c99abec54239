import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { cellContent } from '../../../src/app/editing/cells/cell-content.ts';
import type { Session } from '../../../src/app/session/session.ts';
import type { Drafts } from '../../../src/app/storage/drafts.ts';
import type { EditInHand } from '../../../src/app/view-model/edit-in-hand.ts';
import { type CellPlace, titlePlace } from '../../../src/app/view-model/place.ts';
import {
  type Book,
  type Edit,
  insertRow,
  insertSheet,
  moveRow,
  removeRow,
  removeSheet,
  setEntry,
  setSheetField,
} from '../../../src/document/index.ts';
import { computedSession } from '../computed-session.ts';
import { at, smallBook } from '../small-book.ts';

const second = {
  key: 'other',
  title: 'Other',
  parts: [{ id: 'o1', kind: 'prose', role: 'text', text: 'o' }],
} as const;

/** Storage of one tab, as it is after each letter. */
function tab(): Drafts & { readonly noted: Map<string, EditInHand> } {
  const noted = new Map<string, EditInHand>();
  return {
    noted,
    read: (book) => noted.get(book),
    write: (book, draft) => {
      if (draft) noted.set(book, structuredClone(draft));
      else noted.delete(book);
      return true;
    },
  };
}

function open(book: Book = smallBook(), drafts: Drafts = tab()): Session {
  const session = computedSession(book, 'b', drafts);
  return session;
}

let session: Session;
const L = at('p2', 'r1', 'value');
const holds = (place: CellPlace): string => cellContent(session.notebook.book, place).text;

beforeEach(() => {
  session = open();
  session.apply(insertSheet(1, second));
  session.goTo(L);
});

/** Rows of the table come and go. */
const splice = (sheet: string, from: number, remove: number, insert: number): Edit => ({
  label: 'rows',
  patches: [{ kind: 'splice', at: ['sheets', sheet, 'parts', 'p3'], from, remove, insert, cells: {} }],
});

/** Every way to turn away that enters what is in hand, as the page calls it. */
const leaving: Readonly<Record<string, (to: Session) => unknown>> = {
  'another cell': (to) => to.goTo(at('p2', 'r2', 'value')),
  'a cell of a table': (to) => to.goTo(at('p3', 'r0', 'k2')),
  'a heading': (to) => to.goTo(at('p3', '', 'title')),
  prose: (to) => to.goTo({ sheet: 'other', part: 'o1', item: '', field: 'text' }),
  'a jump from the panel': (to) => to.jumpTo(at('p4', 'r5', 'value')),
  'another sheet': (to) => to.showSheet('other'),
  'the overview': (to) => to.showOverview('checks'),
  'other units': (to) => to.setUnits('US'),
  'the title block': (to) => to.beginEdit(titlePlace('job'), 'J-1'),
  'another edit': (to) => to.beginEdit(at('p2', 'r2', 'value')),
  'whatever has the focus': (to) => to.endEdit('elsewhere'),
  'a key of the field': (to) => to.endEdit('enter'),
  'saving or printing': (to) => to.endEdit('file'),
  'the start page': (to) => to.endEdit('close'),
};

describe.each(Object.entries(leaving))('what is typed and left for %s', (_, leave) => {
  test.each([
    ['a value', L, '48', '48'],
    ['a cell of a table', at('p3', 'r1', 'k2'), '7', '7'],
    ['a formula', at('p2', 'r3', 'value'), 'q * L', 'q * L'],
    ['a description', at('p2', 'r1', 'label'), 'span', 'span'],
    ['a source', at('p2', 'r1', 'reference'), 'memo', 'memo'],
    ['a unit', at('p2', 'r1', 'unit'), 'ft', 'ft'],
    ['a symbol', at('p2', 'r1', 'name'), 'span', 'span'],
    ['a paragraph', at('p1', '', 'text'), 'Two\nlines', 'Two\nlines'],
    ['a title', at('p2', '', 'title'), 'Girder', 'Girder'],
    ['a heading of a column', at('p3', 'head', 'k1'), 'letter', 'letter'],
  ])('%s is in the book', (_what, place, text, entered) => {
    session.goTo(place);
    session.beginEdit(place);
    session.changeDraft(text);
    leave(session);
    expect(holds(place)).toBe(entered);
  });

  test('a name that cannot stand stays in hand with the reason, and the person stays', () => {
    const place = at('p2', 'r1', 'name');
    session.goTo(place);
    session.beginEdit(place);
    session.changeDraft('2 bad');
    leave(session);
    expect(session.hand).toMatchObject({ place, draft: '2 bad' });
    expect(session.hand?.remarks?.join(' ')).toMatch(/2 bad.*Escape/s);
    expect([session.place, session.sheet, session.units]).toEqual([place, 'beam', 'written']);
    session.endEdit('escape');
    expect([session.hand, holds(place)]).toEqual([undefined, 'L']);
  });

  test('an option is in the book, by its value or its words, and what names none stays in hand', () => {
    const options = [{ value: 'clay' }, { value: 'sand', label: 'Sand, dense' }];
    const choice = { id: 'c1', kind: 'choice', name: 'soil', entry: 'clay', options } as const;
    session.apply(insertRow({ sheet: 'beam', part: 'p2' }, 1, choice));
    const place = at('p2', 'c1', 'value');
    for (const [text, entered] of [
      ['Clay', 'clay'],
      ['sand, dense', 'sand'],
    ] as const) {
      session.goTo(place);
      session.beginEdit(place);
      session.changeDraft(text);
      leave(session);
      expect([session.hand?.place.item === 'c1', holds(place)]).toEqual([false, entered]);
    }
    session.showSheet('beam');
    session.goTo(place);
    session.beginEdit(place);
    session.changeDraft('sandy');
    leave(session);
    expect([session.hand?.draft, holds(place)]).toEqual(['sandy', 'sand']);
    expect(session.hand?.remarks?.join(' ')).toMatch(/“sandy” is not one of the choices.*Escape/s);
  });

  test('a unit that is none stays in hand', () => {
    const place = at('p2', 'r1', 'unit');
    session.goTo(place);
    session.beginEdit(place);
    session.changeDraft('62');
    leave(session);
    expect(session.hand?.draft).toBe('62');
    expect(holds(place)).toBe('m');
  });
});

test.each([
  ['9000 m', '“9000 m” is a length (m), and this line takes a moment'],
  ['2026-11-28', '“2026-11-28” is a date'],
])('“%s” typed over a formula is of another kind, and stays in hand', (text, said) => {
  const place = at('p2', 'r3', 'value');
  session.beginEdit(place, text.charAt(0));
  session.changeDraft(text);
  expect(session.endEdit('enter')).toBe(false);
  expect(session.hand?.remarks?.join(' ')).toContain(said);
  expect(holds(place)).toBe('q * L^2 / 8');
});

test('a value put in place of a formula on purpose stands there: behind an equals sign, or in the opened formula', () => {
  const place = at('p2', 'r3', 'value');
  session.beginEdit(place, '=');
  session.changeDraft('=9000 kN*m');
  expect([session.endEdit('enter'), holds(place)]).toEqual([true, '9000 kN*m']);
  session.beginEdit(place);
  session.changeDraft('8000 (kN*m)');
  expect([session.endEdit('enter'), holds(place)]).toEqual([true, '8000 (kN*m)']);
});

test('the window may lose the keys and get them back', () => {
  session.beginEdit(L, '4');
  session.changeDraft('48');
  expect(session.endEdit('window')).toBe(false);
  expect([session.hand?.draft, holds(L)]).toEqual(['48', '4 m']);
});

test('Escape alone lets go of it', () => {
  session.beginEdit(L, '48');
  expect(session.endEdit('escape')).toBe(true);
  expect([session.hand, holds(L), session.canUndo]).toEqual([undefined, '4 m', true]);
  session.undo();
  expect(session.canUndo).toBe(false);
});

test('undo takes back what was being typed, and redo gives it again', () => {
  session.beginEdit(L, '48');
  session.undo();
  expect(holds(L)).toBe('4 m');
  session.redo();
  expect(holds(L)).toBe('48');
  expect(session.place).toEqual(L);
});

test('undo takes back what was typed first of all, where there is nothing else to undo', () => {
  session = open(session.notebook.book);
  expect(session.canUndo).toBe(false);
  session.beginEdit(L, '48');
  expect(session.canUndo).toBe(true);
  expect(session.undo()).toBe(true);
  expect([holds(L), session.hand, session.canUndo]).toEqual(['4 m', undefined, false]);
});

test('a number is meant in the units that were shown when it was typed', () => {
  session.setUnits('US');
  session.beginEdit(L, '48');
  session.setUnits('written');
  expect(holds(L)).toBe('48 ft');
});

test('an edit that changes nothing leaves no step behind', () => {
  session.beginEdit(L);
  session.changeDraft('4 m');
  session.endEdit('enter');
  session.undo();
  expect(session.canUndo).toBe(false);
});

describe('a page that goes away', () => {
  const again = (drafts: Drafts, book = session.notebook.book): void => {
    session = open(book, drafts);
  };

  test('has what was typed again where it was typed, in the units it was meant in', () => {
    const drafts = tab();
    again(drafts);
    session.setUnits('US');
    session.goTo(L);
    session.beginEdit(L, '4');
    session.changeDraft('48', { from: 1, to: 2 });
    again(drafts);
    expect(session.hand).toMatchObject({ place: L, draft: '48', selected: { from: 1, to: 2 } });
    expect([session.place, session.units]).toEqual([L, 'US']);
    session.endEdit('enter');
    expect(holds(L)).toBe('48 ft');
    expect(drafts.noted.size).toBe(0);
  });

  test('says so where the place holds something else by now', () => {
    const drafts = tab();
    again(drafts);
    session.beginEdit(L, '48');
    const other = open(session.notebook.book);
    other.apply(setEntry({ sheet: 'beam', part: 'p2', row: 'r1' }, '5 m'));
    again(drafts, other.notebook.book);
    expect(session.hand?.draft).toBe('48');
    expect(session.hand?.remarks?.join()).toContain('“5 m”');
  });

  test('keeps what was typed where its place is gone, until it is taken', () => {
    const drafts = tab();
    again(drafts);
    session.beginEdit(L, '48');
    const other = open(session.notebook.book);
    other.apply(removeRow({ sheet: 'beam', part: 'p2', row: 'r1' }));
    again(drafts, other.notebook.book);
    expect([session.hand, session.strayed?.draft]).toEqual([undefined, '48']);
    again(drafts, other.notebook.book);
    expect(session.strayed?.draft).toBe('48');
    session.forgetStrayed();
    expect(drafts.noted.size).toBe(0);
  });

  test('tells where it cannot be noted', () => {
    again({ read: () => undefined, write: () => false });
    session.beginEdit(L);
    expect(session.handNoted).toBe(true);
    session.changeDraft('48');
    expect(session.handNoted).toBe(false);
  });
});

describe('edits made meanwhile', () => {
  test('a line, a sheet and a row of a table are followed', () => {
    session.beginEdit(L, '48');
    session.apply(moveRow({ sheet: 'beam', part: 'p2', row: 'r1' }, 2));
    session.apply(setSheetField('beam', 'key', 'girder'));
    session.endEdit('enter');
    expect(holds({ ...L, sheet: 'girder' })).toBe('48');
    const cell = { ...at('p3', 'r1', 'k2'), sheet: 'girder' };
    session.beginEdit(cell, '9');
    session.apply(splice('girder', 0, 0, 2));
    session.apply(splice('girder', 1, 1, 0));
    session.endEdit('enter');
    expect(['r0', 'r1', 'r2', 'r3'].map((item) => holds({ ...cell, item }))).toEqual(['', '1', '9', '']);
  });

  test('what had its place taken away waits, and nothing else is written', () => {
    session.beginEdit(at('p3', 'r1', 'k2'), '9');
    session.apply(splice('beam', 1, 1, 0));
    expect([session.hand, session.strayed?.draft]).toEqual([undefined, '9']);
    expect(['r0', 'r1'].map((item) => holds(at('p3', item, 'k2')))).toEqual(['1', '']);
    session.forgetStrayed();
    session.beginEdit(L, '48');
    session.apply(removeSheet('beam'));
    expect(session.strayed?.draft).toBe('48');
  });

  test('a change of the same cell is told before it is written over', () => {
    session.beginEdit(L, '48');
    session.apply(setEntry({ sheet: 'beam', part: 'p2', row: 'r1' }, '5 m'));
    expect(session.hand?.remarks?.join()).toContain('“5 m”');
    session.endEdit('enter');
    expect(holds(L)).toBe('48');
  });
});

// What was typed is, after anything but Escape, in the book (or in its steps of redo), in hand, or waiting beside it.
test('no draft is dropped, whatever follows it', () => {
  const places: readonly CellPlace[] = [
    L,
    at('p2', 'r1', 'name'),
    at('p2', 'r2', 'unit'),
    at('p2', 'r3', 'value'),
    at('p2', 'r2', 'label'),
    at('p3', 'r1', 'k2'),
    at('p3', 'r2', 'k1'),
    at('p1', '', 'text'),
    at('p3', '', 'title'),
    titlePlace('job'),
  ];
  const others: Readonly<Record<string, (to: Session) => unknown>> = {
    ...leaving,
    'the window': (to) => to.endEdit('window'),
    undo: (to) => to.undo(),
    redo: (to) => to.redo(),
    'a line removed': (to) => to.apply(removeRow({ sheet: 'beam', part: 'p2', row: 'r1' })),
    'a row above': (to) => to.apply(splice('beam', 0, 0, 1)),
    'its row removed': (to) => to.apply(splice('beam', 1, 1, 0)),
    back: (to) => to.goBack(),
    reload: () => undefined,
  };
  const seed = 20261128;
  let drafted = 0;
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          place: fc.constantFrom(...places),
          over: fc.boolean(),
          way: fc.constantFrom(...Object.keys(others)),
          after: fc.array(fc.constantFrom(...Object.keys(others)), { maxLength: 2 }),
        }),
        { minLength: 1, maxLength: 6 },
      ),
      (steps) => {
        let drafts = tab();
        let one = open(smallBook(), drafts);
        one.apply(insertSheet(1, second));
        const inBook = (text: string): boolean => JSON.stringify(one.notebook.book).includes(text);
        /** In the book now or after so many steps of undo and redo. */
        const inHistory = (text: string): boolean => {
          const copy = one;
          let steps = 0;
          while (copy.redo()) steps += 1;
          let found = inBook(text);
          let back = 0;
          while (!found && copy.undo()) {
            back += 1;
            found = inBook(text);
          }
          for (; back > 0; back -= 1) copy.redo();
          for (; steps > 0; steps -= 1) copy.undo();
          return found;
        };
        for (const [index, { place, over, way, after }] of steps.entries()) {
          // A text of its own that every kind of cell takes; a unit refuses it, and says so.
          const text = `z${index}q`;
          if (one.hand) one.endEdit('escape');
          one.forgetStrayed();
          if (!one.beginEdit(place, over ? 'z' : undefined)) continue;
          one.changeDraft(text);
          drafted += 1;
          let takenBack = false;
          for (const next of [way, ...after]) {
            if (next === 'reload') {
              const book = one.notebook.book;
              const noted = new Map(drafts.noted);
              drafts = tab();
              for (const [key, draft] of noted) drafts.noted.set(key, draft);
              one = open(book, drafts);
            } else others[next]?.(one);
            const waits = [one.hand?.draft, one.strayed?.draft].includes(text);
            if (waits) continue;
            // What undo took back is gone for good with the next edit, and with the page.
            if (takenBack) break;
            takenBack = next === 'undo';
            expect(inBook(text) || inHistory(text), `${text} after ${next}`).toBe(true);
          }
        }
      },
    ),
    { seed, numRuns: 400 },
  );
  console.log(`no draft is dropped: seed ${seed}, ${drafted} drafts`);
  expect(drafted).toBeGreaterThan(800);
});
