import type { Prose } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import type { CellPlace } from '../view-model/place.ts';

/** Words of the book that somebody has to look after. */
export interface ListedWords {
  readonly text: string;
  readonly place: CellPlace;
}

/** All prose of a role that says something. */
export function listProse(notebook: Notebook, role: Prose['role']): readonly ListedWords[] {
  return notebook.book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) =>
      part.kind === 'prose' && part.role === role && part.text.trim() !== ''
        ? [{ text: part.text, place: { sheet: key, part: part.id, item: '', field: 'text' } }]
        : [],
    ),
  );
}
