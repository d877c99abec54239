import { lineAt, type Place, tableRowAt, takenAt, textAt, writtenAt } from '../book.ts';
import { done } from '../changed-book.ts';
import { isOnCells, isTyping, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { confirmedBook, draftTakes, left, type Outcome, type State, unchanged } from '../state.ts';
import { sides, statementAt } from '../stated.ts';
import { stillOpen } from './pointer.ts';
import { isProse, noneInUse } from './typing.ts';

/** Fields that offer words while one types: Enter and Tab may take one of them, and Escape closes the list. */
function offersWords(state: State): boolean {
  const takes = state.draft && draftTakes(state.book, state.draft);
  return takes === 'formula' || takes === 'name' || takes === 'unit';
}

/** The editor still there, with other words in it. */
function otherWords(state: State): readonly Outcome[] {
  const { draft } = state;
  if (!draft || !offersWords(state)) return [];
  return [unchanged(state, { kind: 'holds', place: draft.place, text: undefined, typed: true })];
}

const accepting = (key: string): Kind<null> => ({
  name: key,
  weight: (seen, state) =>
    isTyping(state) ? (key.startsWith('Shift') ? 1 : 4) : isOnCells(seen) || seen.editor ? 1 : 0,
  draw: () => null,
  perform: async (hands) => {
    await hands.press(key);
    return true;
  },
  expect: (state, _args, before, after) => {
    const tab = key.endsWith('Tab');
    if (state.draft) {
      if (key === 'Shift+Enter' && isProse(state)) {
        const { place, text } = state.draft;
        const lines = after.editor?.text ?? '';
        const more = lines.replace(/\n/g, '').length === text.replace(/\n/g, '').length;
        return [unchanged(state, { kind: 'holds', place, text: more ? lines : `${text}\n`, typed: true })];
      }
      // A reason that is entered as it stands is confirmed.
      const held = state.draft.typed ? state.book : confirmedBook(state.book, state.draft, after.book);
      const entered =
        JSON.stringify(held) === JSON.stringify(state.book) ? left(state, after) : [done(state, held)];
      const gone = entered.map((one) => (key === 'Enter' ? askedWhy(state, one) : one));
      // Enter in a field of the title block enters it, and may stay there.
      const rest = state.draft.place.part === 'title block' ? [stillOpen(state), ...gone.map(elsewhere)] : [];
      return [...gone, ...rest, ...otherWords(state), ...(tab ? gone.map(elsewhere) : [])];
    }
    if (tab) return [unchanged(state, { kind: 'any' })];
    // The keys name Enter alone; with Shift nothing need happen.
    return [...opened(state, before), ...(key === 'Enter' ? [] : [unchanged(state)])];
  },
});

/** Enter on a value that is stated anew asks in the same cell for the reason. */
function askedWhy({ book, draft }: State, outcome: Outcome): Outcome {
  if (!draft || draft.as === 'reason' || outcome.editor.kind !== 'closed') return outcome;
  const { place } = draft;
  const asks = [undefined, ...sides].some((side) => {
    const now = statementAt(outcome.book, place, side);
    return now && JSON.stringify(now) !== JSON.stringify(statementAt(book, place, side));
  });
  return asks ? { ...outcome, editor: { kind: 'opened', place, as: 'reason' } } : outcome;
}

/** The person may be in another field by then. */
function elsewhere(outcome: Outcome): Outcome {
  return outcome.editor.kind === 'closed' ? { ...outcome, editor: { kind: 'any' } } : outcome;
}

/** The chosen cell is open for typing, if it takes any. */
function opened(state: State, { place }: Seen): readonly Outcome[] {
  if (!place) return [unchanged(state)];
  const takes = takenAt(state.book, writtenAt(state.book, place));
  return [
    unchanged(state, takes === undefined ? { kind: 'closed' } : { kind: 'opened', place }),
    ...noneInUse(state, place),
  ];
}

const edit: Kind<null> = {
  name: 'F2',
  weight: (seen) => (isOnCells(seen) ? 1.5 : 0),
  draw: () => null,
  perform: async (hands) => {
    await hands.press('F2');
    return true;
  },
  expect: (state, _args, before) => (state.draft ? [stillOpen(state)] : opened(state, before)),
};

/** A field of the title block has the focus still, and what the book has for it. */
function backInTitle(state: State): readonly Outcome[] {
  const place = state.draft?.place;
  if (place?.part !== 'title block') return [];
  return [unchanged(state, { kind: 'holds', place, text: textAt(state.book, place), typed: false })];
}

const leave: Kind<null> = {
  name: 'Escape',
  weight: (seen, state) => (isTyping(state) ? 1 : seen.dialog || seen.menu ? 20 : seen.editor ? 2 : 0.2),
  draw: () => null,
  perform: async (hands) => {
    await hands.press('Escape');
    return true;
  },
  expect: (state) => [
    unchanged(state),
    ...(offersWords(state) ? [stillOpen(state)] : []),
    ...backInTitle(state),
  ],
};

const arrows = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'];
const far = ['Home', 'End', 'PageUp', 'PageDown', 'Control+Home', 'Control+End'];

const arrow: Kind<string> = {
  name: 'arrow',
  weight: (seen, state) => (isOnCells(seen) ? 4 : isTyping(state) && !offersWords(state) ? 2 : 0),
  draw: (seen, chance) => chance.one(seen.editor ? arrows : [...arrows, ...arrows, ...far]),
  perform: async (hands, key) => {
    await hands.press(key);
    return true;
  },
  expect: (state, key, before, after) => {
    if (state.draft) {
      const choice = takenAt(state.book, state.draft.place) === 'choice';
      const moved: Outcome = unchanged(state, {
        kind: 'holds',
        place: state.draft.place,
        text: undefined,
        typed: true,
      });
      return choice ? [moved] : [stillOpen(state), ...left(state, after)];
    }
    return [{ ...unchanged(state), place: placeAfter(before, key, after) }];
  },
};

const fields = ['reference', 'name', 'label', 'value', 'unit'];

/** Where an arrow leads within a line, and that up and down lead to another line of the same field, if it has it. */
function placeAfter({ place, book }: Seen, key: string, after: Seen): Place | undefined {
  const line = place && lineAt(book, place);
  if (!place || !line || tableRowAt(book, place) !== undefined) return after.place;
  const own = fields.filter((field) => field !== 'unit' || (line.kind !== 'choice' && line.kind !== 'check'));
  const at = own.indexOf(place.field);
  const to: Readonly<Record<string, number>> = {
    ArrowLeft: Math.max(at - 1, 0),
    ArrowRight: Math.min(at + 1, own.length - 1),
    Home: 0,
    End: own.length - 1,
  };
  const field = own[to[key] ?? -1];
  return field === undefined ? after.place : { ...place, field };
}

const extend: Kind<string> = {
  name: 'extend the range',
  weight: (seen) => (isOnCells(seen) ? 1 : 0),
  draw: (_seen, chance) => `Shift+${chance.one(arrows)}`,
  perform: async (hands, key) => {
    for (let step = 0; step < 2; step += 1) await hands.press(key);
    return true;
  },
  expect: (state) => [unchanged(state)],
};

const jump: Kind<string> = {
  name: 'jump',
  weight: (seen) => (isOnCells(seen) ? 0.6 : 0),
  draw: (_seen, chance) => chance.one(['F8', 'Shift+F8', 'Alt+ArrowLeft']),
  perform: async (hands, key) => {
    await hands.press(key);
    return true;
  },
  expect: (state) => [unchanged(state)],
};

/** Keys that move, accept and leave. */
export const keyKinds = [
  ...['Enter', 'Shift+Enter', 'Tab', 'Shift+Tab'].map((key) => kindOf(accepting(key))),
  kindOf(edit),
  kindOf(leave),
  kindOf(arrow),
  kindOf(extend),
  kindOf(jump),
];
