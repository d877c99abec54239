import {
  type Book,
  columnAt,
  hasMethods,
  isValue,
  lineAt,
  type Place,
  partAt,
  type Takes,
  takenAt,
  textAt,
  withFormula,
  withMethod,
  withText,
  writtenAt,
} from './book.ts';
import { renamed } from './renamed.ts';
import type { Editor, Seen } from './seen.ts';
import {
  isComputedAt,
  isStatedAt,
  type Side,
  statableAt,
  statedAnew,
  statedSides,
  statementAt,
  withStatement,
} from './stated.ts';
import { isBare, isTaken } from './units-beside.ts';

/** What is being typed: where, what stands in the editor, and whether that is other than what the book had. */
export interface Draft {
  readonly place: Place;
  readonly text: string;
  readonly unit: string;
  readonly typed: boolean;
  /** What the field says that it takes. */
  readonly as: string;
  /** Whether it was begun by typing over what the place holds. */
  readonly over: boolean;
  /** The side of a check that it was asked for. */
  readonly side?: Side | undefined;
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
  | { readonly kind: 'opened'; readonly place: Place; readonly as?: string; readonly side?: Side | undefined }
  | {
      readonly kind: 'holds';
      readonly place: Place;
      readonly text: string | undefined;
      readonly typed: boolean;
      readonly over?: boolean;
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
  const kept: Outcome = unchanged(state, {
    kind: 'holds',
    place: draft.place,
    text: draft.text,
    typed: true,
  });
  if (isOpen(state.book, draft)) return [kept];
  const committed = {
    ...changedTo(state, committedBook(state.book, draft, seen.book)),
    editor: { kind: 'closed' } as const,
  };
  if (!mayBeRefused(state.book, draft)) return [committed];
  return [committed, kept, { ...unchanged(state), said: draft.text }];
}

/** What a draft is for: the kind of text that its field takes. */
export function draftTakes(book: Book, draft: Draft): Takes | 'reason' | undefined {
  if (draft.as === 'reason') return 'reason';
  if (draft.as === 'value' && statableAt(book, draft.place)) return 'stated';
  if (draft.as === 'formula') return 'formula';
  return takenAt(book, writtenAt(book, draft.place));
}

/** The side of a check that a text names in front of a value. */
const SIDE = /^\s*(demand|capacity)\s+(?=\S)/i;

/** Whether a draft states a value: it was asked for, or a value alone was typed over a formula. */
function states(book: Book, draft: Draft): boolean {
  const takes = draftTakes(book, draft);
  if (takes === 'stated') return !draft.text.trim().startsWith('=');
  const isOver = draft.over || (statableAt(book, draft.place) === 'check' && SIDE.test(draft.text));
  return (
    takes === 'formula' && isOver && isComputedAt(book, draft.place) && isValue(draft.text.replace(SIDE, ''))
  );
}

/** Whether a draft is a value for a check of which nothing says the side: both readings are offered, and it stays. */
function isOpen(book: Book, draft: Draft): boolean {
  const { place, text, side } = draft;
  if (statableAt(book, place) !== 'check' || side || SIDE.test(text)) return false;
  return draft.over && states(book, draft);
}

/** The book in which a draft is stated, or the computed value used again where it is blank. */
function statedBook(book: Book, { place, text, unit, side, over }: Draft, seen: Book): Book {
  const said = SIDE.exec(text)?.[1]?.toLowerCase() as Side | undefined;
  const own = statableAt(book, place) === 'check' ? (side ?? said ?? statedSides(book, place)[0]) : undefined;
  if (text.trim() === '') return over ? book : withStatement(book, place, undefined, own);
  const value = text.replace(SIDE, '').trim();
  const written = statementAt(seen, place, own)?.entry ?? '';
  // No unit stands beside a check: its sides are compared in one that they come to.
  const isSound = own
    ? written === value || (isBare(value) && written.startsWith(`${value} `))
    : isTaken(written, value, unit, unitOf(book, place));
  const before = statementAt(book, place, own);
  const entry = isSound ? written : value;
  return before?.entry === entry ? book : withStatement(book, place, statedAnew(before, entry), own);
}

/** The book in which the reason of a draft, entered by a key, holds for the value that is stated now. */
export function confirmedBook(book: Book, draft: Draft | undefined, seen: Book): Book {
  return draft?.as === 'reason' ? reasonBook(book, draft, seen) : book;
}

/** The book in which a draft is the reason for what is stated at its place. */
function reasonBook(book: Book, { place, text, side }: Draft, seen: Book): Book {
  const own = statableAt(book, place) === 'check' ? statedSides(book, place) : [undefined];
  const meant = side ?? own.find((one) => statementAt(seen, place, one)?.reason === text.trim()) ?? own[0];
  const statement = statementAt(book, place, meant);
  return statement
    ? withStatement(book, place, { entry: statement.entry, reason: text.trim() }, meant)
    : book;
}

/** The book with a draft in it. What two forms are allowed for is taken as the page's book has it. */
function committedBook(book: Book, draft: Draft, seen: Book): Book {
  if (draftTakes(book, draft) === 'reason') return reasonBook(book, draft, seen);
  if (states(book, draft)) return statedBook(book, draft, seen);
  if (draftTakes(book, draft) === 'stated') return withFormula(book, draft.place, draft.text);
  const place = writtenAt(book, draft.place);
  const takes = takenAt(book, place);
  if (hasMethods(book, place)) return withMethod(book, place, draft.text, seen);
  // The formula beside what is stated is asked for by that word.
  if (draft.as === 'formula' && isStatedAt(book, place)) return withFormula(book, place, draft.text);
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
function mayBeRefused(book: Book, draft: Draft): boolean {
  const { place, text } = draft;
  if (states(book, draft)) {
    const isSure = (unitOf(book, place) ?? '') !== '' && /^([2-9]|\d{2,})(\.\d+)?$/.test(text);
    return !isSure && text.trim() !== '';
  }
  switch (draftTakes(book, draft)) {
    case 'reason':
      return isValue(text) || isBare(text);
    // A formula for one cell alone.
    case 'stated':
      return true;
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
    // What no option is called is not taken; the text is the option that stands there, and the letters are not known here.
    case 'choice':
      return true;
    // A value is no heading of a column.
    case 'words':
      return isOfColumn(book, place) && /^\s*[-+]?\d/.test(text);
    case 'prose':
      return false;
  }
}

/** Whether a place is of a column: in the table's head, or in the column's own line. */
function isOfColumn(book: Book, place: Place): boolean {
  return place.item === 'head' || partAt(book, place)?.columns?.some(({ id }) => id === place.item) === true;
}

/** What differs between an outcome and what is seen. */
export function draftOf(
  outcome: Outcome,
  editor: Editor | undefined,
  before: Draft | undefined,
): Draft | undefined {
  if (!editor) return undefined;
  const same =
    before?.as === editor.as && JSON.stringify(before.place) === JSON.stringify(editor.place)
      ? before
      : undefined;
  const typed =
    outcome.editor.kind === 'holds'
      ? outcome.editor.typed
      : outcome.editor.kind === 'any' && same?.typed === true;
  const over = same ? same.over : outcome.editor.kind === 'holds' && outcome.editor.over === true;
  const side = same ? same.side : outcome.editor.kind === 'opened' ? outcome.editor.side : undefined;
  return { ...editor, typed, over, side };
}
