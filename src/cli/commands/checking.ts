import { openNotebook } from '../../notebook/index.ts';
import { checkedLine, goneWords, saidWords } from '../../record/index.ts';
import { type Checked, checkingOf, coverageOf, USUAL_TOLERANCE } from '../../review/index.ts';
import { readBook } from '../books.ts';
import { AGREES, type Command, DISAGREES } from '../command.ts';
import { headLines, headOf } from '../head.ts';
import { readOptions } from '../options.ts';
import { Refused } from '../refused.ts';

/** `quaybook checking`: how far the checking of a book by hand has come. */
export const checking: Command = {
  name: 'checking',
  usage: 'checking BOOK [--json]',
  help: 'tells what of a book was checked by hand, what differs, and what is stale since something it rests on has changed',
  run: (args, output) => {
    const options = readOptions('checking', args, { json: 'alone' });
    const [name, ...more] = options.positionals;
    if (name === undefined || more.length > 0)
      throw new Refused('checking takes one BOOK: a file or a template’s id');
    const book = readBook(name);
    const notebook = openNotebook(book);
    const { all, gone, open } = checkingOf(notebook);
    const tolerance = `${book.review.tolerance ?? USUAL_TOLERANCE} where a hand value states no other`;
    const head = headOf(name, book);
    const comments = [...all.flatMap((one) => one.open), ...open];
    const wrong = all.filter(
      ({ state }) => state === 'differs' || state === 'stale' || state === 'not comparable',
    );
    const lines = wrong.map((one) => checkedLine(notebook, one));
    if (options.alone('json')) {
      const told = all
        .filter(({ hand, seen }) => hand ?? seen)
        .map((one) => printed(one, checkedLine(notebook, one)));
      const whole = { ...head, tolerance, coverage: coverageOf(all), checked: told, gone, comments };
      output.print(JSON.stringify(whole, null, 2));
    } else {
      for (const line of headLines(head, tolerance)) output.print(line);
      output.print('');
      for (const { key, title } of book.sheets) output.print(sheetLine(title || key, all, key));
      for (const comment of comments)
        output.print(
          `open comment  ${comment.called ?? 'the book'}: ${comment.text} (${saidWords(comment)})`,
        );
      for (const one of gone) output.print(`of a line that is gone  ${goneWords(one)}`);
    }
    for (const line of lines) output.complain(line);
    return lines.length === 0 && comments.length === 0 ? AGREES : DISAGREES;
  },
};

function sheetLine(title: string, all: readonly Checked[], sheet: string): string {
  const count = coverageOf(all.filter(({ item }) => item.sheet === sheet));
  const parts = [
    `${count.agrees + count.seen} of ${count.all} checked`,
    ...(count.differs > 0 ? [`${count.differs} differ`] : []),
    ...(count['not comparable'] > 0 ? [`${count['not comparable']} cannot be compared`] : []),
    ...(count.stale > 0 ? [`${count.stale} stale`] : []),
  ];
  return `${title}: ${parts.join(', ')}`;
}

/** One thing that was checked, as data. */
function printed({ item, row, is, state, hand, seen, changes }: Checked, words: string) {
  return {
    id: item.id,
    ...(row !== undefined && { row: row + 1 }),
    is,
    state,
    ...(hand && { hand: hand.entry }),
    by: (hand ?? seen)?.by,
    ...(changes.length > 0 && { changes }),
    words,
  };
}
