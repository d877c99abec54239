/** Work of the book left over: how many cells wait, and whether the person has stopped it. */
export interface LeftOver {
  readonly cells: number;
  readonly isStopped?: boolean;
}

/**
 * What stands in a list in place of a value or a verdict that may still come, while work of the book is left over; undefined
 * when all is done, for what has none then will have none.
 */
export function notYetWords(left: LeftOver | undefined): string | undefined {
  if (!left) return undefined;
  return left.isStopped === true ? 'not computed yet' : 'computing';
}

/** What stands in place of an empty list of problems: what waits may still have one. */
export function noProblemWords(left: LeftOver | undefined): string {
  if (!left) return 'No problem anywhere in the book.';
  const waiting = left.cells === 1 ? '1 line is' : `${left.cells} lines are`;
  return `No problem so far; ${waiting} not computed yet.`;
}
