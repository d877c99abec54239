import type { Book } from '../schema/book.ts';
import type { Patch } from './patch.ts';

/** A book after one patch, and the patch that takes it back. */
export interface Step {
  readonly book: Book;
  readonly inverse: Patch;
}
