import { isSame, type Place, takenAt, writtenAt } from '../book.ts';
import { isTyping, type Kind, kindOf } from '../kind.ts';
import type { Chance } from '../random.ts';
import type { Seen } from '../seen.ts';
import { left, type Outcome, type State, unchanged } from '../state.ts';
import { noneInUse } from './typing.ts';

/** A cell in sight: first what it holds is drawn, so that long tables do not have it all. */
function cellInSight(seen: Seen, chance: Chance): Place | undefined {
  const kinds = new Map<string, Place[]>();
  for (const { place } of seen.cells) {
    const key = /^r\d+$/.test(place.item) ? 'table' : `${place.item === 'head' ? 'head' : place.field}`;
    kinds.set(key, [...(kinds.get(key) ?? []), place]);
  }
  const often = ['value', 'value', 'table', 'table', ...kinds.keys()].filter((key) => kinds.has(key));
  return chance.one(kinds.get(chance.one(often) ?? '') ?? []);
}

/** How things may stand when the person has gone to a cell: the draft is where it belongs, and the cell is chosen. */
function goneTo(state: State, place: Place, after: Seen): readonly Outcome[] {
  return left(state, after).map((one) => (one.editor.kind === 'closed' ? { ...one, place } : one));
}

const click: Kind<Place> = {
  name: 'click a cell',
  weight: (_seen, state) => (isTyping(state) ? 16 : 9),
  draw: cellInSight,
  perform: async (hands, place) => {
    const at = await hands.cell(place);
    if (at) await hands.clickAt(at);
    return at !== undefined;
  },
  expect: (state, place, before, after) => {
    if (isSame(state.draft?.place, place)) return stillOpenOrLeft(state, after);
    const opened: Outcome = unchanged(state, { kind: 'opened', place });
    const list = takenAt(before.book, place) === 'choice' && isSame(before.place, place) && !before.editor;
    return [...goneTo(state, place, after), ...(list ? [opened] : [])];
  },
};

/** The editor is as it was: who clicks into it only puts the caret elsewhere. */
export function stillOpen(state: State): Outcome {
  const { draft } = state;
  if (!draft) return unchanged(state);
  return unchanged(state, { kind: 'holds', place: draft.place, text: draft.text, typed: draft.typed });
}

/** Who clicks into the cell that is open for typing meets its field or the edge around it, which leaves the field. */
function stillOpenOrLeft(state: State, after: Seen): readonly Outcome[] {
  return [stillOpen(state), ...left(state, after)];
}

const twice: Kind<Place> = {
  name: 'double click a cell',
  weight: (_seen, state) => (isTyping(state) ? 3 : 2.5),
  draw: cellInSight,
  perform: async (hands, place, { editor, book }) => {
    const at = await hands.cell(place);
    if (!at) return false;
    await hands.clickAt(at, { clickCount: 2, delay: 10 });
    // Of what is typed there it selects a word, which the next text would rightly replace.
    const isOpen = isSame(editor?.place, place) && takenAt(book, place) !== 'choice';
    if (isOpen && (await hands.isEditing())) await hands.press('End');
    return true;
  },
  expect: (state, place, before, after) => {
    if (isSame(state.draft?.place, place))
      return stillOpenOrLeft(state, after).map((one) =>
        one.editor.kind === 'closed' ? { ...one, editor: { kind: 'any' } } : one,
      );
    const takes = takenAt(before.book, writtenAt(before.book, place));
    const opened = left(state, after).map((one): Outcome => {
      if (one.editor.kind !== 'closed') return one;
      // The page may move when a long draft is put away: then the second click meets another cell.
      if (isTyping(state)) return { ...one, editor: { kind: 'any' } };
      return { ...one, place, editor: takes === undefined ? { kind: 'closed' } : { kind: 'opened', place } };
    });
    return isTyping(state) ? opened : [...opened, ...noneInUse(state, place)];
  },
};

const drag: Kind<{ readonly from: Place; readonly to: Place }> = {
  name: 'drag a range',
  weight: () => 2.5,
  draw: (seen, chance, state) => {
    const from = cellInSight(seen, chance);
    const near = seen.cells.filter(({ place }) => place.part === from?.part).map(({ place }) => place);
    const to = chance.one(near);
    if (!from || !to || isSame(from, to) || isSame(from, state.draft?.place)) return undefined;
    return { from, to };
  },
  perform: async (hands, { from, to }) => {
    const [start, end] = [await hands.cell(from), await hands.cell(to)];
    const again = await hands.cell(from);
    if (!start || !end || !again || start.y !== again.y) return false;
    const { mouse } = hands.page;
    await mouse.move(start.x, start.y);
    await mouse.down();
    await mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2, { steps: 2 });
    await mouse.move(end.x, end.y, { steps: 3 });
    await mouse.up();
    return true;
  },
  // A line expands under the pointer once the draft is gone: which cell the range ends at is not told beforehand.
  expect: (state, _args, _before, after) => left(state, after),
};

const blank: Kind<{ readonly height: number }> = {
  name: 'click blank paper',
  weight: (_seen, state) => (isTyping(state) ? 4 : 0.7),
  draw: (_seen, chance) => ({ height: chance.number() }),
  perform: async (hands, { height }) => {
    const at = await hands.blank(height);
    if (at) await hands.clickAt(at);
    return at !== undefined;
  },
  expect: (state, _args, _before, after) => left(state, after),
};

const menu: Kind<Place> = {
  name: 'open and close the menu of a cell',
  weight: (_seen, state) => (isTyping(state) ? 1.5 : 0.7),
  draw: (seen, chance, state) => {
    const place = cellInSight(seen, chance);
    return isSame(place, state.draft?.place) ? undefined : place;
  },
  perform: async (hands, place) => {
    const at = await hands.cell(place);
    if (!at) return false;
    await hands.clickAt(at, { button: 'right' });
    await hands.rest();
    if (await hands.sees('quay-sheet-menu:popover-open')) await hands.press('Escape');
    return true;
  },
  expect: (state, place, _before, after) => goneTo(state, place, after),
};

/** What the pointer does on the page. */
export const pointerKinds = [kindOf(click), kindOf(twice), kindOf(drag), kindOf(blank), kindOf(menu)];
