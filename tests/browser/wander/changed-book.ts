import { type Book, idsOf, type Line, type Part, type Place, withPart, withRows } from './book.ts';
import { differences } from './differences.ts';
import type { Seen } from './seen.ts';
import { changedTo, type Outcome, type State } from './state.ts';

/** What is selected: the range, else the chosen cell. */
export function selectedOf({ selected, place }: Seen): readonly Place[] {
  return selected.length > 1 ? selected : place ? [place] : [];
}

/** The book of a state is another, and nothing is being typed. */
export function done(state: Pick<State, 'book' | 'past' | 'future'>, book: Book): Outcome {
  return { ...changedTo(state, book), editor: { kind: 'closed' } };
}

/**
 * The book without lines and parts that another has not. A heading put between the lines of a block parts it: those below
 * count to the block still.
 */
function without(book: Book, known: ReadonlySet<string>): Book {
  const sheets = book.sheets.map((sheet) => {
    const isKnown = ({ id }: Line | Part): boolean => known.has(`${sheet.key}/${id}`);
    const parts: Part[] = [];
    for (const part of sheet.parts) {
      const rows = part.rows?.filter(isKnown);
      const last = parts.at(-1);
      if (isKnown(part)) parts.push({ ...part, ...(rows && { rows }) });
      else if (last?.rows && rows?.length) parts.splice(-1, 1, { ...last, rows: [...last.rows, ...rows] });
    }
    return { ...sheet, parts };
  });
  return { ...book, sheets };
}

/** What is seen without the lines and parts that a step has put in: what it says of the rest, as of a name that is another. */
export function seenWithoutNew(after: Seen, { book }: Pick<State, 'book'>): Seen {
  return { ...after, book: without(after.book, idsOf(book)) };
}

/** Lines and parts of a book that another has not. */
function newOf(book: Book, known: ReadonlySet<string>): readonly (Line | Part)[] {
  return book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => [part, ...(part.rows ?? [])].filter(({ id }) => !known.has(`${key}/${id}`))),
  );
}

/** The page's book, where it is the model's with new lines that pass; else the model's, which shows what else changed. */
export function grown(
  state: Pick<State, 'book' | 'past' | 'future'>,
  after: Seen,
  passes: (fresh: readonly Line[]) => boolean,
): Outcome {
  const known = idsOf(state.book);
  const rest = without(after.book, known);
  const fresh = newOf(after.book, known).flatMap((one): readonly Line[] =>
    'rows' in one ? [] : [one as Line],
  );
  const sound = differences(state.book, rest, 1).length === 0 && passes(fresh);
  return sound ? done(state, after.book) : { ...done(state, state.book), past: [...state.past, state.book] };
}

/** A book whose table has a row put in at `at`: a blank one, or one like the row `from`. */
export function withRow(book: Book, place: Place, at: number, from?: number): Book {
  return withPart(book, place, (part) => ({
    ...part,
    length: (part.length ?? 0) + 1,
    columns: (part.columns ?? []).map((column) =>
      withRows(column, (cells) => cells.toSpliced(at, 0, (from === undefined ? '' : cells[from]) as never)),
    ),
  }));
}
