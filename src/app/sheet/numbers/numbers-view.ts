import { css, html, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula } from '../../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  formulaInForce,
  rowsInWords,
  statedIn,
} from '../../../notebook/index.ts';
import type { BranchNote } from '../../../record/index.ts';
import {
  columnView,
  type GoverningRow,
  governingRow,
  hasNumbers,
  quantityText,
  typesetBranch,
  typesetNumbers,
  type WorkedFormula,
  wordsOfValue,
  workFormula,
} from '../../../record/index.ts';
import { unitInPrint } from '../../../units/index.ts';
import type { Session } from '../../session/session.ts';
import { drawFormula, drawSymbol } from '../line/formula-view.ts';

/** The formula of a line with its numbers put in, set within `most` em; nothing where that says nothing new. */
export function drawLineNumbers(
  session: Session,
  item: FormulaItem,
  checked: CheckedFormula,
  most: number,
): TemplateResult | typeof nothing {
  if (!checked.whole || !hasNumbers(checked.syntax)) return nothing;
  const worked = workFormula(session, { item, checked });
  const set = typesetNumbers(checked, most, worked);
  if (!set && worked.notes.length === 0) return nothing;
  return html`<div class="worked">${set ? drawFormula(set, 'numbers') : nothing}${drawNotes(worked, most)}</div>`;
}

/**
 * The formula of a column with the numbers of one row put in, which row that is, and what they come to there. Nothing
 * where the row has none. Without a row the one that governs.
 */
export function drawRowNumbers(
  session: Session,
  item: FormulaColumnItem,
  chosen: number | undefined,
  most: number,
): TemplateResult | typeof nothing {
  const { notebook, units } = session;
  const governing = chosen === undefined ? governingRow(notebook, item) : undefined;
  const row = chosen ?? governing?.row;
  // The place may still be a row that an edit took away.
  if (row === undefined || row >= (notebook.rowsOf(item.table) ?? 0)) return nothing;
  const checked = formulaInForce(notebook, item, row)?.checked;
  if (!checked?.whole || !hasNumbers(checked.syntax) || item.column.kind === 'series') return nothing;
  const { text, state } = columnView(notebook, item.id, item.column, units).at(row);
  if (text === '') return nothing;
  const worked = workFormula(session, { item, checked, row });
  const set = typesetNumbers(checked, most, worked);
  const computed = state === 'stated' ? computedIn(session, item, row) : withUnit(session, item, text);
  return html`<div class="worked of-row">
    <p class="which-row">row ${row + 1}${governing && rowWords(governing)}</p>
    ${set ? drawFormula(set, 'numbers') : nothing}
    ${computed === undefined ? nothing : html`<p class="comes-to">= ${computed}</p>`}
    ${state === 'stated' ? html`<p class="comes-to">stated: ${withUnit(session, item, text)}</p>` : nothing}
    ${drawNotes(worked, most)}
  </div>`;
}

/** Why a row is shown and no other. */
function rowWords({ reader, same = [] }: GoverningRow): TemplateResult {
  if (!reader) return html`, the first`;
  const { name, does } = reader;
  return does === 'gives'
    ? html`, which gives ${drawSymbol(name)}${same.length === 0 ? nothing : `, as ${rowsInWords(same)} ${same.length === 1 ? 'does' : 'do'}`}`
    : html`, which ${drawSymbol(name)} counts`;
}

/** What the formula comes to in a row in which a value is stated; undefined where it fails. */
function computedIn({ notebook, units }: Session, item: FormulaColumnItem, row: number): string | undefined {
  const found = statedIn(notebook, item).find((one) => one.row === row)?.computed;
  return found?.status === 'ok' ? wordsOfValue(notebook, found.value, units) : undefined;
}

/** A cell of a column with the unit that its heading has. */
function withUnit({ notebook, units }: Session, { id, column }: FormulaColumnItem, text: string): string {
  const { unit } = columnView(notebook, id, column, units);
  return quantityText({ number: text, unit: unitInPrint(unit) });
}

function drawNotes(worked: WorkedFormula, most: number): TemplateResult | typeof nothing {
  const { notes } = worked;
  return notes.length === 0
    ? nothing
    : html`<ul class="number-notes">
        ${notes.map((note) => (typeof note === 'string' ? html`<li>${note}</li>` : drawBranch(note, worked, most)))}
      </ul>`;
}

/** A condition as it is written, with its numbers, and whether it is so; or what chooses, and what it is. */
function drawBranch(note: BranchNote, worked: WorkedFormula, most: number): TemplateResult {
  const { symbols, numbers } = typesetBranch(note, most, worked);
  const isChoice = note.answer === 'chosen';
  return html`<li class="branch">
    ${isChoice ? 'chosen by' : nothing} ${drawFormula(symbols, 'symbols')}
    ${numbers ? html`<span>:</span> ${drawFormula(numbers, 'numbers')}` : nothing}
    ${isChoice ? nothing : note.answer}
  </li>`;
}

/** The styles of numbers put in, on the page and in the panel. */
export const numbersStyles = css`
  .worked {
    min-width: 0;
    margin-top: 4px;
    padding-inline: 6px 4px;
    color: var(--pen);
  }
  .worked p {
    margin: 0;
  }
  .worked .which-row,
  .number-notes {
    color: var(--ink-soft);
    font-size: var(--type-small);
    line-height: 1.35;
  }
  .worked .which-row math {
    font-size: 1em;
  }
  .worked .comes-to {
    font-size: 14px;
  }
  .number-notes {
    margin: 2px 0 0;
    padding: 0;
    list-style: none;
    overflow-wrap: anywhere;
  }
  .number-notes .branch {
    display: flex;
    flex-wrap: wrap;
    column-gap: 0.4em;
    align-items: baseline;
  }
  .number-notes .branch math {
    font-size: 1em;
  }
`;
