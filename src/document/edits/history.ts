import type { Edit } from './patch.ts';

/** One edit that was made, and the edit that takes it back. */
export interface HistoryStep {
  readonly edit: Edit;
  readonly inverse: Edit;
}

/** What can be undone and redone, the latest last in each list; plain JSON data. */
export interface History {
  readonly done: readonly HistoryStep[];
  readonly undone: readonly HistoryStep[];
}

/** An edit to apply now, and the history once it is applied. */
export interface HistoryMove {
  readonly edit: Edit;
  readonly history: History;
}

/** The history of a book nobody has edited. */
export const emptyHistory: History = { done: [], undone: [] };

/** The history after an edit was made; what had been undone before can no longer be redone. */
export function record(history: History, edit: Edit, inverse: Edit): History {
  return { done: [...history.done, { edit, inverse }], undone: [] };
}

/** The edit that takes back the latest one; nothing if there is none. */
export function undo({ done, undone }: History): HistoryMove | undefined {
  const step = done.at(-1);
  if (step === undefined) return undefined;
  return { edit: step.inverse, history: { done: done.slice(0, -1), undone: [...undone, step] } };
}

/** The edit that makes again what was undone last; nothing if there is none. */
export function redo({ done, undone }: History): HistoryMove | undefined {
  const step = undone.at(-1);
  if (step === undefined) return undefined;
  return { edit: step.edit, history: { done: [...done, step], undone: undone.slice(0, -1) } };
}
