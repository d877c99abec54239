import { describe, expect, test } from 'vitest';
import {
  applyEdit,
  type Case,
  type Edit,
  openBook,
  type SigningRole,
  setEntry,
  setRowField,
  setSettings,
  stateRow,
  writeBook,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { findingsOf, sinceSignature } from '../../src/record/index.ts';
import {
  bookOfRevision,
  enterHandValue,
  issueRevision,
  openAtSigning,
  putCaseEdit,
  raiseComment,
  type SecondEngine,
  signaturesOf,
  signOff,
  takeCaseBackEdit,
  withdrawSignature,
} from '../../src/review/index.ts';
import { apply } from '../apply-edit.ts';
import { blockOf, bookOf, calc, calcColumn, check, given, numbers, tableOf } from '../make-book.ts';

const P = { sheet: 's', part: 'p' };
const by = { by: 'KL', date: '2026-03-01' };
const agreeing: SecondEngine = { differing: 0 };

function loads(): Notebook {
  return openNotebook(
    bookOf({
      s: [
        blockOf(
          'p',
          given('q', '20', 'kN/m^2'),
          given('A', '6', 'm^2'),
          calc('Q', { formula: 'q * A', unit: 'kN' }),
          check('ok', 'Q <= 150 kN'),
        ),
      ],
    }),
  );
}

function sign(notebook: Notebook, role: SigningRole, reason?: string): void {
  const edit = signOff(notebook, { role, ...by }, openAtSigning(notebook, agreeing, 'prepared'), reason);
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  apply(notebook, edit.value);
}

describe('what stands against a signature', () => {
  test('what is not checked, of who signs as having checked it', () => {
    expect(openAtSigning(loads(), agreeing, 'checked')).toEqual(['4 of 4 results and entries not checked']);
  });

  test('nothing, of a sound book', () => {
    expect(openAtSigning(loads(), agreeing, 'prepared')).toEqual([]);
  });

  test.each<readonly [what: string, edit: (notebook: Notebook) => Edit, words: readonly string[]]>([
    ['a problem', () => setEntry({ ...P, row: 'A' }, 'six'), ['1 problem']],
    ['a check that fails', () => setEntry({ ...P, row: 'A' }, '8'), ['1 check that fails']],
    [
      'a hand value that differs',
      (notebook) => enterHandValue(notebook, { item: 'Q' }, { entry: '110', ...by }),
      ['1 hand value that differs'],
    ],
    [
      'a hand value of another kind',
      (notebook) => enterHandValue(notebook, { item: 'Q' }, { entry: '120 m', ...by }),
      ['1 hand value that cannot be compared'],
    ],
    [
      'a comment',
      (notebook) => raiseComment(notebook, undefined, { ...by, text: 'Which drawing?' }),
      ['1 open comment'],
    ],
    [
      'a stated value without a reason',
      () => stateRow({ ...P, row: 'Q' }, { entry: '118', reason: '' }),
      ['1 stated value without a reason'],
    ],
  ])('%s', (_, edit, words) => {
    const notebook = loads();
    apply(notebook, edit(notebook));
    expect(openAtSigning(notebook, agreeing, 'prepared')).toEqual(expect.arrayContaining([...words]));
  });

  test('what the second engine finds otherwise, and that it was not asked', () => {
    expect(openAtSigning(loads(), { differing: 2 }, 'prepared')).toEqual([
      '2 values that the second engine finds otherwise',
    ]);
    expect(openAtSigning(loads(), undefined, 'prepared')).toEqual(['no word of the second engine yet']);
  });
});

describe('the cases of templates against a signature', () => {
  test('those that no longer agree, and those that did not before the formulas changed', () => {
    const open = (failing: number, failedBefore: number): readonly string[] =>
      openAtSigning(loads(), agreeing, 'prepared', { failing, failedBefore });
    expect(open(0, 0)).toEqual([]);
    expect(open(1, 0)).toEqual(['1 case of a template that no longer agrees']);
    expect(open(0, 2)).toEqual([
      '2 cases of templates that did not agree, not run again since the formulas changed',
    ]);
  });

  test('one whose inputs stand on the sheets, until they are taken back', () => {
    const notebook = loads();
    const { book } = notebook;
    const entered = applyEdit(book, setEntry({ ...P, row: 'A' }, '5'));
    if (!entered.ok) throw new Error('not entered');
    const example: Case = { id: 'E1', title: 'A deck', kind: 'memory', source: 'from memory', expect: [] };
    apply(notebook, putCaseEdit(book, entered.value.book, 'deck', example));
    expect(openAtSigning(notebook, agreeing, 'prepared')).toEqual([
      'the inputs of “A deck”, a case of a template, in place of the book’s own',
    ]);
    const back = takeCaseBackEdit(notebook.book);
    if (!back) throw new Error('nothing to take back');
    apply(notebook, back);
    expect(openAtSigning(notebook, agreeing, 'prepared')).toEqual([]);
  });
});

test('a book with something open is signed with a reason only, which stays with the signature', () => {
  const notebook = loads();
  apply(notebook, setEntry({ ...P, row: 'A' }, '8'));
  const open = openAtSigning(notebook, agreeing, 'prepared');
  expect(signOff(notebook, { role: 'checked', ...by }, open)).toMatchObject({
    ok: false,
    problems: [{ code: 'signed-without-reason' }],
  });
  sign(notebook, 'checked', 'load test to follow');
  expect(signaturesOf(notebook)).toMatchObject([
    { holds: true, signature: { despite: { reason: 'load test to follow', open: ['1 check that fails'] } } },
  ]);
});

test('a signature holds under what the checker says, and no more once anything else is edited', () => {
  const notebook = loads();
  sign(notebook, 'prepared');
  apply(notebook, enterHandValue(notebook, { item: 'Q' }, { entry: '120', ...by }));
  sign(notebook, 'checked', 'the rest by another');
  expect(signaturesOf(notebook)).toMatchObject([
    { holds: true, signature: { role: 'checked' } },
    { holds: true, signature: { role: 'prepared' } },
  ]);
  apply(notebook, setEntry({ ...P, row: 'A' }, '7'));
  expect(signaturesOf(notebook)).toMatchObject([
    { holds: false, changes: [{ item: 'A', was: '6 [m^2]', is: '7 [m^2]' }] },
    { holds: false, changes: [{ item: 'A' }] },
  ]);
  apply(notebook, setEntry({ ...P, row: 'A' }, '6'));
  expect(signaturesOf(notebook).map(({ holds }) => holds)).toEqual([true, true]);
  apply(notebook, setRowField({ ...P, row: 'A' }, 'label', 'loaded area'));
  expect(signaturesOf(notebook)).toMatchObject([
    { holds: false, changes: [] },
    { holds: false, changes: [] },
  ]);
});

test('units of the book that are others are no mere words', () => {
  const notebook = loads();
  sign(notebook, 'prepared');
  apply(notebook, setSettings('units', [{ symbol: 'bay', definition: '9 m' }]));
  expect(signaturesOf(notebook)).toMatchObject([
    { holds: false, changes: [{ item: '', was: 'money in USD', is: 'money in USD; bay = 9 m' }] },
  ]);
});

test('what changed since a signature is not told where the state it was put under is not kept', () => {
  const notebook = loads();
  sign(notebook, 'prepared');
  apply(notebook, { label: 'lose it', patches: [{ kind: 'remove', at: ['review', 'bases', 'b1'] }] });
  apply(notebook, setEntry({ ...P, row: 'A' }, '7'));
  const [standing] = signaturesOf(notebook);
  expect(standing).toMatchObject({ holds: false, changes: undefined });
  expect(standing && sinceSignature(notebook, standing, 5)).toEqual([
    'what has changed cannot be told: how the book stood is not kept',
  ]);
});

test('a signature that is withdrawn stays to be seen, and holds for nothing', () => {
  const notebook = loads();
  sign(notebook, 'prepared');
  const [signature] = notebook.book.review.signOffs;
  if (signature) apply(notebook, withdrawSignature(signature, { by: 'MN', date: '2026-03-02' }));
  const [standing] = signaturesOf(notebook);
  expect(standing).toMatchObject({ holds: false, signature: { by: 'KL' } });
  expect(standing && sinceSignature(notebook, standing, 5)).toEqual(['withdrawn by MN, 2026-03-02']);
});

test('a revision keeps the whole book as it was issued, through edits and a file', () => {
  const notebook = loads();
  const issued = notebook.book;
  apply(notebook, enterHandValue(notebook, { item: 'Q' }, { entry: '120', ...by }));
  apply(notebook, issueRevision(notebook, { label: 'A', ...by, note: 'for comment' }));
  apply(notebook, setEntry({ ...P, row: 'A' }, '7'));
  const opened = openBook(writeBook(notebook.book));
  if (!opened.ok) throw new Error(opened.problems[0]?.message);
  const [revision] = opened.value.book.review.revisions;
  expect(revision && bookOfRevision(revision)).toEqual(issued);
  expect(revision && bookOfRevision({ ...revision, book: revision.book.replace('"6"', '"9"') })).toBe(
    undefined,
  );
});

test('a row in which nothing is entered yet is one problem at signing, as in the list of problems', () => {
  const blank = numbers('x', 'm', [1, null]);
  const notebook = openNotebook(
    bookOf({
      s: [
        tableOf('t', 2, blank, calcColumn('y', { formula: 'x * 2', unit: 'm' }), calcColumn('z', 'x / 2 m')),
        blockOf('p', calc('total', { formula: 'SUM(t.y)', unit: 'm' }), check('ok', 'total <= 10 m')),
      ],
    }),
  );
  const listed = findingsOf(notebook).problems.length;
  expect(listed).toBe(1);
  expect(openAtSigning(notebook, agreeing, 'prepared')).toContain('1 problem');
});
