import type { Outcome } from '../../../diagnostics/index.ts';
import type { Account, ReadTable } from '../../../tables/index.ts';

/** A text as read, or why it cannot be; and how many cells of it became what, unless it has none. */
export type RowsReading = Outcome<ReadTable> & { readonly counts: Account['counts'] | undefined };
