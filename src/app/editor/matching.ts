import type { Suggestion } from './suggestion.ts';

/** The suggestions that what is typed fits: begun with the same letters first, then in any case, then by their words. */
export function matching(typed: string, suggestions: readonly Suggestion[]): readonly Suggestion[] {
  const folded = typed.toLowerCase();
  const grade = ({ text, detail }: Suggestion): number => {
    if (text === typed) return 0;
    if (text.startsWith(typed)) return 1;
    if (text.toLowerCase().startsWith(folded)) return 2;
    if (text.toLowerCase().includes(folded)) return 3;
    return detail.toLowerCase().includes(folded) ? 4 : 5;
  };
  return suggestions
    .map((suggestion) => ({ suggestion, at: grade(suggestion) }))
    .filter(({ at }) => at < 5)
    .sort((a, b) => a.at - b.at || b.suggestion.rank - a.suggestion.rank)
    .map(({ suggestion }) => suggestion);
}
