import { realpathSync } from 'node:fs';
import { resolve } from 'node:path';
import { PROGRAM_VERSION, writeRecord } from '../../record/index.ts';
import { readBook } from '../books.ts';
import { AGREES, type Command } from '../command.ts';
import { readOptions } from '../options.ts';
import { Refused } from '../refused.ts';
import { writeText } from '../write-text.ts';

/** `quaybook record`: write the record of a book, the file that is printed and filed. */
export const record: Command = {
  name: 'record',
  usage: 'record BOOK --out FILE.html',
  help: 'writes the record of a book: one page for any browser, to print and to file, that carries the book itself',
  run: (args, output) => {
    const options = readOptions('record', args, { out: 'once' });
    const [name, ...more] = options.positionals;
    if (name === undefined || more.length > 0)
      throw new Refused('record takes one BOOK: a file or a template’s id');
    const out = options.once('out');
    if (out === undefined || out === '')
      throw new Refused('record wants --out FILE.html, the file that it writes');
    const book = readBook(name);
    if (isSameFile(name, out))
      throw new Refused(`${out} is the book itself; name another file for its record`);
    const text = writeRecord({ book, program: `Quaybook ${PROGRAM_VERSION}`, recheck: [] });
    writeText(out, text);
    output.print(`the record is in ${out}`);
    return AGREES;
  },
};

/** Whether two paths lead to one file; one that is not there is no file yet. */
function isSameFile(a: string, b: string): boolean {
  const real = (path: string): string => {
    try {
      return realpathSync(path);
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return resolve(path);
      throw error;
    }
  };
  return real(a) === real(b);
}
