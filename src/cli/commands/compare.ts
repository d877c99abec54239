import { openNotebook } from '../../notebook/index.ts';
import { changeList } from '../../record/index.ts';
import { compareBooks } from '../../review/index.ts';
import { readBook } from '../books.ts';
import { AGREES, type Command, DISAGREES } from '../command.ts';
import { type Head, headOf } from '../head.ts';
import { readOptions } from '../options.ts';
import { printDifferences } from '../print-differences.ts';
import { Refused } from '../refused.ts';

/** `quaybook compare`: what changed from one book to another, and what followed from it. */
export const compare: Command = {
  name: 'compare',
  usage: 'compare OLD NEW [--json]',
  help:
    'lists what changed from one book to another, sheet by sheet: first what was entered or changed, then the results and ' +
    'verdicts that are others, by how much and from which changes; the status is 1 where anything is different',
  run: (args, output) => {
    const options = readOptions('compare', args, { json: 'alone' });
    const [oldName, newName, ...more] = options.positionals;
    if (oldName === undefined || newName === undefined || more.length > 0)
      throw new Refused('compare takes two books, OLD and NEW: files or ids of templates');
    const [before, after] = [readBook(oldName), readBook(newName)];
    const heads = { old: headOf(oldName, before), new: headOf(newName, after) };
    const [old, next] = [openNotebook(before), openNotebook(after)];
    for (const notebook of [old, next]) notebook.judgeStated();
    const compared = compareBooks(old, next);
    const { differences } = compared;
    if (options.alone('json'))
      output.print(JSON.stringify({ ...heads, ...printDifferences(compared) }, null, 2));
    else {
      const edits = differences.filter((one) => !('causes' in one)).length;
      output.print(
        [
          ...headLines('old', heads.old),
          ...headLines('new', heads.new),
          `program    ${heads.new.program}`,
          '',
          ...(differences.length === 0
            ? [sameWords(heads.old, heads.new)]
            : [`changed ${edits}, followed ${differences.length - edits}`]),
          ...changeList(compared, { before: before.sheets, after: after.sheets }, '; --json lists all'),
        ].join('\n'),
      );
    }
    return differences.length === 0 ? AGREES : DISAGREES;
  },
};

function headLines(which: string, { book, title, revision, hash }: Head): readonly string[] {
  return [
    `${which.padEnd(10)} ${book}`,
    `title      ${title || 'none stated'}`,
    `revision   ${revision || 'none stated'}`,
    `content    sha256 ${hash}`,
  ];
}

/** Two files may keep the same content by other identities, which no reader sees. */
function sameWords(old: Head, next: Head): string {
  return old.hash === next.hash
    ? 'nothing is different'
    : 'nothing is different but the identities by which the files keep lines and rows';
}
