import type { Suggestion } from './suggestion.ts';

const others = /[_'.]/g;

/**
 * The suggestions that what is typed fits, best first: the very text; begun with the same letters, then in any case,
 * then with `_`, `'` and points left out; holding them at the start of a later part, then anywhere; then by their
 * words. Among equals by rank, then as they came. Nothing typed fits all.
 */
export function matching(typed: string, suggestions: readonly Suggestion[]): readonly Suggestion[] {
  const folded = typed.toLowerCase();
  const bare = folded.replace(others, '');
  const grade = ({ text, detail }: Suggestion): number => {
    if (text === typed) return 0;
    if (text.startsWith(typed)) return 1;
    const lower = text.toLowerCase();
    const at = lower.indexOf(folded);
    if (at === 0) return 2;
    if (bare !== '' && lower.replace(others, '').startsWith(bare)) return 3;
    if (at > 0) return /[_.]/.test(lower[at - 1] ?? '') ? 4 : 5;
    return folded.length > 1 && detail.toLowerCase().includes(folded) ? 6 : none;
  };
  return suggestions
    .map((suggestion) => ({ suggestion, at: grade(suggestion) }))
    .filter(({ at }) => at < none)
    .sort((a, b) => a.at - b.at || b.suggestion.rank - a.suggestion.rank)
    .map(({ suggestion }) => suggestion);
}

const none = 7;
