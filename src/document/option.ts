import type { Option } from './schema/rows.ts';

/** An option as options are compared, which is how formulas compare texts: composed, cases and outer spaces aside. */
export function foldedOption(option: string): string {
  if (plain.test(option)) return option.toLowerCase().trim();
  // Upper case first, so that letters with two small forms (ß, ς) fold together.
  return option.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
}

/** Letters that are composed and have one small form each. */
const plain = /^[ -~]*$/;

/** The words that a person reads of an option, of those that are listed; without any, the option itself. */
export function optionWords(listed: readonly Option[] | undefined, option: string): string {
  const folded = foldedOption(option);
  return listed?.find(({ value }) => foldedOption(value) === folded)?.label || option;
}
