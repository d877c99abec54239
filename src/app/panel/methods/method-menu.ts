import { type Edit, optionWords } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import { chooseOption } from '../../editing/methods/change-methods.ts';
import type { Chooser } from '../../editing/methods/choosers.ts';
import type { MethodLine } from '../../editing/methods/method-line.ts';
import type { MenuItem } from '../../sheet/menu/popup-menu.ts';
import type { MethodText } from '../../view-model/place.ts';

/** What can be done with one method. */
export interface MethodDeeds {
  readonly edit: (field: MethodText) => void;
  readonly serve: () => void;
  readonly shift: (step: 1 | -1) => void;
  readonly keep: () => void;
  readonly drop: () => void;
  readonly choose: (edit: Edit) => void;
}

/** So many options of one method are offered to be chosen. */
const MOST_CHOSEN = 3;

/** The menu of a method: what is possible with it as it stands. */
export function methodMenu(
  notebook: Notebook,
  { line }: MethodLine,
  id: string,
  chooser: Chooser | undefined,
  deeds: MethodDeeds,
): readonly MenuItem<() => void>[] {
  const { methods = [] } = line;
  const at = methods.findIndex((one) => one.id === id);
  const named = (index: number): boolean => methods[index]?.for !== undefined;
  const chosen = chooser?.kind === 'choice' ? (methods[at]?.for ?? []).slice(0, MOST_CHOSEN) : [];
  return [
    ...chosen.flatMap((option): readonly MenuItem<() => void>[] => {
      const known = chooser?.options.find(({ value }) => value === option);
      const edit = chooser && known && chooser.now !== option && chooseOption(notebook, chooser, option);
      const words = `Choose “${optionWords(chooser?.options, option)}” in ${chooser?.by}`;
      return edit ? [{ words, action: () => deeds.choose(edit) }] : [];
    }),
    { words: 'Change the formula', action: () => deeds.edit('formula') },
    { words: 'Change the source', action: () => deeds.edit('reference') },
    { words: 'Change the note', action: () => deeds.edit('note') },
    { words: 'Change what it is for', action: deeds.serve },
    ...(at > 0 && named(at) ? [{ words: 'Move up', key: 'Alt+↑', action: () => deeds.shift(-1) }] : []),
    ...(named(at) && named(at + 1)
      ? [{ words: 'Move down', key: 'Alt+↓', action: () => deeds.shift(1) }]
      : []),
    { words: 'Keep it as the one formula', action: deeds.keep },
    ...(methods.length > 1 ? [{ words: 'Remove', action: deeds.drop }] : []),
  ];
}
