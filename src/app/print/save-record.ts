import type { Book } from '../../document/index.ts';
import { PROGRAM_VERSION, writeRecord } from '../../record/index.ts';
import { download } from '../storage/download.ts';
import { fileNameOf } from '../storage/file-name.ts';

/** Offers the record of a book as a file, and gives its name. The same book gives the same file on the command line. */
export function saveRecord(book: Book): string {
  const { project, subject } = book.title;
  const name = fileNameOf(`${project || subject || 'book'} record`, '.html');
  download(name, writeRecord({ book, program: `Quaybook ${PROGRAM_VERSION}`, recheck: [] }), 'text/html');
  return name;
}
