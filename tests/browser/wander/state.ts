import {
  type Book,
  columnAt,
  hasMethods,
  lineAt,
  type Place,
  type Takes,
  takenAt,
  textAt,
  withMethod,
  withText,
  writtenAt,
} from './book.ts';
import { renamed } from './renamed.ts';
import type { Editor, Seen } from './seen.ts';
import { isBare, isTaken } from './units-beside.ts';

/** What is being typed: where, what stands in the editor, and whether that is other than what the book had. */
export interface Draft {
  readonly place: Place;
  readonly text: string;
  readonly unit: string;
  readonly typed: boolean;
}

/** What the plain model knows: the book, how it was before each change, and the draft. */
export interface State {
  readonly book: Book;
  readonly past: readonly Book[];
  readonly future: readonly Book[];
  readonly draft: Draft | undefined;
  /** Whether all that can be undone is known. */
  readonly pastKnown: boolean;
}

/** The editor a step may leave: none; one with this text at this place; one just opened there; whatever there is. */
export type EditorAfter =
  | { readonly kind: 'closed' | 'any' }
  | { readonly kind: 'opened'; readonly place: Place }
  | {
      readonly kind: 'holds';
      readonly place: Place;
      readonly text: string | undefined;
      readonly typed: boolean;
    };

/** How things may stand after a step. */
export interface Outcome {
  readonly book: Book;
  readonly past: readonly Book[];
  readonly future: readonly Book[];
  readonly editor: EditorAfter;
  /** The cell that must be chosen. */
  readonly place?: Place | undefined;
  readonly sheet?: string;
  /** A sentence must stand on the page that has these words in it. */
  readonly said?: string;
  readonly pastKnown?: boolean;
}

/** The book of a state with a change made to it. */
export function changedTo(
  state: Pick<State, 'book' | 'past' | 'future'>,
  book: Book,
): Pick<Outcome, 'book' | 'past' | 'future'> {
  if (book === state.book) return { book, past: state.past, future: state.future };
  return { book, past: [...state.past, state.book], future: [] };
}

/** The state as it is, with another editor. */
export function unchanged({ book, past, future }: State, editor: EditorAfter = { kind: 'closed' }): Outcome {
  return { book, past, future, editor };
}

/** What may have become of the draft when the person went elsewhere; `seen` is how things stand then. */
export function left(state: State, seen: Seen): readonly Outcome[] {
  const { draft } = state;
  if (!draft?.typed) return [unchanged(state)];
  const committed = {
    ...changedTo(state, committedBook(state.book, draft, seen.book)),
    editor: { kind: 'closed' } as const,
  };
  if (!mayBeRefused(state.book, draft)) return [committed];
  const kept: Outcome = unchanged(state, {
    kind: 'holds',
    place: draft.place,
    text: draft.text,
    typed: true,
  });
  return [committed, kept, { ...unchanged(state), said: draft.text }];
}

/** The book with a draft in it. What two forms are allowed for is taken as the page's book has it. */
function committedBook(book: Book, draft: Draft, seen: Book): Book {
  const place = writtenAt(book, draft.place);
  const takes = takenAt(book, place);
  if (hasMethods(book, place)) return withMethod(book, place, draft.text, seen);
  const before = textAt(book, place);
  if (before === undefined || draft.text === before) return book;
  if (takes === 'name') return renamed(book, place, draft.text.trim(), seen);
  if (takes === 'choice') return chosen(book, place, draft.text, seen);
  if (takes !== 'entry')
    return draft.text.trim() === before.trim() && takes !== 'prose'
      ? book
      : withText(book, place, draft.text);
  const written = textAt(seen, place) ?? '';
  const own = unitOf(book, place);
  const text = isTaken(written, draft.text, draft.unit, own) ? written : draft.text;
  return text === before ? book : withText(book, place, text);
}

/** A choice holds the value of the option whose words stand in its list; of options that come from a table any. */
function chosen(book: Book, place: Place, words: string, seen: Book): Book {
  const options = (lineAt(book, place)?.options ?? columnAt(book, place)?.options ?? []) as readonly (
    | string
    | { readonly value: string; readonly label?: string }
  )[];
  const meant = options.flatMap((one) => {
    const { value, label } = typeof one === 'string' ? { value: one, label: one } : one;
    return value === words || label === words ? [value] : [];
  });
  const before = textAt(book, place);
  const written = textAt(seen, place);
  const [first = written] = meant;
  const value = written !== undefined && meant.includes(written) ? written : first;
  return value === undefined || value === before ? book : withText(book, place, value);
}

/** The unit that the line or column of a place has. */
export function unitOf(book: Book, place: Place): string | undefined {
  const part = book.sheets.find(({ key }) => key === place.sheet)?.parts.find(({ id }) => id === place.part);
  const column = part?.columns?.find(({ id }) => id === place.field);
  return column?.unit ?? part?.rows?.find(({ id }) => id === place.item)?.unit;
}

const sureUnits = ['ft', 'in', 'm', 'mm', 'kN', 'kip', ''];

/** Whether what was typed may be refused, so that the draft stays or is told of. */
function mayBeRefused(book: Book, { place, text }: Draft): boolean {
  const takes: Takes | undefined = takenAt(book, place);
  switch (takes) {
    case 'name':
      return !/^w_\d+$/.test(text);
    case 'unit':
      return !sureUnits.includes(text);
    case 'entry':
      return !/^-?\d+(\.\d+)?( (ft|in|m|mm|kN|kip))?$/.test(text);
    case undefined:
      return true;
    // A number alone in place of a formula is asked about.
    case 'formula':
      return isBare(text);
    case 'choice':
    case 'prose':
    case 'words':
      return false;
  }
}

/** What differs between an outcome and what is seen. */
export function draftOf(
  outcome: Outcome,
  editor: Editor | undefined,
  before: Draft | undefined,
): Draft | undefined {
  if (!editor) return undefined;
  const same = before && JSON.stringify(before.place) === JSON.stringify(editor.place);
  const typed =
    outcome.editor.kind === 'holds'
      ? outcome.editor.typed
      : outcome.editor.kind === 'any' && same === true && before.typed;
  return { place: editor.place, text: editor.text, unit: editor.unit, typed };
}
