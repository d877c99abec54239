import type { Notebook } from '../../notebook/index.ts';
import { countWords } from '../values/count-words.ts';
import { type LeftOver, notYetWords } from '../values/not-yet-words.ts';
import { findingsOf, isByStated, sheetOf } from './findings.ts';

/** How a sheet stands, for the list of sheets. */
export interface SheetState {
  readonly problems: number;
  readonly failing: number;
  /** Checks that have no value yet. */
  readonly open: number;
  /** Checks that hold and rest on values beyond their permitted ranges. */
  readonly beyond: number;
  /** Checks that hold only by stated values. */
  readonly byStated: number;
  /** Checks that apply. */
  readonly checks: number;
}

/** Problems and checks of every sheet, by key. */
export function sheetStates(notebook: Notebook): ReadonlyMap<string, SheetState> {
  const { problems, checks } = findingsOf(notebook);
  const states = new Map(
    notebook.book.sheets.map(({ key }) => [
      key,
      { problems: 0, failing: 0, open: 0, beyond: 0, byStated: 0, checks: 0 },
    ]),
  );
  for (const found of problems) {
    const state = states.get(sheetOf(found));
    if (state) state.problems += 1;
  }
  for (const found of checks) {
    const { item, verdict, inapplicable } = found;
    const state = states.get(item.sheet);
    if (!state || inapplicable) continue;
    state.checks += 1;
    if (!verdict) state.open += 1;
    else if (!verdict.holds) state.failing += 1;
    else if (verdict.outOfRange) state.beyond += 1;
    else if (isByStated(notebook, found)) state.byStated += 1;
  }
  return states;
}

/** The state of a sheet in words, `left` being the work of the book left over; `bad` where something is to be mended. */
export function stateWords(
  { problems, failing, open, beyond, byStated, checks }: SheetState,
  left: LeftOver | undefined,
): { readonly words: string; readonly bad: boolean } {
  const fails = failing === 0 ? [] : [`${countWords(failing, 'check')} ${failing === 1 ? 'fails' : 'fail'}`];
  const told = [...fails, ...(problems === 0 ? [] : [countWords(problems, 'problem')])];
  if (told.length > 0) return { words: told.join(', '), bad: true };
  if (open > 0) return { words: notYetWords(left) ?? 'no verdict', bad: false };
  if (beyond > 0) return { words: 'holds, beyond range', bad: false };
  if (byStated > 0) return { words: 'holds by stated values', bad: false };
  return { words: checks > 0 ? 'holds' : '', bad: false };
}
