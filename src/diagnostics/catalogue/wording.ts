const LONGEST_QUOTE = 60;

/** Signs without width or shape, and blanks between letters that look like a space and are none. */
const UNSEEN =
  /[\u00ad\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]|(?<=\p{L})\u00a0(?=\p{L})/gu;

/**
 * What the person wrote, in quotation marks, on one line, cut short if long: “12 quux”. What cannot be seen is named, so
 * that two texts that look alike do not: “concrete⟨U+200B⟩”.
 */
export function quoted(text: string): string {
  const line = onOneLine(text).replace(
    UNSEEN,
    (sign) => `⟨U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}⟩`,
  );
  return `“${line.length > LONGEST_QUOTE ? `${line.slice(0, LONGEST_QUOTE - 1)}…` : line}”`;
}

/** The text with control characters and line breaks turned into spaces. */
export function onOneLine(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ');
}

/** "a", "a or b", "a, b or c". */
export function listed(items: readonly string[], word: 'or' | 'and' = 'or'): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${word} ${items[items.length - 1]}`;
}
