import { foldedOption } from '../../../document/index.ts';
import { type Notebook, namesOf, optionsOf } from '../../../notebook/index.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';

/** One option of a choice: what formulas see, and what a person reads if that is something else. */
export interface ChoiceOption {
  readonly value: string;
  readonly label?: string;
}

/** The options of a choice or of a column with a list; a blank one where the cell may stay blank. */
export function choiceOptions({ book }: Notebook, place: CellPlace): readonly ChoiceOption[] {
  const found = findPlace(book, place);
  const blank = { value: '', label: 'blank' };
  if (found?.kind === 'row' && found.row.kind === 'choice') {
    const { row, sheet } = found;
    const options = row.options ?? distinct(optionsOf(row, sheet.key, namesOf(book)));
    return row.optional || row.entry.trim() === '' ? [...options, blank] : options;
  }
  if (found?.kind !== 'cell' || found.column.kind !== 'given') return [];
  return [...(found.column.options ?? []).map((value) => ({ value })), blank];
}

/** The option that a text names, by its value or by the words that a person reads, letter case and outer spaces aside. */
export function optionCalled(options: readonly ChoiceOption[], text: string): ChoiceOption | undefined {
  const wanted = foldedOption(text);
  if (wanted === '') return undefined;
  return (
    options.find(({ value }) => foldedOption(value) === wanted) ??
    options.find(({ label }) => label !== undefined && foldedOption(label) === wanted)
  );
}

function distinct(values: readonly string[]): readonly ChoiceOption[] {
  return [...new Set(values)].map((value) => ({ value }));
}
