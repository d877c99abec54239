import { applyEdit, type Book, type Edit } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { changeList } from '../../../src/record/index.ts';
import { type BookComparison, compareBooks, type Difference } from '../../../src/review/index.ts';

/** The comparison of two books. */
export function compared(before: Book, after: Book): BookComparison {
  return compareBooks(openNotebook(before), openNotebook(after));
}

/** A book after some edits, each of which must apply. */
export function edited(book: Book, ...edits: readonly Edit[]): Book {
  return edits.reduce((now, edit) => {
    const applied = applyEdit(now, edit);
    if (!applied.ok) throw new Error(applied.problems[0]?.message);
    return applied.value.book;
  }, book);
}

/** What a person changed and what followed, as the list of changes has it, without the headings of sheets. */
export function listed(before: Book, after: Book): readonly string[] {
  return changeList(compared(before, after), { before: before.sheets, after: after.sheets }).map((line) =>
    line.trim(),
  );
}

/** What followed of one line or column. */
export function followedOf({ differences }: BookComparison, id: string): readonly Difference[] {
  return differences.filter((one) => 'causes' in one && (one.subject.after ?? one.subject.before)?.id === id);
}

/** The ids that a difference names as its causes, each with what was changed. */
export function causesOf(one: Difference | undefined): readonly string[] {
  if (!one || !('causes' in one)) throw new Error('this has no causes');
  return one.causes.list.map(
    ({ subject, by }) => `${subject?.after?.id ?? subject?.before?.id ?? 'book'} ${by.join()}`,
  );
}
