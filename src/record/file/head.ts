import { FORMAT_VERSION, type Title } from '../../document/index.ts';
import { type Content, element, type Markup } from '../../markup/index.ts';
import { originsOf } from '../../review/index.ts';
import { countStated } from '../findings/count-stated.ts';
import { findingsOf, isByStated } from '../findings/findings.ts';
import { shortHash } from '../paper/page-rules.ts';
import { countedDo, countWords } from '../values/count-words.ts';
import { linkTo, type RecordSource } from './source.ts';
import { terms } from './tables.ts';

const fields: readonly (readonly [label: string, field: keyof Title])[] = [
  ['Project', 'project'],
  ['Subject', 'subject'],
  ['Job', 'job'],
  ['Client', 'client'],
  ['Prepared', 'prepared'],
  ['Checked', 'checked'],
  ['Date', 'date'],
  ['Revision', 'revision'],
];

/** The title block, every field of it: one that is blank says so. */
export function titleBlock({ book: { title } }: RecordSource): Markup {
  return terms(
    fields.map(([label, field]) => [label, title[field] || '–']),
    'title-block',
  );
}

/** What the record is called: project and subject, or that the book has neither. */
export function titleWords({ book: { title } }: RecordSource): string {
  return (
    [title.project, title.subject].filter((one) => one !== '').join(', ') || 'Calculation without a title'
  );
}

/** The state of the book that is recorded. */
export function stateSection(source: RecordSource): Markup {
  const { notebook, book, hash, program } = source;
  const { problems, remarks } = findingsOf(notebook);
  return element(
    'section',
    { id: 'state' },
    element('h2', {}, 'State of this record'),
    terms([
      ['Checks', checkWords(source)],
      [
        'To look after',
        `${countWords(problems.length, 'problem')}, ${countWords(remarks.length, 'remark')}, ${countWords(countStated(notebook), 'stated value')}`,
      ],
      [
        'Inputs',
        book.example
          ? element(
              'b',
              { class: 'fails' },
              `those of “${book.example.title}”, a case of the template ${book.example.template}, stand in place of the book’s own`,
            )
          : '',
      ],
      ['Origin', originWords(source)],
      ['Units', 'as written in the book'],
      ['Content', ['SHA-256 ', element('code', { class: 'hash' }, hash), ` (in short: ${shortHash(hash)})`]],
      ['Written by', `${program}, book format ${FORMAT_VERSION}`],
      [
        'The book itself',
        'This file carries the whole book. Opened with Quaybook it is the book again, with the content above.',
      ],
    ]),
  );
}

/** Whether lines of sheets that came from a template or another book are not as they came. */
function originWords({ book }: RecordSource): Content {
  const origins = originsOf(book);
  if (origins.length === 0) return '';
  const count = origins.reduce((sum, { differences }) => sum + differences.length, 0);
  if (count === 0) return 'every line is as it came, but for what is entered';
  return linkTo('origin', `${countWords(count, 'line')} not as ${count === 1 ? 'it' : 'they'} came`);
}

function checkWords({ notebook }: RecordSource): string {
  const { checks } = findingsOf(notebook);
  const applying = checks.filter(({ inapplicable }) => !inapplicable);
  if (checks.length === 0) return 'the book has no check';
  const count = (is: (one: (typeof checks)[number]) => boolean): number => applying.filter(is).length;
  const holding = count(({ verdict }) => verdict?.holds === true);
  const failing = count(({ verdict }) => verdict?.holds === false);
  const open = applying.length - holding - failing;
  const beyond = count(({ verdict }) => verdict?.holds === true && verdict.outOfRange !== undefined);
  const byStated = count((one) => isByStated(notebook, one));
  const idle = checks.length - applying.length;
  return [
    `${holding} of ${countedDo(applying.length, 'check', 'hold')}`,
    ...(beyond === 0 ? [] : [`${beyond} of these on values beyond their ranges`]),
    ...(byStated === 0 ? [] : [`${byStated} of these only by stated values`]),
    countedDo(failing, 'check', 'fail'),
    ...(open === 0 ? [] : [`${open} without a value`]),
    ...(idle === 0 ? [] : [`${idle} more not applying`]),
  ].join(', ');
}

/** A heading with what stands under it. */
export function section(id: string, title: string, ...content: readonly Content[]): Markup {
  return element('section', { id }, element('h2', {}, title), content);
}
