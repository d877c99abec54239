import { css, html, nothing, type TemplateResult } from 'lit';
import type { Column } from '../../../document/index.ts';
import type { ColumnView, PrintedRow, RowsOnPaper } from '../../../record/index.ts';
import { unitInPrint, writeNumber } from '../../../units/index.ts';
import { drawSign } from '../../style/signs.ts';
import { drawSymbol } from '../line/formula-view.ts';
import { PRINT_WIDTH } from '../paper/page-measure.ts';
import { columnWidth, isText, onPaper as onPaperType } from './column-width.ts';
import { printBands } from './print-bands.ts';
import { drawTurned, turnedTable } from './turned-table.ts';

/** The rows of a table that are printed: a few dozen pages. What is longer is read on the screen. */
const MOST_PRINTED = 2000;

/** The room for a table across a printed page in px. */
const ROOM = PRINT_WIDTH - 8;

/** About how high the head of a band and a row of it are in px, with what is between two bands. */
const [HEAD, ROW] = [76, 22];

/** Tables up to so many rows are not broken across pages. */
const UNBROKEN = 12;

/**
 * A table as paper has it: its rows, of a long calculated one those that matter, the head again on each page. A table too
 * wide for it stands in bands of its columns, or turned, each column a line, whichever takes less paper.
 */
export function printedTable(
  views: readonly ColumnView[],
  number: number,
  length: number,
  onPaper: readonly RowsOnPaper[],
  hasLine: (column: Column) => boolean,
): TemplateResult {
  const isWhole = onPaper.length <= 1;
  const rows = onPaper
    .flatMap((run): readonly PrintedRow[] => (run.kind === 'left out' ? [run] : rowsOf(run)))
    .slice(0, isWhole ? MOST_PRINTED : undefined);
  const printed = rows.filter((row) => typeof row === 'number').length;
  const widths = views.map((view) => columnWidth(view, length, onPaperType));
  const bands = printBands(widths, number, ROOM);
  // What a line below the table describes is there by its symbol.
  const described = views.filter(({ column }) => !hasLine(column));
  const turned =
    bands.length > 1
      ? [described, views.filter(({ column }) => hasLine(column))]
          .filter(({ length: count }) => count > 0)
          .map((of) => ({ of, turned: turnedTable(of, rows, ROOM, of === described) }))
      : [];
  const height = turned.reduce((sum, one) => sum + (one.turned?.height ?? Number.POSITIVE_INFINITY), 0);
  const isTurned = turned.length > 0 && height < bands.length * (HEAD + rows.length * ROW);
  return html`<div class="printed-table${length <= UNBROKEN ? ' unbroken' : ''}">
    ${isWhole && length > MOST_PRINTED ? html`<p>${shortened(length)}</p>` : nothing}
    ${isWhole ? nothing : html`<p>${leftOut(length, printed)}</p>`}
    ${
      isTurned
        ? turned.map((one) => (one.turned ? drawTurned(one.of, rows, one.turned, cell) : nothing))
        : bands.map((columns) => {
            const shown = columns.flatMap((at) => views[at] ?? []);
            return html`<table>
        <colgroup>
          <col .style=${`width: ${number}px`} />
          ${columns.map((at) => html`<col .style=${`width: ${widths[at]}px`} />`)}
        </colgroup>
        <thead>
          <tr>
            <td></td>
            ${shown.map(head)}
          </tr>
        </thead>
        <tbody>
          ${rows.map((row) =>
            typeof row !== 'number'
              ? html`<tr class="gap">
                  <td></td>
                  <td class="words" colspan=${columns.length}>${gap(row)}</td>
                </tr>`
              : html`<tr>
              <th scope="row">${row + 1}</th>
              ${shown.map((view) => cell(view, row))}
            </tr>`,
          )}
        </tbody>
      </table>`;
          })
    }
  </div>`;
}

/** The rows of a run, from 0. */
function rowsOf({ from, to }: RowsOnPaper): readonly number[] {
  return Array.from({ length: to - from + 1 }, (_, at) => from + at);
}

function gap({ from, to }: RowsOnPaper): string {
  return `rows ${from + 1} to ${to + 1} left out (${writeNumber(to - from + 1)} rows)`;
}

function leftOut(length: number, printed: number): string {
  return `This table has ${writeNumber(length)} rows; ${printed} are printed: the first and the last, those that a line takes its value from, and those that are stated or have no value. The file of the book holds all; the settings of the book print all.`;
}

function shortened(length: number): string {
  return `This table has ${writeNumber(length)} rows; rows 1 to ${writeNumber(MOST_PRINTED)} are printed; the table saved as CSV has all.`;
}

function head({ column, unit }: ColumnView): TemplateResult {
  const shown = unitInPrint(unit);
  return html`<th scope="col" class=${isText(column) ? 'words' : ''}>
    ${column.label ?? ''}
    <div class="symbol-unit">
      <span class="symbol">${drawSymbol(column.name)}</span>${shown === '' ? nothing : html` <span class="unit">${shown}</span>`}
    </div>
  </th>`;
}

function cell({ column, at }: ColumnView, row: number): TemplateResult {
  const { text, state, behind } = at(row);
  return html`<td data-behind=${behind || nothing} class="${state}${isText(column) ? ' words' : ''}">${state === 'bad' ? drawSign('problem', 'has a problem') : nothing}${text}${state === 'stated' ? ' (stated)' : ''}</td>`;
}

/** The styles of printed tables. */
export const printedTableStyles = css`
  .printed-table {
    font-size: var(--type-small);
  }
  .printed-table p {
    margin: 0 0 6px;
  }
  .printed-table.unbroken table:not(.turned) {
    break-inside: avoid;
  }
  .printed-table table {
    border-collapse: collapse;
    table-layout: fixed;
    width: 0;
    margin-bottom: 8px;
    border-bottom: 1.5px solid var(--ink);
  }
  .printed-table thead {
    display: table-header-group;
    border-block: 1.5px solid var(--ink);
    border-bottom-width: 1px;
    line-height: 1.2;
    vertical-align: bottom;
  }
  .printed-table tr {
    break-inside: avoid;
  }
  .printed-table tbody tr + tr {
    border-top: 1px solid var(--rule);
  }
  .printed-table :is(td, th) {
    padding: 1px 4px;
    line-height: 1.2;
    font-weight: 400;
    text-align: right;
    overflow-wrap: break-word;
  }
  .printed-table :is(td, th).words {
    text-align: left;
  }
  .printed-table tbody th {
    padding-inline-start: 0;
    color: var(--ink-soft);
  }
  .printed-table .abreast {
    display: flex;
    gap: 26px;
    align-items: start;
  }
  /* Side by side they would be read across two pages. */
  .printed-table .abreast:has(table + table) {
    break-inside: avoid;
  }
  .printed-table .turned tbody th {
    color: inherit;
    text-align: left;
  }
  .printed-table .turned .unit {
    color: var(--ink-soft);
  }
  .printed-table math {
    font-size: 1.05em;
  }
  .table-sources {
    margin: 2px 0 8px;
    color: var(--ink-soft);
    font-size: var(--type-small);
    line-height: 1.25;
  }
  .table-sources math {
    font-size: 1em;
  }
  .printed-table :is(.entered, .stated) {
    color: var(--pen);
  }
  .printed-table .gap td {
    color: var(--ink-soft);
  }
  .printed-table .bad {
    color: var(--bad);
  }
`;
