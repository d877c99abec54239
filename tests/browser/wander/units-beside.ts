/** A unit written in print or in a book, in one form: `kip·ft²` and `kip*ft^2` are the same. */
function unitForm(unit: string): string {
  return unit
    .normalize('NFKC')
    .replaceAll('−', '-')
    .replaceAll('⁄', '/')
    .replace(/[·*()^\s-]/g, '')
    .toLowerCase();
}

/** A number with nothing behind it. */
export function isBare(text: string): boolean {
  return /^\s*[+-]?(\d[\d ]*)?[.,]?\d+\s*$/.test(text);
}

/**
 * Whether a book that says `written` has taken what was typed beside a unit: as it was typed, or with that unit behind it,
 * which it must have where the line itself has another.
 */
export function isTaken(written: string, typed: string, beside: string, own: string | undefined): boolean {
  const short = typed.trim();
  if (!isBare(short)) return written === short;
  // A level that is typed as it stands stays as it was written, with its word and its sign.
  const level = /^El\. ([+-]?\d+(?:\.\d+)?) ft$/.exec(written)?.[1];
  if (level !== undefined && beside.startsWith('ft ') && Number(level) === Number(short)) return true;
  const sameUnit = unitForm(beside) === unitForm(own ?? '') || unitForm(beside) === '';
  if (sameUnit && written === short) return true;
  return (
    written.startsWith(short) && unitForm(written.slice(short.length)) === unitForm(beside) && beside !== ''
  );
}
