import type { RecheckProgress, RecheckReport } from '../../recheck/index.ts';

/** How the second engine stands with the book as it is now. */
export type RecheckState =
  /** It begins at the next pause of the person. */
  | { readonly kind: 'waiting for a pause' }
  /** The first engine is not done. */
  | { readonly kind: 'waiting for values' }
  /** The first engine was stopped by the person before it was done. */
  | { readonly kind: 'stopped' }
  | { readonly kind: 'checking'; readonly progress?: RecheckProgress }
  /** Ended by the person before it was done. */
  | { readonly kind: 'cancelled' }
  /** The book is too large for it. */
  | { readonly kind: 'left out'; readonly reason: string }
  | { readonly kind: 'done'; readonly report: RecheckReport }
  | { readonly kind: 'failed'; readonly reason: string };
