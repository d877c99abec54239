import { isOnCells, isTyping, type Kind, kindOf } from '../kind.ts';
import { left, type Outcome, type State, unchanged } from '../state.ts';
import { stillOpen } from './pointer.ts';

/** The draft is where it was, or where it belongs. */
function leftOrHeld(state: State, gone: readonly Outcome[]): readonly Outcome[] {
  if (!state.draft) return gone;
  // A field of the title block has the focus again, with what was entered in it.
  const again =
    state.draft.place.part === 'title block'
      ? gone.map((one): Outcome => ({ ...one, editor: { kind: 'any' } }))
      : [];
  return [...gone, stillOpen(state), ...again];
}

/** The draft must not change by itself. */
const held = (state: State): readonly Outcome[] => [state.draft ? stillOpen(state) : unchanged(state)];

/** Pressing something beside the page. */
function press(
  name: string,
  weight: number,
  selectorOf: (args: string) => string,
  choices: readonly string[],
): Kind<string> {
  return {
    name,
    weight: (seen, state) => (seen.dialog ? 0 : isTyping(state) ? 2 * weight : weight),
    draw: (_seen, chance) => chance.one(choices),
    perform: async (hands, args) => {
      const at = await hands.element(selectorOf(args));
      if (at) await hands.clickAt(at);
      return at !== undefined;
    },
    expect: (state, _args, _before, after) => left(state, after),
  };
}

const sheets: Kind<string> = {
  ...press('turn to a sheet', 2, (key) => `quay-sheet-list [data-sheet="${key}"]`, []),
  draw: (seen, chance) => chance.one(seen.book.sheets)?.key,
  expect: (state, sheet, _before, after) =>
    left(state, after).map((one) => (one.editor.kind === 'closed' ? { ...one, sheet } : one)),
};

const units = press('show units', 0.8, (view) => `quay-top-bar label:has-text("${view}")`, [
  'as written',
  'SI',
  'US',
]);
const overview = press('look at all checks', 0.3, () => 'quay-sheet-list .overview', ['']);
const panel = press('go by the panel', 0.8, (at) => `quay-side-panel li:nth-child(${at}) button`, [
  '1',
  '2',
  '3',
]);
const panelPaper = press('click the panel', 0.5, () => 'quay-side-panel .label', ['']);
const counts = press('open the list of problems', 0.2, () => 'quay-status-bar button', ['']);
const bar = press('click the bar', 0.4, () => 'quay-top-bar h1', ['']);

const turn: Kind<string> = {
  name: 'turn by a key',
  weight: (seen) => (isOnCells(seen) ? 0.7 : 0),
  draw: (_seen, chance) => chance.one(['Control+PageDown', 'Control+PageUp']),
  perform: async (hands, key) => {
    await hands.press(key);
    return true;
  },
  expect: (state) => [unchanged(state)],
};

const scroll: Kind<number> = {
  name: 'scroll',
  weight: () => 2.5,
  draw: (_seen, chance) => Math.round((chance.number() - 0.35) * 1600),
  perform: async (hands, by) => {
    const at = await hands.element('quay-sheet');
    if (!at) return false;
    const { width = 1440, height = 900 } = hands.page.viewportSize() ?? {};
    await hands.page.mouse.move(width / 2, height / 2);
    await hands.page.mouse.wheel(0, by);
    await hands.rest();
    return true;
  },
  expect: held,
};

const resize: Kind<{ readonly width: number; readonly height: number }> = {
  name: 'resize',
  weight: () => 0.5,
  draw: (_seen, chance) => ({
    width: chance.one([400, 700, 1000, 1000 + chance.whole(500), 1440]) ?? 1440,
    height: 620 + chance.whole(320),
  }),
  perform: async (hands, size) => {
    await hands.page.setViewportSize(size);
    await hands.rest();
    return true;
  },
  expect: held,
};

const dialogs = { 'Control+g': 'go to', '?': 'keys' } as const;

const dialog: Kind<keyof typeof dialogs> = {
  name: 'open and close a dialog',
  weight: (_seen, state) => (isTyping(state) ? 1.5 : 0.5),
  draw: (seen, chance) => (seen.editor ? 'Control+g' : chance.one(['Control+g', '?'] as const)),
  perform: async (hands, key) => {
    await hands.press(key);
    await hands.rest();
    // An entry that is refused keeps the person with it: then there is no dialog to leave.
    if (await hands.sees('dialog[open]')) await hands.press('Escape');
    await hands.rest();
    return true;
  },
  expect: (state, _args, _before, after) => leftOrHeld(state, left(state, after)),
};

const goTo: Kind<string> = {
  name: 'go to a name',
  weight: () => 0.6,
  draw: (seen, chance) => {
    const rows = chance.one(seen.book.sheets)?.parts.flatMap((part) => part.rows ?? []) ?? [];
    return chance.one(rows)?.name;
  },
  perform: async (hands, name) => {
    await hands.press('Control+g');
    await hands.rest();
    if (!(await hands.sees('dialog[open]'))) return true;
    await hands.page.keyboard.type(name);
    await hands.rest();
    await hands.press('Enter');
    await hands.rest();
    return true;
  },
  expect: (state, _args, _before, after) => left(state, after),
};

const elsewhere: Kind<null> = {
  name: 'turn to another window and back',
  weight: (_seen, state) => (isTyping(state) ? 1 : 0.1),
  draw: () => null,
  perform: async (hands) => {
    await hands.lookElsewhere();
    return true;
  },
  expect: (state, _args, _before, after) => leftOrHeld(state, left(state, after)),
};

/** After a reload the draft is in the book, or in hand, or told of; what could be undone may be gone. */
function afterReload(state: State, after: Parameters<typeof left>[1]): readonly Outcome[] {
  const { draft } = state;
  const gone = left(state, after).map((one): Outcome => ({ ...one, pastKnown: false }));
  if (!draft?.typed) return gone;
  const kept: Outcome = {
    ...unchanged(state, { kind: 'holds', place: draft.place, text: draft.text, typed: true }),
    pastKnown: false,
  };
  const told: Outcome = { ...unchanged(state), said: draft.text, pastKnown: false };
  return [...gone, kept, told];
}

const reload: Kind<null> = {
  name: 'reload',
  weight: (_seen, state) => (isTyping(state) ? 0.8 : 0.4),
  draw: () => null,
  perform: async (hands) => {
    await hands.kept();
    await hands.reload();
    return true;
  },
  expect: (state, _args, _before, after) => afterReload(state, after),
};

const reopen: Kind<null> = {
  ...reload,
  name: 'close the tab and open it again',
  weight: (_seen, state) => (isTyping(state) ? 0.5 : 0.2),
  perform: async (hands) => {
    await hands.kept();
    await hands.reopen();
    return true;
  },
};

/** What is done beside the page. */
export const aroundKinds = [
  ...[sheets, units, overview, panel, panelPaper, counts, bar, turn, goTo].map(kindOf),
  kindOf(scroll),
  kindOf(resize),
  kindOf(dialog),
  kindOf(elsewhere),
  kindOf(reload),
  kindOf(reopen),
];
