import {
  acceptCompletion,
  closeCompletion,
  completionStatus,
  currentCompletions,
  moveCompletionSelection,
  selectedCompletionIndex,
} from '@codemirror/autocomplete';
import { Prec } from '@codemirror/state';
import { type EditorView, keymap } from '@codemirror/view';
import type { CommitMove } from '../cell-edit.ts';
import { completingAt } from '../completion/completing-at.ts';

/** What the keys of the formula editor bring about. */
export interface FormulaActions {
  readonly commit: (move: CommitMove) => void;
  readonly cancel: () => void;
  /** Takes the first remedy; false if there is none. */
  readonly fix: () => boolean;
  /** Whether what is written at the caret is still to be finished. */
  readonly unfinished: (view: EditorView) => boolean;
}

/**
 * Enter takes a completion once one is chosen, or while the word at the caret means nothing yet; else it commits.
 * Tab takes the chosen or first completion, unless the word is written out. Escape closes the list, then cancels.
 */
export function formulaKeys({ commit, cancel, fix, unfinished }: FormulaActions) {
  const taken = (view: EditorView, first: boolean): boolean => {
    if (completionStatus(view.state) !== 'active') return false;
    if (selectedCompletionIndex(view.state) === null || (selectedCompletionIndex(view.state) ?? -1) < 0) {
      if (!first) return false;
      moveCompletionSelection(true)(view);
    }
    return acceptCompletion(view);
  };
  const enter = (view: EditorView): boolean => {
    if (!taken(view, unfinished(view) && isBegun(view))) commit('down');
    return true;
  };
  const tab = (view: EditorView): boolean => {
    if (!taken(view, isBegun(view) && !isWrittenOut(view))) commit('right');
    return true;
  };
  const leave = (move: CommitMove) => () => {
    commit(move);
    return true;
  };
  return Prec.highest(
    keymap.of([
      { key: 'Enter', run: enter, shift: leave('up') },
      { key: 'Tab', run: tab, shift: leave('left') },
      {
        key: 'Alt-Enter',
        run: () => {
          fix();
          return true;
        },
      },
      {
        key: 'Escape',
        run: (view) => {
          if (!closeCompletion(view)) cancel();
          return true;
        },
      },
    ]),
  );
}

/** What stands at the caret of the word that is being written. */
function wordAt({ state }: EditorView): string {
  const { head } = state.selection.main;
  const text = state.doc.toString();
  return text.slice(completingAt(text, head).from, head);
}

function isBegun(view: EditorView): boolean {
  return wordAt(view) !== '';
}

function isWrittenOut(view: EditorView): boolean {
  const word = wordAt(view);
  return currentCompletions(view.state).some(({ label }) => label === word);
}
