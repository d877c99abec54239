import { entry } from './entry.ts';
import { listed, quoted } from './wording.ts';

/** Problems of tables brought in from CSV or clipboard text. */
export const tables = {
  'column-unknown': entry<{ header: string; columns: readonly string[] }>({
    title: 'A column the table does not have',
    explain: 'A header of the text brought in matches no column of the table it is meant for.',
    words: ({ header, columns }) => ({
      message: `the table has no column ${quoted(header)}`,
      ...(columns.length > 0 && { hint: `its columns are ${listed(columns, 'and')}` }),
    }),
  }),
};
