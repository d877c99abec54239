import type { CheckOrder } from '../../figures/index.ts';

const KEY = 'quaybook order of checks';

/** The order of checks that was chosen in this browser, for all books; that of the book where none was, or none is stored. */
export function storedCheckOrder(): CheckOrder {
  try {
    return localStorage.getItem(KEY) === 'nearest' ? 'nearest' : 'book';
  } catch {
    return 'book';
  }
}

/** Remembers the order of checks; where storage is refused it lasts as long as the book is open. */
export function storeCheckOrder(order: CheckOrder): void {
  try {
    localStorage.setItem(KEY, order);
  } catch {
    // Nothing is lost but the choice itself, which is seen.
  }
}
