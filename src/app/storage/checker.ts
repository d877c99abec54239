const KEY = 'quaybook checker';

/** The initials that were entered last in this browser for what is checked; empty where none were, or none are stored. */
export function storedChecker(): string {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

/** Remembers the initials; where storage is refused they last as long as the book is open. */
export function storeChecker(by: string): void {
  try {
    localStorage.setItem(KEY, by);
  } catch {
    // They are entered anew, and stand beside all that was checked.
  }
}
