const KEY = 'quaybook line kept in sight';

/** The id of the line that is kept in sight in this browser, in every book that has it; undefined where there is none. */
export function storedInSight(): string | undefined {
  try {
    return localStorage.getItem(KEY) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Remembers which line is kept in sight; where storage is refused that lasts as long as the book is open. */
export function storeInSight(id: string | undefined): void {
  try {
    if (id === undefined) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, id);
  } catch {
    // Nothing is lost but the choice itself, which is seen.
  }
}
