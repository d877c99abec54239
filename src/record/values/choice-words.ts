import { type Choice, optionWords } from '../../document/index.ts';

/** What a person reads of the option chosen; empty while none is. Formulas read the entry. */
export function choiceWords({ entry, options }: Choice): string {
  return optionWords(options, entry);
}
