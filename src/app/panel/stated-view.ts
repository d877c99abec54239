import { html, nothing, type TemplateResult } from 'lit';
import type { FormulaColumnItem, FormulaItem, Side, StatedHere } from '../../notebook/index.ts';
import { statedIn } from '../../notebook/index.ts';
import { statedWords, whyNotComputed } from '../../record/index.ts';
import { confirmReason } from '../editing/cells/carry-reason.ts';
import {
  confirmReasonsEdit,
  type StateTarget,
  statementEdit,
  targetsAt,
} from '../editing/cells/state-target.ts';
import type { Session } from '../session/session.ts';
import type { CellPlace } from '../view-model/place.ts';

/**
 * What is stated of the line in hand, or of the cell of a column: value, reason, what is computed, the difference, and
 * the commands to change each of them; where nothing is stated yet, the command to state something.
 */
export function drawStated(
  session: Session,
  item: FormulaItem | FormulaColumnItem,
  at: CellPlace,
): TemplateResult | typeof nothing {
  const { notebook } = session;
  const place = item.kind === 'formula' ? { ...at, field: 'value' } : at;
  const targets = targetsAt(notebook.book, place);
  const all = statedIn(notebook, item);
  const shown = targets.map((target) => ({ target, here: statedOf(target, all) }));
  const open = shown.filter(({ target, here }) => !here && canState(session, target));
  const stated = shown.flatMap(({ target, here }) => (here ? [drawOne(session, place, target, here)] : []));
  if (stated.length === 0 && open.length === 0 && all.length === 0) return nothing;
  return html`<h3>Stated value</h3>
    ${stated}
    ${item.kind === 'formula column' && all.length > 0 ? html`<p class="quiet">${rowsWords(all.length)}</p>` : nothing}
    ${drawConfirmAll(session, targets, all)}
    ${
      open.length === 0
        ? nothing
        : html`<div class="ends">
            ${open.map(
              ({
                target,
              }) => html`<button class="fix" @click=${() => begin(session, place, 'entry', sideOf(target))}>
                ${stateWords(target)}
              </button>`,
            )}
          </div>`
    }`;
}

function drawOne(session: Session, place: CellPlace, target: StateTarget, here: StatedHere): TemplateResult {
  const { notebook, units } = session;
  const { stated, typed, reason, reasonFor, computed, difference } = statedWords(notebook, here, units);
  const side = sideOf(target);
  const of = side ? ` the ${side}` : '';
  const why = whyNotComputed(notebook, here, place.sheet);
  return html`<div class="stated-one"><dl>
      <dt>${side ? `${side} stated` : 'stated'}</dt>
      <dd class="numbers">${stated}${typed === undefined ? nothing : html` <span class="quiet">as typed: ${typed}</span>`}</dd>
      <dt>reason</dt>
      <dd>
        ${reason === '' ? html`<i>open</i>` : reason}${reasonFor === undefined ? nothing : html` <i>given for ${reasonFor}, to be confirmed</i>`}
      </dd>
      <dt>computed</dt>
      <dd>${computed}${why === undefined ? nothing : html`<span class="quiet">: ${why}</span>`}</dd>
      ${difference === undefined ? nothing : html`<dt>difference</dt><dd>${difference}</dd>`}
    </dl></div>
    <div class="ends">
      ${
        reasonFor === undefined
          ? nothing
          : html`<button class="fix" @click=${() => session.apply(statementEdit(target, confirmReason(here.statement)))}>
              Confirm the reason${of === '' ? nothing : html`<span class="unseen"> for${of}</span>`}
            </button>`
      }
      <button class="fix" @click=${() => begin(session, place, 'reason', side)}>
        ${reason === '' ? 'Give' : 'Change'} the reason${of === '' ? nothing : html`<span class="unseen"> for${of}</span>`}
      </button>
      <button class="fix" @click=${() => begin(session, place, 'entry', side)}>
        Change the value${of === '' ? nothing : html`<span class="unseen"> of${of}</span>`}
      </button>
      ${
        target.kind === 'line'
          ? html`<button class="fix" @click=${() => begin(session, place, 'formula')}>Change the formula</button>`
          : nothing
      }
      <button class="fix" @click=${() => session.apply(statementEdit(target, undefined))}>
        Use the computed ${side ?? 'value'}
      </button>
    </div>`;
}

/** One command for the reasons of a column that came with values filled or pasted over several cells. */
function drawConfirmAll(
  session: Session,
  [target]: readonly StateTarget[],
  all: readonly StatedHere[],
): TemplateResult | typeof nothing {
  const count = all.filter(({ statement }) => statement.reasonFor !== undefined).length;
  const edit = target?.kind === 'cell' && count > 1 ? confirmReasonsEdit(target) : undefined;
  if (!edit) return nothing;
  return html`<div class="ends">
    <button class="fix" @click=${() => session.apply(edit)}>Confirm the reasons of all ${count} rows</button>
  </div>`;
}

/** Takes the cell in hand on the page, where what is typed is kept as any other entry is. */
function begin(session: Session, place: CellPlace, as: 'entry' | 'reason' | 'formula', side?: Side): void {
  session.goTo(place);
  session.beginEdit(place, undefined, as, side);
}

function statedOf(target: StateTarget, all: readonly StatedHere[]): StatedHere | undefined {
  if (!target.statement) return undefined;
  return all.find(({ side, row }) =>
    target.kind === 'cell' ? row === target.index : side === sideOf(target),
  );
}

const sideOf = (target: StateTarget): Side | undefined => (target.kind === 'side' ? target.side : undefined);

/** A line whose formula is still to be written has nothing that a value could stand in place of; nor has a check that compares nothing. */
function canState({ notebook }: Session, target: StateTarget): boolean {
  if (target.kind === 'side') return notebook.verdict(target.id)?.[target.side] !== undefined;
  return (target.kind === 'line' ? target.row : target.column).formula?.trim() !== '';
}

function stateWords(target: StateTarget): string {
  if (target.kind === 'side') return `State the ${target.side}`;
  return target.kind === 'line' ? 'State a value' : `State row ${target.index + 1}`;
}

function rowsWords(count: number): string {
  return count === 1 ? '1 row of this column is stated' : `${count} rows of this column are stated`;
}
