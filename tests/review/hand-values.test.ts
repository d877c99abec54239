import { describe, expect, test } from 'vitest';
import type { Subject } from '../../src/document/index.ts';
import {
  openBook,
  removeRow,
  setEntry,
  setFormula,
  setRowField,
  setTitle,
  stateRow,
  writeBook,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import {
  checkingOf,
  coverageOf,
  enterHandValue,
  judgeHandValue,
  markSeen,
  raiseComment,
  setTolerance,
} from '../../src/review/index.ts';
import { apply } from '../apply-edit.ts';
import { blockOf, bookOf, calc, check, choice, given } from '../make-book.ts';

const P = { sheet: 's', part: 'p' };

function notebookToCheck(): Notebook {
  return openNotebook(
    bookOf({
      s: [
        blockOf(
          'p',
          given('q', '20', 'kN/m^2'),
          given('A', '6', 'm^2'),
          given('El', 'El. -3.5 m'),
          choice('kind', 'sand', 'clay'),
          calc('Q', { formula: 'q * A', unit: 'kN' }),
          calc('top', 'El + 1 m'),
          calc('zero', { formula: '0.1 + 0.2 - 0.3', unit: '-' }),
          calc('share', { formula: 'A / 8 (m^2)', unit: '%' }),
          check('ok', 'Q <= 150 kN'),
          check('none', 'Q <= -1 kN'),
          calc('isSand', 'kind = "sand"'),
        ),
      ],
    }),
  );
}

function judged(notebook: Notebook, name: string, entry: string, tolerance?: string) {
  const item = notebook.model.items.get(`s.${name}`);
  if (!item) throw new Error(name);
  return judgeHandValue(notebook, item, undefined, { entry, ...(tolerance !== undefined && { tolerance }) });
}

describe('a hand value beside its result', () => {
  // Q = 20 kN/m² · 6 m² = 120 kN; 1 kip = 4.4482216152605 kN (NIST SP 811, B.8).
  test.each([
    ['Q', '120', 'agrees'],
    ['Q', '120 kN', 'agrees'],
    ['Q', '26.98 kip', 'agrees'],
    ['Q', '121.2', 'agrees'],
    ['Q', '121.3', 'differs'],
    ['Q', '118.8', 'agrees'],
    ['Q', '118.7', 'differs'],
    ['Q', '27.5 kip', 'differs'],
    ['Q', '-120', 'differs'],
    ['top', 'El. -2.5 m', 'agrees'],
    ['top', 'El. -2.48 m', 'differs'],
    ['zero', '0', 'agrees'],
    ['zero', '0.001', 'differs'],
    ['share', '75 %', 'agrees'],
    ['share', '75', 'agrees'],
    ['share', '0.75 -', 'agrees'],
    ['share', '74', 'differs'],
    ['ok', '0.8', 'agrees'],
    ['ok', '80 %', 'agrees'],
    ['ok', '0.79', 'differs'],
    ['ok', 'holds', 'agrees'],
    ['ok', 'fails', 'differs'],
  ])('%s by hand %s %s', (name, entry, kind) => {
    expect(judged(notebookToCheck(), name, entry)).toMatchObject({ kind });
  });

  test.each([
    ['121.3', '2 %', 'agrees'],
    ['122.5', '2 %', 'differs'],
    ['123', '3 kN', 'agrees'],
    ['123.1', '3 kN', 'differs'],
    ['120.6', '0.001', 'differs'],
    ['120.1', '0.001', 'agrees'],
  ])('Q by hand %s to %s %s', (entry, tolerance, kind) => {
    expect(judged(notebookToCheck(), 'Q', entry, tolerance)).toMatchObject({ kind, tolerance });
  });

  // 120 kN of 120.5 kN are 99.6 %, and of 119.5 kN 100.4 %: near enough for 1 %, and another verdict beyond the limit.
  test.each([
    ['Q <= 120.5 kN', '100 %', 'agrees'],
    ['Q <= 120.5 kN', '100.1 %', 'differs'],
    ['Q <= 119.5 kN', '100.9 %', 'agrees'],
    ['Q <= 119.5 kN', '100 %', 'differs'],
    ['Q <= 120 kN', '100 %', 'agrees'],
    ['Q <= 120 kN', '101 %', 'differs'],
  ])('%s by hand %s %s', (formula, entry, kind) => {
    const notebook = notebookToCheck();
    apply(notebook, setFormula({ ...P, row: 'ok' }, formula));
    expect(judged(notebook, 'ok', entry)).toMatchObject({ kind });
  });

  test('the tolerance of the review holds where a hand value has none', () => {
    const notebook = notebookToCheck();
    apply(notebook, setTolerance('0.1 %'));
    expect(judged(notebook, 'Q', '121')).toMatchObject({ kind: 'differs', tolerance: '0.1 %' });
    apply(notebook, setTolerance(undefined));
    expect(judged(notebook, 'Q', '121')).toMatchObject({ kind: 'agrees', tolerance: '1 %' });
  });

  test.each([
    ['Q', '120 kg', undefined, 'is a mass (kg)'],
    ['Q', '120 mm', undefined, 'is a length (mm)'],
    ['Q', 'about 120', undefined, 'is not a number'],
    ['Q', '120', '3 m', 'is no tolerance for this result'],
    ['Q', '120', '3', 'is no tolerance for this result'],
    ['Q', '120', '30 %', 'is no tolerance for this result'],
    ['Q', '120', '-1 %', 'is no tolerance for this result'],
    ['Q', '120', 'close', 'is no tolerance for this result'],
    ['ok', '120 kN', undefined, 'is a force (kN)'],
    ['ok', 'sand', undefined, 'is not a number'],
  ])('%s by hand %s to %s is refused', (name, entry, tolerance, words) => {
    const verdict = judged(notebookToCheck(), name, entry, tolerance);
    expect(verdict.kind === 'unread' && verdict.problem.message).toContain(words);
  });

  test.each([
    ['Q', '120', 'close', 'hand-tolerance-unfit'],
    ['none', '0.5', undefined, 'hand-value-of-verdict'],
    ['isSand', '5', undefined, 'hand-value-kind'],
  ])('why %s by hand %s to %s is refused has a code', (name, entry, tolerance, code) => {
    const verdict = judged(notebookToCheck(), name, entry, tolerance);
    expect(verdict).toMatchObject({ kind: 'unread', problem: { code } });
  });

  test('a result without a value is compared with nothing', () => {
    const notebook = notebookToCheck();
    apply(notebook, setEntry({ ...P, row: 'A' }, ''));
    expect(judged(notebook, 'Q', '120')).toMatchObject({ kind: 'no result' });
  });
});

const states = (notebook: Notebook): Readonly<Record<string, string>> =>
  Object.fromEntries(checkingOf(notebook).all.map(({ subject, state }) => [subject.item, state]));

const by = { by: 'KL' };
const of = (item: string): Subject => ({ item });

describe('what has been checked', () => {
  test('an edit of the title block, a name or a description makes nothing stale', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, setTitle('subject', 'another'));
    apply(notebook, setRowField({ ...P, row: 'Q' }, 'label', 'load'));
    apply(notebook, setRowField({ ...P, row: 'q' }, 'note', 'measured'));
    expect(states(notebook).Q).toBe('agrees');
  });

  test('a stale hand value tells what changed from what to what, and is fresh again where that is taken back', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, setEntry({ ...P, row: 'A' }, '7'));
    const [stale] = checkingOf(notebook).all.filter(({ state }) => state === 'stale');
    expect(stale).toMatchObject({ subject: { item: 'Q' }, verdict: { kind: 'differs' } });
    expect(stale?.changes).toMatchObject([{ item: 'A', was: '6 [m^2]', is: '7 [m^2]' }]);
    apply(notebook, setEntry({ ...P, row: 'A' }, '6'));
    expect(states(notebook).Q).toBe('agrees');
  });

  test('what was checked before and after an edit rests on two bases, the second of which holds only what differs', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, setEntry({ ...P, row: 'A' }, '7'));
    apply(notebook, enterHandValue(notebook, of('share'), { entry: '87.5 %', ...by }));
    expect(notebook.book.review.bases.map(({ lines }) => lines.length)).toEqual([11, 1]);
    expect(states(notebook)).toMatchObject({ Q: 'stale', share: 'agrees' });
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '140', ...by }));
    expect(notebook.book.review.bases).toHaveLength(2);
    expect(states(notebook)).toMatchObject({ Q: 'agrees', share: 'agrees' });
  });

  test('the same value in another unit, with its unit or with its column, leaves everything as it was', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    for (const entry of ['6 m^2', '60000 cm^2', '6']) {
      apply(notebook, setEntry({ ...P, row: 'A' }, entry));
      expect(states(notebook).Q, entry).toBe('agrees');
    }
  });

  test('a check that was compared and is switched off is stale, and says what did it', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('ok'), { entry: '80 %', ...by }));
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, setRowField({ ...P, row: 'ok' }, 'applies', 'kind = "clay"'));
    expect(states(notebook)).toMatchObject({ ok: 'stale', Q: 'agrees', none: 'not checked' });
    const stale = checkingOf(notebook).all.find(({ subject }) => subject.item === 'ok');
    expect(stale?.changes.map(({ item }) => item)).toContain('ok');
  });

  test('a value stated over a result that was checked does not hide what the checker came to', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, stateRow({ ...P, row: 'Q' }, { entry: '140', reason: 'load test' }));
    const stated = checkingOf(notebook).all.find(({ subject }) => subject.item === 'Q');
    expect(stated).toMatchObject({
      is: 'entry',
      state: 'stale',
      hand: { entry: '120' },
      verdict: { kind: 'differs' },
    });
  });

  test('an entry that was seen is stale once it, its unit or its source is another', () => {
    const mark = (notebook: Notebook, name: string): void => {
      const item = notebook.model.items.get(`s.${name}`);
      if (item) apply(notebook, markSeen(notebook, of(name), item, by));
    };
    const notebook = notebookToCheck();
    for (const name of ['q', 'A', 'kind', 'El']) mark(notebook, name);
    expect(states(notebook)).toMatchObject({ q: 'seen', A: 'seen', kind: 'seen', El: 'seen' });
    apply(notebook, setEntry({ ...P, row: 'q' }, '21'));
    apply(notebook, setRowField({ ...P, row: 'A' }, 'reference', 'drawing 7'));
    apply(notebook, setEntry({ ...P, row: 'kind' }, 'clay'));
    expect(states(notebook)).toMatchObject({ q: 'stale', A: 'stale', kind: 'stale', El: 'seen' });
    mark(notebook, 'A');
    expect(states(notebook).A).toBe('seen');
  });

  test('a stated value is an entry to be seen, and what rested on its formula is stale', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('ok'), { entry: '0.8', ...by }));
    apply(notebook, stateRow({ ...P, row: 'Q' }, { entry: '120', reason: 'load test' }));
    const stated = checkingOf(notebook).all.find(({ subject }) => subject.item === 'Q');
    expect(stated).toMatchObject({ is: 'entry', state: 'not checked' });
    expect(states(notebook).ok).toBe('stale');
  });

  test('what was said of a line that is gone is kept and told', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('share'), { entry: '75 %', ...by }));
    apply(notebook, raiseComment(notebook, of('share'), { ...by, text: 'Why 8 m²?' }));
    apply(notebook, removeRow({ ...P, row: 'share' }));
    const { gone, open } = checkingOf(notebook);
    expect(gone).toMatchObject([{ hand: { entry: '75 %' } }]);
    expect(open).toMatchObject([{ text: 'Why 8 m²?' }]);
  });

  test('is counted, and goes through a file', () => {
    const notebook = notebookToCheck();
    apply(notebook, enterHandValue(notebook, of('Q'), { entry: '120', ...by }));
    apply(notebook, enterHandValue(notebook, of('ok'), { entry: '0.5', ...by, note: 'by chart' }));
    const opened = openBook(writeBook(notebook.book));
    if (!opened.ok) throw new Error(opened.problems[0]?.message);
    const { all } = checkingOf(openNotebook(opened.value.book));
    expect(coverageOf(all)).toEqual({
      all: 11,
      idle: 0,
      'not checked': 9,
      agrees: 1,
      differs: 1,
      'not comparable': 0,
      seen: 0,
      stale: 0,
    });
  });
});
