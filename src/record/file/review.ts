import type { Comment } from '../../document/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { type Checked, coverageOf, findSubject, signaturesOf, USUAL_TOLERANCE } from '../../review/index.ts';
import { checkedLine, goneWords, saidWords, sinceSignature } from '../checked-lines.ts';
import { groupedSheets } from '../findings/grouped-sheets.ts';
import { shortHash } from '../paper/page-rules.ts';
import { section } from './head.ts';
import { idOfLine, linkTo, type RecordSource } from './source.ts';
import { paragraphs, table } from './tables.ts';

/** So many changes since a signature are told. */
const MOST_CHANGES = 20;

/** What the checker said: coverage by sheet, hand values, marks at the source, and comments with their answers. */
export function checkingSection(source: RecordSource): Markup {
  const { book } = source;
  const { all, gone } = source.checking;
  const said = (is: (one: Checked) => boolean): readonly Checked[] => all.filter(is);
  const tolerance = book.review.tolerance ?? USUAL_TOLERANCE;
  return section(
    'checking',
    'Checking by hand',
    element('p', {}, `Hand values agree within ${tolerance} where they state no other tolerance.`),
    coverageTable(source, all),
    checkedTable(
      source,
      'Hand values',
      said(({ hand }) => hand !== undefined),
    ),
    checkedTable(
      source,
      'Seen at their source',
      said(({ hand, seen }) => !hand && seen !== undefined),
    ),
    gone.length === 0
      ? none
      : [
          element('p', {}, 'Of lines that are gone:'),
          element(
            'ul',
            {},
            gone.map((one) => element('li', {}, goneWords(one))),
          ),
        ],
    comments(source),
  );
}

function coverageTable({ book }: RecordSource, all: readonly Checked[]): Markup {
  const states = ['agrees', 'seen', 'differs', 'not comparable', 'stale', 'not checked'] as const;
  const row = (name: string, some: readonly Checked[]) => {
    const count = coverageOf(some);
    return { cells: [name, `${count.all}`, ...states.map((state) => `${count[state]}`)] };
  };
  const sheets = [...groupedSheets(book).values()].flat();
  const heads = ['Results and entries', ...states].map((head) => ({ head, class: 'number' as const }));
  return table(
    'Coverage',
    [{ head: 'Sheet' }, ...heads],
    [
      ...sheets.map(({ key, title }) =>
        row(
          title || key,
          all.filter(({ item }) => item.sheet === key),
        ),
      ),
      { class: 'total', ...row('the whole book', all) },
    ],
  );
}

function checkedTable({ notebook }: RecordSource, title: string, some: readonly Checked[]): Content {
  if (some.length === 0) return element('p', { class: 'quiet' }, `${title}: none.`);
  const rows = some.map((one) => ({
    cells: [
      linkTo(idOfLine(one.item.id), checkedLine(notebook, one)),
      one.state,
      (one.hand ?? one.seen)?.note ?? '',
    ],
  }));
  return table(title, [{ head: title }, { head: 'State' }, { head: 'Note' }], rows);
}

function comments(source: RecordSource): Content {
  const list = source.book.review.comments;
  if (list.length === 0) return element('p', { class: 'quiet' }, 'Comments: none.');
  const rows = list.map((comment) => ({
    cells: [
      onWords(source, comment),
      [
        paragraphs(comment.text),
        element('p', { class: 'quiet' }, saidWords(comment)),
        comment.answers.map((answer) => element('p', {}, `answered: ${answer.text} (${saidWords(answer)})`)),
      ],
      stateOf(comment),
    ],
  }));
  return table('Comments', [{ head: 'On' }, { head: 'Comment and answers' }, { head: 'State' }], rows);
}

function stateOf({ closed }: Comment): string {
  return closed ? `closed by ${saidWords(closed)}` : 'open';
}

/** What a comment is on: a line or cell by its name, or the whole book. */
function onWords({ notebook }: RecordSource, { of, called = 'a line that is gone' }: Comment): Content {
  if (!of) return 'the whole book';
  const found = findSubject(notebook.model, of);
  if (!found) return called;
  const row = found.row === undefined ? '' : `, row ${found.row + 1}`;
  return linkTo(idOfLine(found.item.id), `${found.item.id}${row}`);
}

/** Whose names stand under the book, whether they still hold, and what was issued. */
export function signingSection(source: RecordSource): Markup {
  const { notebook, book } = source;
  const signed = signaturesOf(notebook).map((standing) => {
    const { signature, holds } = standing;
    const { role, by, date = '', content, despite } = signature;
    const since = sinceSignature(notebook, standing, MOST_CHANGES).join('; ');
    return {
      cells: [
        role,
        by,
        date,
        shortHash(content),
        holds ? 'holds for this content' : `does not hold for this content: ${since}`,
        despite
          ? [element('p', {}, despite.reason), element('p', { class: 'quiet' }, despite.open.join('; '))]
          : '',
      ],
    };
  });
  const issued = book.review.revisions.map(({ label, by, date = '', content, note = '' }) => ({
    cells: [
      label,
      by,
      date,
      shortHash(content),
      note,
      content === source.hash ? 'this content' : 'changed since',
    ],
  }));
  const heads = (...list: readonly string[]) => list.map((head) => ({ head }));
  return section(
    'signing',
    'Signatures and revisions',
    element(
      'p',
      { class: 'quiet' },
      'A signature here is a name written under one content of the book. Nothing proves who wrote it; it shows whether the content is still the one it was put under.',
    ),
    signed.length === 0
      ? element('p', { class: 'quiet' }, 'Nobody has signed.')
      : table('Signatures', heads('As', 'By', 'Date', 'Content', 'Standing', 'Signed although'), signed),
    issued.length === 0
      ? element('p', { class: 'quiet' }, 'No revision is issued.')
      : table('Revisions', heads('Revision', 'By', 'Date', 'Content', 'Note', 'This record'), issued),
  );
}
