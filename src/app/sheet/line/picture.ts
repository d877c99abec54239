import { html, nothing, type TemplateResult } from 'lit';
import type { Chart, Figure } from '../../../document/index.ts';
import { type Drawing, type DrawingTable, drawChart, drawFigure } from '../../../figures/index.ts';
import { problemInWords } from '../../../record/index.ts';
import type { Session } from '../../session/session.ts';
import { drawMarkup } from '../../style/markup.ts';
import { sentence } from './line-body.ts';

/** A sketch or chart of a sheet, drawn from its values as they stand, with a table of what it shows. */
export function drawPicture(
  { notebook, units }: Session,
  sheet: string,
  part: Figure | Chart,
): TemplateResult {
  const drawn =
    part.kind === 'figure'
      ? drawFigure(notebook, sheet, part, units)
      : drawChart(notebook, sheet, part, units);
  if (!drawn.ok)
    return html`<div class="drawing" role="gridcell" aria-colindex="3" aria-readonly="true">
      ${drawn.problems.map((one) => sentence(problemInWords(one, notebook, sheet), 'waits'))}
    </div>`;
  return html`<div class="drawing" role="gridcell" aria-colindex="3" aria-readonly="true">
    ${drawMarkup(drawn.value.svg)}${drawn.value.table ? alternative(drawn.value, drawn.value.table) : nothing}
  </div>`;
}

function alternative({ title }: Drawing, { head, rows }: DrawingTable): TemplateResult {
  return html`<details>
    <summary tabindex="-1">the same as a table</summary>
    <div class="alternative">
      <table aria-label=${title}>
        <thead>
          <tr>
            ${head.map((text) => html`<th scope="col">${text}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map((row) => html`<tr>${row.map((text) => html`<td>${text}</td>`)}</tr>`)}
        </tbody>
      </table>
    </div>
  </details>`;
}
