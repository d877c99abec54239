import { isSame, type Line, type Place, partAt, tableRowAt } from '../book.ts';
import { done, grown, seenWithoutNew, withRow } from '../changed-book.ts';
import { type Kind, kindOf } from '../kind.ts';
import { left, type Outcome } from '../state.ts';
import { stillOpen } from './pointer.ts';

/** What the menu of a line puts below it. */
const insertions = ['a given value', 'a calculation', 'a check', 'a choice', 'a text', 'a heading'];

interface Choice {
  readonly place: Place;
  readonly words: string;
}

const insert: Kind<Choice> = {
  name: 'insert by the menu',
  weight: () => 0.6,
  draw: (seen, chance) => {
    const own = seen.cells
      .map(({ place }) => place)
      .filter((place) => partAt(seen.book, place) && tableRowAt(seen.book, place) === undefined);
    const place = chance.one(own.filter(({ item, field }) => item !== 'head' && field !== 'unit'));
    const words = chance.one(insertions);
    return place && words !== undefined ? { place, words } : undefined;
  },
  perform: async (hands, { place, words }) => {
    const at = await hands.cell(place);
    if (!at) return false;
    await hands.clickAt(at, { button: 'right' });
    await hands.rest();
    const item = hands.page.getByRole('menuitem', { name: words, exact: true });
    // An entry that is refused keeps the person with it; a drawing has another menu.
    if (await item.isVisible()) await item.click();
    else if (await hands.sees('quay-sheet-menu:popover-open')) await hands.press('Escape');
    await hands.rest();
    return true;
  },
  expect: (state, { place }, _before, after) => {
    // A field that is typed in has a menu of its own.
    if (isSame(state.draft?.place, place)) return [stillOpen(state)];
    const isOne = (fresh: readonly Line[]): boolean => fresh.length === 1;
    return left(state, seenWithoutNew(after, state)).flatMap((gone): readonly Outcome[] =>
      gone.editor.kind !== 'closed'
        ? [gone]
        : [{ ...grown(gone, after, isOne), editor: { kind: 'any' } }, gone],
    );
  },
};

const addRow: Kind<string> = {
  name: 'add a row below a table',
  weight: () => 0.5,
  draw: (seen, chance) => {
    const sheet = seen.book.sheets.find(({ key }) => key === seen.sheet);
    return chance.one(sheet?.parts.filter(({ columns, length }) => columns && length !== undefined) ?? [])
      ?.id;
  },
  perform: async (hands, part) => {
    const at = await hands.element(`quay-table[data-part="${part}"] [data-add-row]`);
    if (at) await hands.clickAt(at);
    return at !== undefined;
  },
  expect: (state, part, before, after) =>
    left(state, after).flatMap((gone): readonly Outcome[] => {
      const table = { sheet: before.sheet, part, item: 'head', field: '' };
      const { length } = partAt(gone.book, table) ?? {};
      if (gone.editor.kind !== 'closed' || length === undefined) return [gone];
      const longer = done(gone, withRow(gone.book, table, length));
      // What was entered may have moved the button away from the pointer.
      return state.draft ? [longer, gone] : [longer];
    }),
};

/** What is put in by menus and buttons. */
export const menuKinds = [kindOf(insert), kindOf(addRow)];
