import { nearest, type Problem, problem } from '../../../diagnostics/index.ts';
import { foldedOption } from '../../../document/index.ts';
import { type Notebook, namesOf, optionsOf } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

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

/** That a text is called like no option, with those that are nearly so. */
export function unknownOption(options: readonly ChoiceOption[], text: string): Problem {
  const written = text.trim();
  const values = options.map(({ value, label }) => label || value).filter((words) => words !== '');
  const facts = { written, options: values, near: [...nearest(written, values)] };
  return problem('choice-unknown', { from: 0, to: written.length }, facts);
}

/**
 * Which option what is typed leads to, by its place in the list: the one called so, else the first whose words or value
 * begin so, else the first that has it within. One letter pressed again and again goes from option to option. Undefined where
 * no option has it: another one would be taken in silence.
 *
 * @param now the place of the option gone to last, or -1
 * @param held the place of the option that the cell holds, which what is typed goes on meaning as long as it begins so
 */
export function optionTyped(
  options: readonly ChoiceOption[],
  typed: string,
  now: number,
  held = -1,
): number | undefined {
  const wanted = foldedTyped(typed);
  if (wanted === '') return undefined;
  const words = options.map(({ value, label }) => [label ?? value, value].map(foldedOption));
  const first = (fits: (text: string) => boolean): number | undefined => {
    for (const kind of [0, 1]) {
      const at = words.findIndex((texts) => fits(texts[kind] ?? ''));
      if (at >= 0) return at;
    }
    return undefined;
  };
  const exact = first((text) => text === wanted.trim());
  if (exact === undefined && !isRepeated(wanted) && words[held]?.[0]?.startsWith(wanted)) return held;
  const called = exact ?? first((text) => text.startsWith(wanted));
  if (called !== undefined) return isRepeated(wanted) ? (nextWith(words, wanted, now) ?? called) : called;
  return nextWith(words, wanted, now) ?? first((text) => text.includes(wanted));
}

/** Whether what is typed can only be one option: it is called so, or it alone begins so, or has it within where none begins so. */
export function isOneMeant(options: readonly ChoiceOption[], typed: string): boolean {
  if (optionCalled(options, typed)) return true;
  const wanted = foldedTyped(typed);
  const words = options.map(({ value, label }) => [label ?? value, value].map(foldedOption));
  const beginning = words.filter((texts) => texts.some((text) => text.startsWith(wanted)));
  const having = words.filter((texts) => texts.some((text) => text.includes(wanted)));
  return (beginning.length > 0 ? beginning : having).length === 1;
}

/** Letter case aside; a space at the end belongs to what is typed next. */
function foldedTyped(typed: string): string {
  return foldedOption(`${typed.trimStart()}.`).slice(0, -1);
}

const isRepeated = (wanted: string): boolean => [...wanted].every((letter) => letter === wanted[0]);

/** The next option that begins with the one letter that was pressed again and again. */
function nextWith(words: readonly (readonly string[])[], wanted: string, now: number): number | undefined {
  const [letter = ''] = wanted;
  if (!isRepeated(wanted)) return undefined;
  const turned = [...words.keys()].map((at) => (at + now + 1) % words.length);
  return turned.find((at) => words[at]?.[0]?.startsWith(letter));
}

function distinct(values: readonly string[]): readonly ChoiceOption[] {
  return [...new Set(values)].map((value) => ({ value }));
}
