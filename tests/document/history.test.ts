import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  canonicalJson,
  emptyHistory,
  type History,
  hashBook,
  openBook,
  record,
  redo,
  setTitle,
  undo,
  writeBook,
} from '../../src/document/index.ts';
import { deepFreeze } from './deep-freeze.ts';
import { dice, stepByChance } from './random-edits.ts';
import { everyPart } from './read-book.ts';

const start = deepFreeze(everyPart());
const sessions = fc.array(fc.array(dice, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 12 });

interface Session {
  readonly book: Book;
  readonly history: History;
}

function replayed({ book, history }: Session, move: typeof undo): Session {
  const next = move(history);
  if (next === undefined) return { book, history };
  const applied = applyEdit(book, JSON.parse(JSON.stringify(next.edit)));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return replayed({ book: deepFreeze(applied.value.book), history: next.history }, move);
}

test('undoing everything gives the start, redoing everything the end, whatever the edits', () => {
  let made = 0;
  let refused = 0;
  fc.assert(
    fc.property(sessions, (session) => {
      let book = start;
      let history = emptyHistory;
      for (const tosses of session) {
        const edit = stepByChance(book, tosses);
        if (edit === undefined) continue;
        const applied = applyEdit(book, edit);
        if (!applied.ok) {
          refused++;
          continue;
        }
        made++;
        const back = applyEdit(deepFreeze(applied.value.book), applied.value.inverse);
        expect(back.ok && canonicalJson(back.value.book)).toBe(canonicalJson(book));
        expect(back.ok && back.value.book).toEqual(book);
        book = applied.value.book;
        history = record(history, edit, applied.value.inverse);
      }
      const opened = openBook(writeBook(book));
      expect(opened.ok ? opened.value.book : opened.problems).toEqual(book);
      const undone = replayed({ book, history }, undo);
      expect(undone.book).toEqual(start);
      expect(hashBook(undone.book)).toBe(hashBook(start));
      const redone = replayed(undone, redo);
      expect(redone.book).toEqual(book);
      expect(redone.history).toEqual(history);
    }),
    { seed: 3, numRuns: 300 },
  );
  // Most edits must count, and some must be refused, or the property would say little.
  expect([made > 1200, refused > 50]).toEqual([true, true]);
});

test('an edit after an undo leaves nothing to redo, and nothing to undo is nothing', () => {
  const edit = setTitle('job', '1');
  const once = record(emptyHistory, edit, setTitle('job', ''));
  const undone = undo(once);
  expect(undone?.edit).toEqual(setTitle('job', ''));
  expect(redo(undone?.history ?? emptyHistory)).toEqual({ edit, history: once });
  expect(redo(record(undone?.history ?? emptyHistory, edit, edit))).toBeUndefined();
  expect(undo(emptyHistory)).toBeUndefined();
});
