/** A text a person typed, in one line and not too long to show. */
export function shorten(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}
