import {
  type Book,
  columnAt,
  hasMethods,
  lineAt,
  type Place,
  partAt,
  tableRowAt,
  takenAt,
  writtenAt,
} from '../book.ts';
import { isTyping, type Kind, kindOf } from '../kind.ts';
import type { Chance } from '../random.ts';
import type { Seen } from '../seen.ts';
import { type Draft, draftTakes, left, type Outcome, type State, unchanged } from '../state.ts';
import { isComputedAt, statableAt } from '../stated.ts';

/** Something a person might type into a place. */
function wordsFor(seen: Seen, place: Place, chance: Chance, draft?: Draft): string {
  const number = String(1 + chance.whole(9999));
  const small = `${1 + chance.whole(60)}`;
  const isOver = draft ? draft.over : isComputedAt(seen.book, place);
  const takes = draft ? draftTakes(seen.book, draft) : takenAt(seen.book, writtenAt(seen.book, place));
  const value = chance.one([small, small, `${small}.5`, `${small} m`, `${small} kN`]) ?? small;
  // A value typed over what is computed is stated; of a check it says for which side.
  if (takes === 'stated' || (takes === 'formula' && isOver && chance.number() < 0.6)) {
    const side =
      statableAt(seen.book, place) === 'check' ? (chance.one(['demand ', 'capacity ', '']) ?? '') : '';
    return draft?.side ? value : `${side}${value}`;
  }
  switch (takes) {
    case 'reason':
      return chance.one([`by hand, page ${number}`, 'weighed', `table of ${number}`, small]) ?? 'weighed';
    case 'entry': {
      const type = (columnAt(seen.book, place) ?? lineAt(seen.book, place))?.type;
      if (type === 'text') return `item ${number}`;
      return (
        chance.one([
          small,
          small,
          small,
          `${small}.5`,
          `${small} ft`,
          `${small} in`,
          `${small} m`,
          '5 ton',
          '-3',
        ]) ?? small
      );
    }
    case 'choice':
      return chance.one(['n', 'y', 's', 'st', 'a']) ?? 'n';
    case 'unit':
      return chance.one(['ft', 'in', 'm', 'mm', 'kN', 'kip', 'foo']) ?? 'm';
    case 'name':
      return chance.one([`w_${number}`, `w_${number}`, '2x', lineAt(seen.book, place)?.name ?? 'x']) ?? 'x';
    case 'formula':
      return chance.one([`2 * ${small}`, `${small} m + 2 m`, `=3 * ${small}`, `${small} m + 1 s`]) ?? '1';
    case 'prose':
    case 'words':
    case undefined:
      return chance.one([`note ${number}`, `${small} of ${number}`]) ?? 'note';
  }
}

/** Whether a place is a cell that is computed and can have no value of its own. */
function isOfSeries(book: Book, place: Place): boolean {
  const column = tableRowAt(book, place) === undefined ? undefined : columnAt(book, place);
  return column !== undefined && column.kind !== 'given' && statableAt(book, place) === undefined;
}

/** Whether `whole` is `old` with `part` put in somewhere. */
function isPutIn(old: string, part: string, whole: string): boolean {
  for (let at = 0; at <= old.length; at += 1)
    if (whole === old.slice(0, at) + part + old.slice(at)) return true;
  return false;
}

/** How things may stand when a text has been typed where the person is. */
export function typedInto(state: State, text: string, before: Seen, after: Seen): readonly Outcome[] {
  const { draft } = state;
  const seenText = after.editor?.text ?? '';
  if (draft) {
    const isChoice = takenAt(state.book, draft.place) === 'choice';
    // The keys lead into a field of the title block with all it says selected.
    const isOver = draft.place.part === 'title block' && !draft.typed && seenText === text;
    const expected = isOver || isPutIn(draft.text, text, seenText) ? seenText : draft.text + text;
    return [
      unchanged(state, {
        kind: 'holds',
        place: draft.place,
        text: isChoice ? undefined : expected,
        typed: true,
      }),
    ];
  }
  const { place } = before;
  const nothing = unchanged(state);
  if (!place || !takenAt(state.book, writtenAt(state.book, place))) return [nothing];
  const isChoice = takenAt(state.book, place) === 'choice';
  // The rows of a series are made anew each time: nothing is typed into one of them.
  if (isOfSeries(state.book, place)) return [nothing];
  const over = { typed: true, over: true } as const;
  const begun = unchanged(state, { kind: 'holds', place, text: isChoice ? undefined : text, ...over });
  const rest = noneInUse(state, place);
  return before.onPage && !before.overview ? [begun, ...rest] : [nothing, begun, ...rest];
}

/** Of several methods none may be in use at a place, which only the page knows: then it says so, and nothing is typed. */
export function noneInUse(state: State, place: Place): readonly Outcome[] {
  return hasMethods(state.book, place) ? [{ ...unchanged(state), said: 'method' }] : [];
}

const canType = (seen: Seen, state: State): boolean =>
  !seen.dialog &&
  !seen.menu &&
  !seen.overview &&
  (state.draft !== undefined || (seen.onPage && seen.place !== undefined));

const type: Kind<string> = {
  name: 'type',
  weight: (seen, state) => (!canType(seen, state) ? 0 : isTyping(state) ? 1.5 : 14),
  draw: (seen, chance, state) => {
    const place = state.draft?.place ?? seen.place;
    return place && wordsFor(seen, place, chance, state.draft);
  },
  perform: async (hands, text) => {
    await hands.page.keyboard.type(text);
    return true;
  },
  expect: typedInto,
};

const insert: Kind<string> = {
  ...type,
  name: 'give text without keys',
  weight: (seen, state) => (!canType(seen, state) ? 0 : isTyping(state) ? 0.5 : 1.5),
  perform: async (hands, text) => {
    await hands.page.keyboard.insertText(text);
    return true;
  },
};

const titles = ['project', 'subject', 'job', 'client', 'prepared', 'checked', 'date', 'revision'];

const title: Kind<{ readonly field: string; readonly text: string }> = {
  name: 'type into the title block',
  weight: () => 0.8,
  draw: (_seen, chance) => ({ field: chance.one(titles) ?? 'job', text: `T${chance.whole(999)}` }),
  perform: async (hands, { field, text }) => {
    const label = `${field.charAt(0).toUpperCase()}${field.slice(1)}`;
    const at = await hands.element(`quay-title-block label:has-text("${label}") input`);
    if (!at) return false;
    await hands.clickAt(at);
    await hands.rest();
    if (await hands.isEditing()) return true;
    await hands.press('End');
    await hands.page.keyboard.type(text);
    return true;
  },
  expect: (state, { field, text }, _before, after) => {
    const place = { sheet: '', part: 'title block', item: '', field };
    const same = state.draft?.place.part === place.part && state.draft.place.field === field;
    const had = same ? (state.draft?.text ?? '') : (state.book.title[field] ?? '');
    const editor = { kind: 'holds', place, text: had + text, typed: true } as const;
    if (same) return [unchanged(state, editor)];
    return left(state, after).map((one) => (one.editor.kind === 'closed' ? { ...one, editor } : one));
  },
};

/** The part a text of several lines can stand in. */
export function isProse(state: State): boolean {
  return state.draft !== undefined && partAt(state.book, state.draft.place)?.kind === 'prose';
}

/** What is typed. */
export const typingKinds = [kindOf(type), kindOf(insert), kindOf(title)];
