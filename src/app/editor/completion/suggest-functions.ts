import { type FunctionEntry, functionTable, signatureOf } from '../../../language/index.ts';
import type { Suggestion } from './suggestion.ts';

/** Every function of the language, with how it is called and what it does. */
export const functionSuggestions: readonly Suggestion[] = functionTable.map((entry) => {
  const takesNothing = entry.parameters.length === 0;
  return {
    kind: 'function',
    text: entry.name,
    insert: `${entry.name}()`,
    back: takesNothing ? 0 : 1,
    detail: firstWords(entry),
    signature: signatureOf(entry),
    help: entry.help,
    rank: 10,
  };
});

/** The beginning of the help, enough to tell the functions of a list apart. */
function firstWords({ help }: FunctionEntry): string {
  const [clause = ''] = help.split(/[.;:(]/);
  return clause.trim();
}
