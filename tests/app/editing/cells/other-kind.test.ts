import { beforeEach, describe, expect, test } from 'vitest';
import { formulaServiceAt } from '../../../../src/app/editor/formula/formula-service.ts';
import { takeable } from '../../../../src/app/editor/notes/note.ts';
import { entryReader } from '../../../../src/app/editor/readers/entry-reader.ts';
import type { Session } from '../../../../src/app/session/session.ts';
import { type Book, blankBook, findSheet, type Row } from '../../../../src/document/index.ts';
import { sessionOn } from '../../editor/completion/sample-session.ts';

const rows: readonly Row[] = [
  { id: 'w', kind: 'given', name: 'w', label: 'width', entry: '3 m', unit: 'm' },
  {
    id: 'a',
    kind: 'given',
    name: 'A',
    label: 'area',
    entry: '5',
    unit: 'm^2',
    reference: 'drawing 7',
    note: 'of the strip',
    range: { max: '90' },
  },
  { id: 'k', kind: 'given', name: 'soil', entry: 'clay' },
  { id: 'n', kind: 'given', name: 'n', entry: '', unit: 'm' },
  { id: 'l', kind: 'given', name: 'n_max', entry: '', unit: 'm', range: { max: '9' } },
  { id: 'd', kind: 'calc', name: 'd', label: 'depth', formula: 'w * 2', unit: 'ft', note: 'kept' },
  { id: 'e', kind: 'calc', name: 'e', formula: '', unit: 'm' },
  { id: 's', kind: 'calc', name: 's', formula: 'w', unit: 'm', stated: { entry: '4', reason: 'measured' } },
  { id: 'u', kind: 'calc', name: 'u', formula: 'A / w + d', unit: 'm' },
];
const book: Book = {
  ...blankBook(),
  sheets: [{ key: 's', title: 'S', parts: [{ id: 'p', kind: 'rows', rows }] }],
};
const at = (item: string) => ({ sheet: 's', part: 'p', item, field: 'value' });

let session: Session;
beforeEach(() => {
  session = sessionOn(book);
});

const rowOf = (id: string): Row | undefined =>
  findSheet(session.notebook.book, 's')
    ?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows : []))
    .find((row) => row.id === id);

function type(item: string, draft: string): void {
  session.goTo(at(item));
  session.beginEdit(at(item));
  session.changeDraft(draft);
}

const noteOn = (item: string, draft: string) => entryReader(session, at(item)).note(draft);
const noteUnder = (item: string, draft: string) => {
  const service = formulaServiceAt(session, at(item));
  return service?.note(service.tryIt(draft), { caret: draft.length, listed: false });
};

describe('a formula typed on a given', () => {
  test.each([
    ['a', '2 m * w', /^make this line a calculated line: = 6\sm/],
    ['a', '= 2 m * w', /a calculated line.*= 6\sm/],
    ['a', 'w^2', /a calculated line.*= 9\sm/],
    ['a', 'MAX(w; 2 m) * 1 m', /= 3\sm/],
    ['a', '=12 * nothing', /a calculated line$/],
    ['k', 'w', /a calculated line: = 3\sm/],
    ['k', '2 * w', /a calculated line: = 6\sm/],
  ])('on %s, %s: the note offers to make the line a calculated one', (item, draft, words) => {
    expect(noteOn(item, draft)?.offer).toMatch(words);
  });

  test.each([
    ['a', '12'],
    ['a', '12 ft^2'],
    ['a', '-3'],
    ['a', '3/4 m'],
    ['a', '5 ton'],
    ['a', '10-12'],
    ['a', '2 m * wid'],
    ['a', 'clay'],
    ['a', '='],
    ['k', 'medium sand'],
    ['k', 'sand - loose'],
    ['k', '2 x 40 mm'],
  ])('on %s, %s is none, and nothing is offered', (item, draft) => {
    expect(noteOn(item, draft)?.offer).toBeUndefined();
  });

  test('the offer has the key before a formula is kept as a text, and after what mends a value', () => {
    const [first] = takeable(noteOn('k', '2 * w') ?? { kind: 'remark', text: '' });
    expect(first).toBe('offer');
    const taken = takeable(noteOn('a', '=2 * 3') ?? { kind: 'remark', text: '' });
    expect(taken).toEqual([expect.objectContaining({ insert: '6' }), 'offer']);
  });

  test('taken, it is one edit of the book, which undo takes back whole', () => {
    const before = session.notebook.book;
    type('a', '= 2 m * w');
    expect(session.endEdit('offer')).toBe(true);
    expect(rowOf('a')).toEqual({
      id: 'a',
      kind: 'calc',
      name: 'A',
      label: 'area',
      formula: '2 m * w',
      unit: 'm^2',
      range: { max: '90' },
      reference: 'drawing 7',
      note: 'of the strip',
    });
    // 6 m² over 3 m, and 6 m more.
    expect(session.notebook.result('s.u')).toMatchObject({ status: 'ok', value: { si: 8 } });
    session.undo();
    expect(session.notebook.book).toEqual(before);
    session.redo();
    expect(rowOf('a')?.kind).toBe('calc');
  });

  test('entered without the offer, the line stays a given and says what is wrong', () => {
    type('a', '2 m * w');
    session.endEdit('enter');
    expect(rowOf('a')).toMatchObject({ kind: 'given', entry: '2 m * w' });
    expect(session.notebook.result('s.A').status).toBe('problem');
  });

  test('a formula that would refer to its own line is offered, and says so once it stands there', () => {
    type('a', '=A * 2');
    expect(noteOn('a', '=A * 2')?.offer).toBe('make this line a calculated line');
    session.endEdit('offer');
    expect(session.notebook.problems().map(({ code }) => code)).toContain('loop');
  });
});

describe('a value typed on a calculated line', () => {
  test.each([
    ['d', '5 m', '5 m'],
    ['d', '12', '12'],
    ['d', '= 5 m', '5 m'],
  ])('on %s, %s: the note offers a given value', (item, draft, entry) => {
    expect(noteUnder(item, draft)?.offer).toBe('make this line a given value');
    type(item, draft);
    session.endEdit('offer');
    expect(rowOf(item)).toEqual({
      id: 'd',
      kind: 'given',
      name: 'd',
      label: 'depth',
      entry,
      unit: 'ft',
      note: 'kept',
    });
  });

  test.each(['w * 2', '5 kg', '2 * 3', '5 ton', '', 'w'])('“%s” is none, and nothing is offered', (draft) => {
    expect(noteUnder('d', draft)?.offer).toBeUndefined();
  });

  test('nothing is offered where a value is stated in place of the formula, which would be lost', () => {
    expect(noteUnder('s', '5 m')?.offer).toBeUndefined();
  });

  test('a bare number is meant in the unit beside it', () => {
    session.setUnits('SI');
    type('d', '2');
    session.endEdit('offer');
    expect(rowOf('d')).toMatchObject({ kind: 'given', entry: '2 m', unit: 'ft' });
    expect(session.notebook.result('s.d')).toMatchObject({ value: { si: 2 } });
  });

  test('a formula that is a value may stay as it is', () => {
    type('d', '5 m');
    session.endEdit('enter');
    expect(rowOf('d')).toMatchObject({ kind: 'calc', formula: '5 m' });
    expect(noteUnder('d', '5 m')?.offer).toBeDefined();
    type('d', '5 m');
    session.endEdit('offer');
    expect(rowOf('d')).toMatchObject({ kind: 'given', entry: '5 m' });
  });
});

describe('a blank line', () => {
  test.each([
    ['n', '2 * w', { kind: 'calc', formula: '2 * w' }],
    ['n', '=2 m', { kind: 'calc', formula: '2 m' }],
    ['n', '= w + nothing', { kind: 'calc', formula: 'w + nothing' }],
    ['n', '4 ft', { kind: 'given', entry: '4 ft' }],
    ['n', 'rubbish', { kind: 'given', entry: 'rubbish' }],
    ['e', '4 ft', { kind: 'given', entry: '4 ft' }],
    ['e', '4', { kind: 'given', entry: '4' }],
    ['e', '=4 ft', { kind: 'calc', formula: '4 ft' }],
    ['e', 'w * 2', { kind: 'calc', formula: 'w * 2' }],
    ['e', '4 kg', { kind: 'calc', formula: '4 kg' }],
    ['l', '2 * w', { kind: 'calc', formula: '2 * w' }],
  ])('%s becomes what “%s” makes of it', (item, draft, row) => {
    const before = session.notebook.book;
    type(item, draft);
    session.endEdit('elsewhere');
    expect(rowOf(item)).toMatchObject(row);
    session.undo();
    expect(session.notebook.book).toEqual(before);
  });

  test('says below the field what Enter makes of it', () => {
    expect(noteOn('n', '2 * w')).toMatchObject({
      kind: 'result',
      text: expect.stringMatching(/^= 6\sm/),
      hint: 'Enter makes this line a calculated line',
    });
    expect(noteOn('n', '2 * w')?.offer).toBeUndefined();
    expect(noteUnder('e', '4 ft')?.hint).toBe('Enter makes this line a given value');
    // The permitted range stays with the line.
    expect(noteOn('l', '2 * w')?.hint).toBe('Enter makes this line a calculated line');
  });
});
