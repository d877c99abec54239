import { html, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula } from '../../language/index.ts';
import type { FormulaColumnItem, FormulaItem } from '../../notebook/index.ts';
import { comparedSides, isSideWorked, typesetFormula } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { drawFormula } from '../sheet/line/formula-view.ts';
import { drawLineNumbers, drawRowNumbers } from '../sheet/numbers/numbers-view.ts';
import { tableRow } from '../sheet/place/grid-map.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import type { CellPlace } from '../view-model/place.ts';

/** A formula set as mathematics within `room` em; nothing where it cannot be read whole. */
export function drawSymbols(checked: CheckedFormula, room: number): TemplateResult | typeof nothing {
  if (!checked.whole || checked.text.trim() === '') return nothing;
  return html`<div class="math" tabindex="0" role="group" aria-label="Formula in symbols">
    ${drawFormula(typesetFormula(checked, room), 'symbols')}
  </div>`;
}

/** The formula of a line with its numbers put in, and what a check compares; of a column those of the row in hand. */
export function drawNumbers(
  session: Session,
  item: FormulaItem | FormulaColumnItem,
  room: number,
): TemplateResult | typeof nothing {
  const drawn =
    item.kind === 'formula'
      ? drawLineNumbers(session, item, item.checked, room)
      : drawRowNumbers(session, item, session.place && tableRow(session.place.item), room);
  if (drawn === nothing) return nothing;
  const sides = item.kind === 'formula' ? comparedSides(session.notebook, item, session.units) : undefined;
  const computed = item.kind === 'formula' && item.checked.syntax.kind === 'comparison' && isSideWorked(item);
  return html`<h3>With numbers</h3>
    <div class="math numbers" tabindex="0" role="group" aria-label="Formula with numbers">${drawn}</div>
    ${sides && computed ? html`<p class="numbers">${sides.left} ${sides.sign} ${sides.right}</p>` : nothing}
    ${session.place && session.overview !== 'steps' ? drawStepsButton(session, session.place) : nothing}`;
}

function drawStepsButton(session: Session, place: CellPlace): TemplateResult {
  const show = ({ target }: Event): void => {
    session.showSteps(place);
    target?.dispatchEvent(new CustomEvent('page-chosen', { bubbles: true, composed: true }));
  };
  return html`<button class="fix" @click=${show}>${overviewTitles.steps}</button>`;
}
