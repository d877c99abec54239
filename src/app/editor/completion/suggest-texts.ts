import { cellsBetween } from '../../../document/index.ts';
import { findFunction } from '../../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type Notebook,
  namesOf,
  optionsOf,
  resolveName,
} from '../../../notebook/index.ts';
import { type OpenCall, standingAt } from './call-at.ts';
import type { Suggestion } from './suggestion.ts';

/** How many cells of a column are looked at for the texts it holds. */
const looked = 5_000;

/** The texts that may stand in quotation marks opened at `quote`: the options of a function, or those a name has. */
export function suggestTexts(
  notebook: Notebook,
  item: FormulaItem | FormulaColumnItem,
  text: string,
  quote: number,
): readonly Suggestion[] {
  const before = text.slice(0, quote);
  const compared = /(\p{L}[\p{L}\d_'.]*)\s*(?:=|<>|≠)\s*$/u.exec(before)?.[1];
  if (compared !== undefined)
    return textsOf(notebook, item, compared).map((option) => suggestion(option, compared));
  const { call } = standingAt(text, quote);
  const entry = call && findFunction(call.name);
  if (!entry) return [];
  const takes = entry.parameters[call.argument]?.takes;
  if (takes?.kind === 'option')
    return (takes.choices ?? []).map((option) => suggestion(option, `option of ${entry.name}`));
  const first = firstArgument(before, call);
  return entry.name === 'SWITCH' && call.argument > 0
    ? textsOf(notebook, item, first).map((option) => suggestion(option, first))
    : [];
}

function firstArgument(text: string, { start }: OpenCall): string {
  return /^\s*(\p{L}[\p{L}\d_'.]*)/u.exec(text.slice(start))?.[1] ?? '';
}

function suggestion(text: string, detail: string): Suggestion {
  return { kind: 'text', text, detail, rank: 0 };
}

/** The texts a choice may take or a column of texts holds, each once. */
function textsOf(notebook: Notebook, item: FormulaItem | FormulaColumnItem, name: string): readonly string[] {
  const names = namesOf(notebook.book);
  const part = resolveName(name, names, item.sheet, item.kind === 'formula column' ? item.table : undefined);
  if (part?.kind === 'row') return part.row.kind === 'choice' ? optionsOf(part.row, part.sheet, names) : [];
  if (part?.kind !== 'column' || part.column.kind !== 'given' || part.column.type !== 'text') return [];
  const { options, chunks } = part.column;
  if (options) return options;
  return [
    ...new Set(
      cellsBetween(chunks, 0, looked).flatMap((cell) =>
        typeof cell === 'string' && cell.trim() !== '' ? [cell.trim()] : [],
      ),
    ),
  ];
}
