import { isOnCells, isTyping, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { left, type Outcome, type State, unchanged } from '../state.ts';

type Stand = Pick<Outcome, 'book' | 'past' | 'future'>;

/** How a step back, or forth, may end. Where it is not known what there is to undo, nothing may happen. */
function stepped(from: Stand, known: boolean, way: 'undo' | 'redo', after: Seen): readonly Outcome[] {
  const { book, past, future } = from;
  const list = way === 'undo' ? past : future;
  const next = list.at(-1);
  const closed = { editor: { kind: 'closed' } } as const;
  const stay: Outcome = { book, past, future, ...closed, pastKnown: known };
  // After a difference it is not known what was before: the page says.
  if (next === undefined)
    return known
      ? [stay]
      : [stay, { ...stay, book: after.book, past: [], future: way === 'undo' ? [...future, book] : [] }];
  const rest = list.slice(0, -1);
  const moved: Outcome =
    way === 'undo'
      ? { book: next, past: rest, future: [...future, book], ...closed }
      : { book: next, past: [...past, book], future: rest, ...closed };
  return known ? [moved] : [moved, { ...stay, past: [], future: [] }];
}

const byKey = (name: string, key: string, way: 'undo' | 'redo'): Kind<null> => ({
  name,
  weight: (seen, state) => (isOnCells(seen) ? (state.past.length > 0 ? 1.2 : 0.2) : 0),
  draw: () => null,
  perform: async (hands) => {
    await hands.press(key);
    return true;
  },
  expect: (state, _args, _before, after) => stepped(state, state.pastKnown, way, after),
});

const byButton = (label: string, way: 'undo' | 'redo'): Kind<null> => ({
  name: `press ${label}`,
  weight: (_seen, state) => (isTyping(state) ? 1 : 0.4),
  draw: () => null,
  perform: async (hands) => {
    const at = await hands.element(`quay-top-bar button:text-is("${label}")`);
    if (at) await hands.clickAt(at);
    return at !== undefined;
  },
  expect: (state, _args, _before, after) => {
    // What was being typed is the last thing done: it is what goes back.
    const draft = state.draft?.typed === true;
    const gone = left(state, after);
    const done = gone.flatMap((one) =>
      one.editor.kind === 'closed' ? stepped(one, state.pastKnown || draft, way, after) : [one],
    );
    return draft ? [...done, ...gone, ...dropped(state)] : done;
  },
});

/** The draft itself taken back, the book as it was; the words are gone on the person's own wish. */
function dropped(state: State): readonly Outcome[] {
  return [unchanged(state)];
}

/** Steps back and forth. */
export const historyKinds = [
  kindOf(byKey('undo', 'Control+z', 'undo')),
  kindOf(byKey('redo', 'Control+y', 'redo')),
  kindOf(byButton('Undo', 'undo')),
  kindOf(byButton('Redo', 'redo')),
];
