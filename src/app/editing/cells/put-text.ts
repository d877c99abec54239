import type { Outcome } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { renameEdit } from '../lines/rename.ts';
import { cellContent } from './cell-content.ts';
import { enterText } from './cell-edits.ts';

/** The edit that puts `text` into one cell, as if typed: a symbol is renamed in every formula that uses it. */
export function putText(notebook: Notebook, place: CellPlace, text: string): Outcome<Edit> {
  const { kind } = cellContent(notebook.book, place);
  return kind === 'name' ? renameEdit({ notebook }, place, text) : enterText(notebook.book, place, text);
}
