import { type Line, lineAt, type Place, withText } from '../book.ts';
import { done } from '../changed-book.ts';
import { isTyping, type Kind, kindOf } from '../kind.ts';
import { left, type Outcome } from '../state.ts';

/** The values of a choice in the order of its list, a blank one last where the line may be blank. */
function listOf(line: Line | undefined): readonly string[] {
  const { options = [], entry = '', optional } = (line ?? {}) as Line & { readonly optional?: boolean };
  const values = options.map((one) => (typeof one === 'string' ? one : (one as { value: string }).value));
  return optional || entry === '' ? [...values, ''] : values;
}

const option: Kind<{ readonly place: Place; readonly down: number }> = {
  name: 'choose an option',
  weight: (seen, state) => (seen.dialog || seen.menu || isTyping(state) ? 0.3 : 2),
  draw: (seen, chance, state) => {
    const choices = seen.cells
      .map(({ place }) => place)
      .filter((place) => place.field === 'value' && lineAt(seen.book, place)?.kind === 'choice')
      .filter((place) => lineAt(seen.book, place)?.options && state.draft?.place.item !== place.item);
    const place = chance.one(choices);
    return place && { place, down: chance.whole(5) - 2 };
  },
  perform: async (hands, { place, down }) => {
    const at = await hands.cell(place);
    if (!at) return false;
    await hands.clickAt(at);
    await hands.rest();
    // What could not be entered is still typed in: the keys would go there.
    if ((await hands.isEditing()) && !(await hands.isEditingAt(place))) return true;
    // The list of a cell that was chosen already opens with the press.
    if (!(await hands.isEditing())) {
      if (!(await hands.isOn(place))) return true;
      await hands.press('Enter');
      await hands.rest();
    }
    for (let step = 0; step < Math.abs(down); step += 1)
      await hands.press(down > 0 ? 'ArrowDown' : 'ArrowUp');
    await hands.press('Enter');
    return true;
  },
  expect: (state, { place, down }, _before, after) =>
    left(state, after).flatMap((gone): readonly Outcome[] => {
      if (gone.editor.kind !== 'closed') return [gone];
      const list = listOf(lineAt(gone.book, place));
      const at = list.indexOf(lineAt(gone.book, place)?.entry ?? '');
      // What no option is called stands before all of them, and stays unless another is chosen.
      if (at < 0 && down <= 0) return [gone];
      const value = list[Math.max(0, Math.min(at + down, list.length - 1))] ?? '';
      const same = lineAt(gone.book, place)?.entry === value;
      const chosen = same ? gone : done({ ...state, ...gone }, withText(gone.book, place, value));
      // Lines may have moved under the pointer once something else was entered.
      return isTyping(state) ? [chosen, gone] : [chosen];
    }),
};

/** What is chosen from lists, which methods go by. */
export const choiceKinds = [kindOf(option)];
