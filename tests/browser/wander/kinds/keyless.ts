import { takenAt, writtenAt } from '../book.ts';
import { isOnCells, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { left, type Outcome, type State, unchanged } from '../state.ts';
import { typedInto } from './typing.ts';

/** How things may stand when a text came where the person is once what was typed before is put away. */
function cameThen(state: State, text: string, before: Seen, after: Seen): readonly Outcome[] {
  return left(state, after).flatMap((gone): readonly Outcome[] => {
    // What was refused stays in hand, and the text comes into it.
    if (gone.editor.kind === 'holds') return typedInto(state, text, before, after);
    if (gone.editor.kind !== 'closed') return [gone];
    const place = before.place?.sheet === before.sheet ? before.place : after.place;
    const then = { ...state, ...gone, draft: undefined };
    const at = { ...before, place, onPage: true };
    return typedInto(then, text, at, after).map((one) => ({ ...one, past: gone.past, future: gone.future }));
  });
}

/** Whether a text given now would go to a cell of the page. */
function takesText(seen: Seen): boolean {
  return !seen.dialog && !seen.menu && !seen.overview && seen.place?.sheet === seen.sheet;
}

const onPaper: Kind<{ readonly height: number; readonly text: string }> = {
  name: 'click blank paper and give text without keys',
  weight: (seen) => (takesText(seen) ? 1 : 0),
  draw: (_seen, chance) => ({ height: chance.number(), text: `${1 + chance.whole(99)}` }),
  perform: async (hands, { height, text }) => {
    const at = await hands.blank(height);
    if (!at) return false;
    await hands.clickAt(at);
    await hands.page.keyboard.insertText(text);
    return true;
  },
  expect: (state, { text }, before, after) => cameThen(state, text, before, after),
};

/** What stands beside the page, and takes no text itself. */
const beside = [
  'quay-sheet-list',
  'quay-side-panel',
  'quay-top-bar',
  'quay-status-bar',
  'scroll bar',
] as const;

const besidePage: Kind<{
  readonly on: (typeof beside)[number];
  readonly height: number;
  readonly text: string;
}> = {
  name: 'press beside the page and give text without keys',
  weight: (seen) => (seen.place && takesText(seen) ? 1 : 0),
  draw: (_seen, chance) => ({
    on: chance.one(beside) ?? 'scroll bar',
    height: chance.number(),
    text: `${1 + chance.whole(99)}`,
  }),
  perform: async (hands, { on, height, text }) => {
    const at = on === 'scroll bar' ? await hands.scrollBar(height) : await hands.edge(on);
    if (!at) return false;
    await hands.clickAt(at);
    await hands.page.keyboard.insertText(text);
    return true;
  },
  // Who scrolls goes on where they were.
  expect: (state, { on, text }, before, after) =>
    on === 'scroll bar' && state.draft
      ? typedInto(state, text, before, after)
      : cameThen(state, text, before, after),
};

const compose: Kind<readonly string[]> = {
  name: 'compose a text',
  weight: (seen) => (isOnCells(seen) ? 1 : 0),
  draw: (_seen, chance) =>
    chance.one([
      ['g', 'ga', 'がん', '岸'],
      ['4', '42'],
    ]),
  perform: async (hands, steps) => {
    const driver = await hands.context.newCDPSession(hands.page);
    for (const text of steps) {
      await driver.send('Input.imeSetComposition', {
        text,
        selectionStart: text.length,
        selectionEnd: text.length,
      });
      await hands.rest();
    }
    await driver.send('Input.insertText', { text: steps.at(-1) ?? '' });
    await driver.detach();
    await hands.rest();
    return true;
  },
  expect: (state, steps, before, after) => {
    const { place } = before;
    const takes = place && takenAt(state.book, writtenAt(state.book, place));
    return takes === undefined ? [unchanged(state)] : typedInto(state, steps.at(-1) ?? '', before, after);
  },
};

/** Text that comes without keys. */
export const keylessKinds = [kindOf(onPaper), kindOf(besidePage), kindOf(compose)];
