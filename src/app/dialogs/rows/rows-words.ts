import { html, nothing, type TemplateResult } from 'lit';
import { type Outcome, type Problem, problem } from '../../../diagnostics/index.ts';
import {
  blankMeanings,
  type Edit,
  emptiedColumns,
  type GivenColumn,
  statedColumns,
  type Table,
} from '../../../document/index.ts';
import { writeNumber } from '../../../units/index.ts';
import { accountNumbers } from '../../editing/clipboard/account.ts';
import type { Where } from '../../editing/clipboard/put-rows.ts';
import { accountIn } from '../../editing/lines/describe-insertion.ts';
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
export function foundWords(table: Table, read: RowsReading, where: Where): TemplateResult {
  const numbers = read.counts ? accountNumbers(read.counts) : '';
  if (!read.ok)
    return html`${namedProblems(read.problems)}${numbers === '' ? nothing : html`<p>${numbers}.</p>`}`;
  const { length, problems } = read.value;
  const emptied = where.kind === 'replace' ? emptiedColumns(table, read.value) : [];
  const gone = where.kind === 'replace' ? statedColumns(table) : [];
  const rows = length === 1 ? '1 row is taken' : `${length} rows are taken`;
  const facts = {
    rows: table.length ?? 0,
    columns: emptied.map(({ name }) => name),
    meanings: blankMeanings(emptied),
  };
  return html`<p>${rows}; ${numbers}.</p>
    ${
      emptied.length > 0
        ? html`<p class="trouble">${problem('table-columns-blank', { from: 0, to: 0 }, facts).message}.</p>`
        : nothing
    }
    ${gone.map((facts) => html`<p class="trouble">${problem('table-stated-gone', { from: 0, to: 0 }, facts).message}.</p>`)}
    ${namedProblems(problems)}`;
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
