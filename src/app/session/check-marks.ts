import { ChangedLines, type Notebook } from '../../notebook/index.ts';
import { type CheckState, checkingOf } from '../../review/index.ts';

/** How far a line has come in checking, and who said so. */
export interface CheckMark {
  readonly state: CheckState;
  readonly by: string;
  /** How many comments on it are open. */
  readonly open: number;
}

/** The marks of the checker beside the lines, worked out when the person pauses. */
export interface CheckMarks {
  readonly of: (id: string) => CheckMark | undefined;
  /** Works them out anew; the lines whose marks are others. */
  readonly update: (notebook: Notebook) => ChangedLines;
}

/** Marks of a book of which nothing is known yet. */
export function createCheckMarks(): CheckMarks {
  let marks: ReadonlyMap<string, CheckMark> = new Map();
  return {
    of: (id) => marks.get(id),
    update: (notebook) => {
      const before = marks;
      marks = marksOf(notebook);
      const ids = new Set([...before.keys(), ...marks.keys()]);
      return new ChangedLines([...ids].filter((id) => !areAlike(before.get(id), marks.get(id))));
    },
  };
}

function areAlike(a: CheckMark | undefined, b: CheckMark | undefined): boolean {
  return a?.state === b?.state && a?.by === b?.by && a?.open === b?.open;
}

function marksOf(notebook: Notebook): ReadonlyMap<string, CheckMark> {
  const { handValues, seen, comments } = notebook.book.review;
  if (handValues.length + seen.length + comments.length === 0) return new Map();
  const found = new Map<string, CheckMark>();
  for (const { item, row, state, hand, seen: mark, open } of checkingOf(notebook).all) {
    // Cells have their marks in the panel and on the page of what was checked.
    if (row !== undefined || (!hand && !mark && open.length === 0)) continue;
    found.set(item.id, { state, by: (hand ?? mark)?.by ?? '', open: open.length });
  }
  return found;
}
