import type { Place } from '../book.ts';
import { lineAt, tableRowAt } from '../book.ts';
import { done } from '../changed-book.ts';
import { isTyping, type Kind, kindOf } from '../kind.ts';
import { left, type Outcome } from '../state.ts';
import { isComputedAt, type Side, sides, statementAt, withStatement } from '../stated.ts';

/** What the panel has for a computed value, by the words of its buttons. */
const commands = {
  State: 'value',
  'Give the reason': 'reason',
  'Change the reason': 'reason',
  'Change the value': 'value',
  'Change the formula': 'formula',
  'Use the computed': undefined,
} as const;

interface Command {
  readonly words: keyof typeof commands;
  readonly at: number;
}

const panel: Kind<Command> = {
  name: 'state by the panel',
  weight: (seen, state) =>
    seen.dialog || seen.menu || !seen.place || !isComputedAt(seen.book, placeOfValue(seen.place, seen.book))
      ? 0
      : isTyping(state)
        ? 1
        : 4,
  draw: (_seen, chance) => {
    const words = chance.one(Object.keys(commands) as readonly Command['words'][]);
    return words && { words, at: chance.whole(2) };
  },
  perform: async (hands, { words, at }) => {
    const button = await hands.button('quay-side-panel .ends button', words, at);
    if (button) await hands.clickAt(button);
    return button !== undefined;
  },
  expect: (state, { words, at }, before, after) =>
    left(state, after).flatMap((gone): readonly Outcome[] => {
      if (gone.editor.kind !== 'closed' || !before.place) return [gone];
      const place = placeOfValue(before.place, gone.book);
      const side = sideOf(gone.book, place, words, at);
      const as = commands[words];
      // What was typed may have taken the button away, or put another in its place.
      const moved: readonly Outcome[] = isTyping(state) ? [gone] : [];
      if (as === undefined)
        return [done({ ...state, ...gone }, withStatement(gone.book, place, undefined, side)), ...moved];
      return [{ ...gone, editor: { kind: 'opened', place, as, side } }, ...moved];
    }),
};

/** The place that the panel speaks of: of a line its value. */
function placeOfValue(place: Place, book: Parameters<typeof lineAt>[0]): Place {
  return tableRowAt(book, place) === undefined && lineAt(book, place) ? { ...place, field: 'value' } : place;
}

/** The side of a check that the button with these words stands for, counted among those that have them. */
function sideOf(
  book: Parameters<typeof lineAt>[0],
  place: Place,
  words: Command['words'],
  at: number,
): Side | undefined {
  if (lineAt(book, place)?.kind !== 'check' || tableRowAt(book, place) !== undefined) return undefined;
  const own = sides.filter((side) => {
    const statement = statementAt(book, place, side);
    if (words === 'State') return statement === undefined;
    if (words === 'Give the reason') return statement?.reason === '';
    return statement !== undefined && (words !== 'Change the reason' || statement.reason !== '');
  });
  return own[Math.min(at, own.length - 1)];
}

/** What is done by the panel with a value stated in place of a computed one. */
export const statementKinds = [kindOf(panel)];
