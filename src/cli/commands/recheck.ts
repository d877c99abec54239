import { openNotebook, recheckProgram, tooLargeToRecheck } from '../../notebook/index.ts';
import {
  RECHECK_LIMITS,
  RECHECK_TOLERANCE,
  recheck as recheckBook,
  reportLines,
} from '../../recheck/index.ts';
import { readBook } from '../books.ts';
import { AGREES, type Command, DISAGREES } from '../command.ts';
import { headLines, headOf } from '../head.ts';
import { readOptions } from '../options.ts';
import { Refused } from '../refused.ts';

/** `quaybook recheck`: compute a book a second time with the other engine and compare. */
export const recheck: Command = {
  name: 'recheck',
  usage: 'recheck BOOK [--json]',
  help: 'computes a book a second time with another engine and compares every value',
  run: async (args, output) => {
    const options = readOptions('recheck', args, { json: 'alone' });
    const [name, ...more] = options.positionals;
    if (name === undefined || more.length > 0)
      throw new Refused('recheck takes one BOOK: a file or a template’s id');
    const book = readBook(name);
    const head = headOf(name, book);
    const notebook = openNotebook(book);
    const reason = tooLargeToRecheck(notebook);
    if (reason !== undefined) throw new Refused(`not rechecked: ${reason}`);
    const { program, values } = recheckProgram(notebook);
    const report = await recheckBook(program, values);
    if (options.alone('json')) {
      const whole = { ...head, tolerance: RECHECK_TOLERANCE, ...report, limits: RECHECK_LIMITS };
      output.print(JSON.stringify(whole, null, 2));
    } else
      for (const line of [...headLines(head, RECHECK_TOLERANCE), '', ...reportLines(report), RECHECK_LIMITS])
        output.print(line);
    for (const finding of report.findings) output.complain(finding.message);
    return report.findings.length === 0 ? AGREES : DISAGREES;
  },
};
