/** Why a text that stands for a number is none, as far as it says so. */
export type NoNumber = 'about' | 'error' | 'later' | 'text' | 'digits' | 'other';

const REASONS: readonly (readonly [pattern: RegExp, reason: NoNumber])[] = [
  [/^#(?:ref!|div\/0!|value!|name\?|num!|null!|n\/a|spill!|calc!|wert!|bezug!|valeur!|nombre!)/i, 'error'],
  [/^#+$|^#[¡\p{L}][\p{L}\d/]*[!?]?$/u, 'error'],
  [/^(?:[~≈<>≤≥±]|(?:ca|circa|approx|appr|abt|about|env|etwa|rund|max|min)[. ])\s*\S*\d/i, 'about'],
  [/^(?:t\.?b\.?[acd]\.?|later|open|offen|n\.?n\.?|\?+)$/i, 'later'],
  [/^['’‘`]\s*[+\-−]?[\d.]+$/, 'text'],
  [/(?![0-9])\p{Nd}/u, 'digits'],
];

/**
 * Why a text that is no number is none: an estimate, an error of a spreadsheet, a number to come, one marked as text, one in
 * the digits of another script.
 */
export function whyNoNumber(text: string): NoNumber {
  return REASONS.find(([pattern]) => pattern.test(text))?.[1] ?? 'other';
}
