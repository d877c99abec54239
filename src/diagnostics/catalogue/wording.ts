const LONGEST_QUOTE = 60;

/** What the person wrote, in quotation marks, on one line, cut short if long: “12 quux”. */
export function quoted(text: string): string {
  const line = onOneLine(text);
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
