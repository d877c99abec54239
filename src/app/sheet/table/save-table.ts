import { findSheet } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import { download } from '../../storage/download.ts';
import { fileNameOf } from '../../storage/file-name.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { tableCsv } from './table-csv.ts';

/** Tells spreadsheets that the file is UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';

/** Offers the table at a place as a CSV file of its name. */
export function saveTable(notebook: Notebook, { sheet, part }: CellPlace): void {
  const table = findSheet(notebook.book, sheet)?.parts.find(({ id }) => id === part);
  if (table?.kind === 'table')
    download(
      fileNameOf(table.name, '.csv'),
      `${BYTE_ORDER_MARK}${tableCsv(notebook, sheet, table)}`,
      'text/csv',
    );
}
