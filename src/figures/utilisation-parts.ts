/** So many lines of checks fit on a printed page below the title of its book. */
const MOST_LINES = 36;

/** So many of them the heading of a sheet takes, with the air above it. */
const HEADING = 1.5;

/** A sheet of which fewer lines than these would stand below its heading begins on the next page. */
const LEAST_LINES = 4;

/** A check that is drawn below the heading of its sheet, if it has one, with as many lines as its description takes. */
interface OnSheet {
  readonly heading: string | undefined;
  readonly lines: number;
}

/** Checks that are drawn together; `continues` where their first sheet begins in the part before. */
export interface UtilisationPart<C> {
  readonly checks: readonly C[];
  readonly continues: boolean;
}

/**
 * Checks, those of a sheet together, in parts that each fit on a page. A sheet that fits on a page of its own is broken only
 * where a quarter of the page before would stay empty; no heading stands alone at the end.
 */
export function utilisationParts<C extends OnSheet>(checks: readonly C[]): readonly UtilisationPart<C>[] {
  const parts: { checks: C[]; continues: boolean }[] = [];
  let lines = MOST_LINES;
  for (const [at, check] of checks.entries()) {
    const isFirst = at === 0 || checks[at - 1]?.heading !== check.heading;
    const heading = check.heading === undefined ? 0 : HEADING;
    const left = MOST_LINES - lines;
    if (isFirst ? isNewPart(heading + lengthOfSheet(checks, at), left) : left < check.lines) {
      parts.push({ checks: [], continues: !isFirst });
      lines = isFirst ? 0 : heading;
    }
    parts.at(-1)?.checks.push(check);
    lines += isFirst ? heading + check.lines : check.lines;
  }
  return parts;
}

/** Whether a sheet of so many lines begins a part, where so many are left of the one before. */
function isNewPart(needed: number, left: number): boolean {
  if (needed <= left) return false;
  return left < LEAST_LINES || (needed <= MOST_LINES && left <= MOST_LINES / 4);
}

/** How many lines the checks of one sheet take that follow one another from a place on. */
function lengthOfSheet(checks: readonly OnSheet[], from: number): number {
  const heading = checks[from]?.heading;
  const end = checks.findIndex((check, at) => at > from && check.heading !== heading);
  return checks.slice(from, end < 0 ? checks.length : end).reduce((sum, { lines }) => sum + lines, 0);
}
