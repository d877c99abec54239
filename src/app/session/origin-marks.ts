import { ChangedLines, type Notebook } from '../../notebook/index.ts';
import { otherwiseWords } from '../../record/index.ts';
import { idOfDifference, originsOf } from '../../review/index.ts';

/** What is otherwise than where its sheet came from, in words beside the lines, worked out when the person pauses. */
export interface OriginMarks {
  readonly of: (id: string) => string | undefined;
  /** Works them out anew; the lines whose marks are others. */
  readonly update: (notebook: Notebook) => ChangedLines;
}

/** Marks of a book of which nothing is known yet. */
export function createOriginMarks(): OriginMarks {
  let marks: ReadonlyMap<string, string> = new Map();
  return {
    of: (id) => marks.get(id),
    update: ({ book }) => {
      const before = marks;
      const found = originsOf(book).flatMap(({ differences }) => differences);
      marks = new Map(
        found.flatMap((one) => (one.is ? [[idOfDifference(one), otherwiseWords(one)] as const] : [])),
      );
      const ids = new Set([...before.keys(), ...marks.keys()]);
      return new ChangedLines([...ids].filter((id) => before.get(id) !== marks.get(id)));
    },
  };
}
