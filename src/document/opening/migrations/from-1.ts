import type { Migration } from './migration.ts';

/**
 * Version 1 had no stated values and no identities of rows. Both may be absent: nothing is stated then, and the rows of
 * a table are 1, 2, 3 … in the order they stand, so a book of version 1 is one of version 2 as it is.
 */
export const from1: Migration = (book) => book;
