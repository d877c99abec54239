import { spelledOut } from '../../../language/index.ts';
import type { Suggestion } from './suggestion.ts';

const others = /[_'.]/g;

/**
 * The suggestions that what is typed fits, best first: the very text; begun with the same letters, a Greek one by its
 * name, then in any case, then with `_`, `'` and points left out; holding them at the start of a later part or of the
 * sheet in front, then anywhere; then by a word of what they are. Among equals by rank, then the shorter. Nothing typed fits all.
 */
export function matching(typed: string, suggestions: readonly Suggestion[]): readonly Suggestion[] {
  const folded = spelledOut(typed).toLowerCase();
  const bare = folded.replace(others, '');
  const grade = ({ kind, text, detail, sheet }: Suggestion): number => {
    if (text === typed) return 0;
    // The key of another sheet is no part of the name, until a point is typed behind it.
    const own = text.slice(typed.includes('.') ? 0 : (sheet ?? 0));
    if (own.startsWith(typed) || spelledOut(own).startsWith(typed)) return 1;
    const spelled = spelledOut(own).toLowerCase();
    if (spelled.startsWith(folded)) return 2;
    if (bare !== '' && spelled.replace(others, '').startsWith(bare)) return 3;
    const lower = spelledOut(text).toLowerCase();
    const at = lower.indexOf(folded);
    if (at === 0) return 4;
    if (at > 0 && /[_.]/.test(lower[at - 1] ?? '')) return 4;
    if (text.toLowerCase().includes(typed.toLowerCase())) return 5;
    return kind !== 'function' && folded.length > 2 && hasWord(detail.toLowerCase(), folded) ? 6 : none;
  };
  const excess = ({ text }: Suggestion): number => (typed === '' ? 0 : text.length);
  return suggestions
    .map((suggestion) => ({ suggestion, at: grade(suggestion) }))
    .filter(({ at }) => at < none)
    .sort(
      (a, b) =>
        a.at - b.at || b.suggestion.rank - a.suggestion.rank || excess(a.suggestion) - excess(b.suggestion),
    )
    .map(({ suggestion }) => suggestion);
}

const none = 7;

/** Whether a word of the sentence begins so. */
function hasWord(sentence: string, begun: string): boolean {
  const at = sentence.indexOf(begun);
  return at === 0 || (at > 0 && sentence.includes(` ${begun}`));
}
