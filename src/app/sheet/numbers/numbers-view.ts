import { css, html, nothing, type TemplateResult } from 'lit';
import type { CheckedFormula } from '../../../language/index.ts';
import { type FormulaColumnItem, type FormulaItem, rowsInWords } from '../../../notebook/index.ts';
import type { BranchNote } from '../../../record/index.ts';
import {
  type GoverningRow,
  lineNumbers,
  rowNumbers,
  typesetBranch,
  type WorkedFormula,
} from '../../../record/index.ts';
import type { Session } from '../../session/session.ts';
import { drawFormula, drawSymbol } from '../line/formula-view.ts';

/** The formula of a line with its numbers put in, set within `most` em; nothing where that says nothing new. */
export function drawLineNumbers(
  session: Session,
  item: FormulaItem,
  checked: CheckedFormula,
  most: number,
): TemplateResult | typeof nothing {
  const found = lineNumbers(session, item, checked, most);
  if (!found) return nothing;
  const { set, worked } = found;
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
  const found = rowNumbers(session, item, chosen, most);
  if (!found) return nothing;
  const { row, governing, worked, set, computed, stated } = found;
  return html`<div class="worked of-row">
    <p class="which-row">row ${row + 1}${governing && rowWords(governing)}</p>
    ${set ? drawFormula(set, 'numbers') : nothing}
    ${computed === undefined ? nothing : html`<p class="comes-to">= ${computed}</p>`}
    ${stated === undefined ? nothing : html`<p class="comes-to">stated: ${stated}</p>`}
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
