import { html, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula, Syntax } from '../../language/index.ts';
import type { FormulaItem } from '../../notebook/index.ts';
import { comparedSides } from '../session/compared-sides.ts';
import type { Session } from '../session/session.ts';
import { typesetFormula, typesetNumbers } from '../sheet/line/formula-set.ts';
import { drawFormula, hasNumbers } from '../sheet/line/formula-view.ts';
import { valuesByName } from '../sheet/line/values-by-name.ts';

/** A formula set as mathematics within `room` em; nothing where it cannot be read whole. */
export function drawSymbols(checked: CheckedFormula, room: number): TemplateResult | typeof nothing {
  if (!checked.whole || checked.text.trim() === '') return nothing;
  return html`<div class="math" tabindex="0" role="group" aria-label="Formula in symbols">
    ${drawFormula(typesetFormula(checked, room), 'symbols')}
  </div>`;
}

/** The formula of a line with its numbers put in, and what a check compares. */
export function drawNumbers(
  session: Session,
  item: FormulaItem,
  room: number,
): TemplateResult | typeof nothing {
  if (item.sides || !hasNumbers(item.checked.syntax)) return nothing;
  const numbers = typesetNumbers(item.checked, room, valuesByName(session, item.sheet, item));
  if (!numbers) return nothing;
  const sides = comparedSides(session.notebook, item, session.units);
  const asTheyStand = (side: Syntax): boolean =>
    side.kind === 'name' || (side.kind === 'number' && !side.unit);
  const { syntax } = item.checked;
  const computed = syntax.kind === 'comparison' && !(asTheyStand(syntax.left) && asTheyStand(syntax.right));
  return html`<h3>With numbers</h3>
    <div class="math numbers" tabindex="0" role="group" aria-label="Formula with numbers">
      ${drawFormula(numbers, 'numbers')}
    </div>
    ${sides && computed ? html`<p class="numbers">${sides.left} ${sides.sign} ${sides.right}</p>` : nothing}`;
}
