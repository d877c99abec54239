import { html, nothing, type TemplateResult } from 'lit';
import { type Outcome, type Problem, problem } from '../../../diagnostics/index.ts';
import {
  blankMeanings,
  type Edit,
  emptiedColumns,
  type GivenColumn,
  type Table,
} from '../../../document/index.ts';
import type { ReadTable } from '../../../tables/index.ts';
import { writeNumber } from '../../../units/index.ts';
import { accountNumbers } from '../../editing/clipboard/account.ts';
import type { Becomes, Others } from '../../editing/clipboard/what-becomes.ts';
import type { Where } from '../../editing/clipboard/where.ts';
import {
  accountIn,
  blankedWords,
  deletedWords,
  namesOf,
  openWords,
  twiceWords,
} from '../../editing/lines/describe-insertion.ts';
import type { RowsReading } from './rows-reading.ts';

/** The most problems, and the most cells without a value, that are named one by one. */
const MOST = 8;

/** What the text may have, said as long as there is none. */
export function columnsExpected(table: Table): TemplateResult {
  return html`<p class="quiet">
      The first line names the columns by symbol or heading, with a unit in brackets where it is another one:
      “thickness (m)”. What it calls otherwise can be told where it goes. The columns are
    </p>
    <ul class="columns">
      ${table.columns.map((column) => (column.kind === 'given' ? columnLine(column) : nothing))}
    </ul>`;
}

/** The symbol of a column, and its heading and unit as a header may have them. */
function columnLine({ name, label, unit }: GivenColumn): TemplateResult {
  const heading = label === undefined || label === name ? '' : label;
  return html`<li>${name} <span>${heading} ${unit === undefined || unit === '' ? '' : `(${unit})`}</span></li>`;
}

/** That a long text is being read, and how that can be stopped. */
export function readingWords(text: string): TemplateResult {
  return html`<p>Reading ${writeNumber(text.length)} characters …; Cancel stops it.</p>`;
}

/** What is taken of a text, and what goes for it, or why nothing is; with what became of its cells. */
export function foundWords(
  table: Table,
  read: RowsReading,
  where: Where,
  others: Others | undefined,
  becomes: Becomes | undefined,
): TemplateResult {
  const numbers = read.counts ? accountNumbers(read.counts) : '';
  if (!read.ok)
    return html`${namedProblems(read.problems)}${numbers === '' ? nothing : html`<p>${numbers}.</p>`}`;
  const { length, problems } = read.value;
  const rows = length === 1 ? '1 row is taken' : `${length} rows are taken`;
  return html`<p>${rows}; ${numbers}.</p>
    ${troublesOf(table, read.value, where, others, becomes).map(({ words }) =>
      words === '' ? nothing : html`<p class="trouble">${words}.</p>`,
    )}
    ${namedProblems(problems)}`;
}

/** What a person loses or has to look at once rows are taken: in a sentence, and short. */
interface Trouble {
  readonly words: string;
  readonly short: string;
}

function troublesOf(
  table: Table,
  rows: ReadTable,
  where: Where,
  others: Others | undefined,
  becomes: Becomes | undefined,
): readonly Trouble[] {
  const { deleted = [], open = [], blanked = [], twice = [] } = becomes ?? {};
  const emptied = where.kind === 'replace' && others !== 'follow' ? emptiedColumns(table, rows) : [];
  const facts = {
    rows: table.length ?? 0,
    columns: emptied.map(({ name }) => name),
    meanings: blankMeanings(emptied),
  };
  const blank = emptied.length === 0 ? '' : problem('table-columns-blank', { from: 0, to: 0 }, facts).message;
  const apart = rows.problems.filter(({ code }) => code === 'total-apart').length;
  const found: readonly (readonly [words: string, short: string])[] = [
    [deletedWords(deleted), `${counted(deleted, 'stated value is', 'stated values are')} deleted`],
    [openWords(open), `${counted(open, 'reason is', 'reasons are')} to be confirmed`],
    [twiceWords(twice), `${namesOf(twice)} ${twice.length === 1 ? 'stands' : 'stand'} there twice`],
    [blankedWords(blanked), `${counted(blanked, 'entry becomes', 'entries become')} blank`],
    [blank, `${counted(emptied, 'column becomes', 'columns become')} blank`],
  ];
  const told = found.flatMap(([words, short]) => (words === '' ? [] : [{ words, short }]));
  // What is wrong with totals stands among the problems of the text.
  const totals = apart === 1 ? '1 total does not add up' : `${apart} totals do not add up`;
  return apart === 0 ? told : [...told, { words: '', short: totals }];
}

const counted = (items: readonly unknown[], one: string, more: string): string =>
  `${items.length} ${items.length === 1 ? one : more}`;

/** The same in short, for a line beside the button that takes the rows; `''` where there is nothing of it. */
export function inShort(
  table: Table,
  rows: ReadTable,
  where: Where,
  others: Others | undefined,
  becomes: Becomes | undefined,
): string {
  return troublesOf(table, rows, where, others, becomes)
    .map(({ short }) => short)
    .join('; ');
}

/** The rows of a longer list that stay below one that is put over it, by name. */
export function belowWords({ below }: Becomes): string {
  const stay =
    below.length === 1 ? '1 row of the list there stays' : `${below.length} rows of the list there stay`;
  return below.length === 0 ? '' : `${stay} below: ${namesOf(below)}.`;
}

/** What becomes of a cell that is repeated over those selected, or why it is not. */
export function repeatedWords(edit: Outcome<Edit>): TemplateResult {
  return edit.ok ? html`<p>${accountIn(edit.value)}.</p>` : namedProblems(edit.problems);
}

/** The first of some problems, and how many more there are. */
function namedProblems(problems: readonly Problem[]): TemplateResult {
  const more = problems.length - MOST;
  return html`${problems
    .slice(0, MOST)
    .map((one) => html`<p class=${one.severity === 'error' ? 'trouble' : 'quiet'}>${problemWords(one)}</p>`)}
    ${more > 0 ? html`<p class="trouble">and ${more} more like these</p>` : nothing}`;
}

/** A problem in one sentence, with what can be done. */
export function problemWords({ message, hints }: Problem): string {
  return [message, ...hints].join('; ');
}
