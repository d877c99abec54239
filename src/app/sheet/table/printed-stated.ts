import { css, html, nothing, type TemplateResult } from 'lit';
import type { Column } from '../../../document/index.ts';
import { type Notebook, type StatedHere, statedIn } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { statedWords, whyNotComputed } from '../../../record/index.ts';
import { writeNumber } from '../../../units/index.ts';
import { drawSymbol } from '../line/formula-view.ts';

/** So many stated cells of a table are printed below it. */
const MOST = 500;

/**
 * What is stated in the cells of a table (`sheet.table`), as paper has it below the rows: for each its value, the computed
 * one, how far apart they are, and why.
 */
export function printedStated(
  notebook: Notebook,
  table: string,
  columns: readonly Column[],
  view: UnitsView,
): TemplateResult | typeof nothing {
  const all = columns.flatMap((column) => {
    const item = notebook.model.items.get(`${table}.${column.name}`);
    return item ? statedIn(notebook, item).map((one) => ({ one, column })) : [];
  });
  if (all.length === 0) return nothing;
  const more = all.length - MOST;
  return html`<div class="printed-stated">
    <table>
      <caption>
        Stated in place of computed cells
      </caption>
      <thead>
        <tr>
          <th scope="col" class="words">Row</th>
          <th scope="col" class="words">Symbol</th>
          <th scope="col">Stated</th>
          <th scope="col">Computed</th>
          <th scope="col">Difference</th>
          <th scope="col" class="words">Reason</th>
        </tr>
      </thead>
      <tbody>
        ${all.slice(0, MOST).map(({ one, column }) => printedOne(notebook, table.slice(0, table.indexOf('.')), one, column, view))}
      </tbody>
    </table>
    ${more > 0 ? html`<p>${writeNumber(more)} more stated cells are not printed; <i>quaybook calc</i> lists all.</p>` : nothing}
  </div>`;
}

function printedOne(
  notebook: Notebook,
  sheet: string,
  one: StatedHere,
  column: Column,
  view: UnitsView,
): TemplateResult {
  const { stated, typed, computed, difference, reason, reasonFor } = statedWords(notebook, one, view);
  const why = whyNotComputed(notebook, one, sheet);
  return html`<tr>
    <th scope="row" class="words">${(one.row ?? 0) + 1}</th>
    <td class="words">${drawSymbol(column.name)}</td>
    <td class="stated">${stated}${typed === undefined ? nothing : html` (as typed: ${typed})`}</td>
    <td>${computed}${why === undefined ? nothing : html`: ${why}`}</td>
    <td>${difference ?? ''}</td>
    <td class="words">${reason === '' ? html`<b>reason open</b>` : reason}${reasonFor === undefined ? nothing : html` <b>given for ${reasonFor}, to be confirmed</b>`}</td>
  </tr>`;
}

/** The styles of the list below a printed table. */
export const printedStatedStyles = css`
  .printed-stated {
    margin: -2px 0 8px;
    font-size: var(--type-small);
  }
  .printed-stated table {
    border-collapse: collapse;
  }
  .printed-stated caption {
    padding-bottom: 3px;
    font-weight: 600;
    text-align: left;
  }
  .printed-stated thead {
    display: table-header-group;
  }
  .printed-stated tr {
    break-inside: avoid;
    border-bottom: 1px solid var(--rule);
  }
  .printed-stated :is(td, th) {
    padding: 2px 12px 2px 0;
    font-weight: 400;
    text-align: right;
    vertical-align: top;
    overflow-wrap: anywhere;
  }
  .printed-stated :is(td, th).words {
    text-align: left;
  }
  .printed-stated .stated {
    color: var(--pen);
  }
  .printed-stated b {
    font-weight: 600;
  }
`;
