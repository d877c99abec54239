/** Something the person should know about the storage of this browser. */
export type StoreNotice =
  /** Nothing can be kept in this browser, and why; a file keeps it. */
  | { readonly kind: 'cannot keep'; readonly reason: string }
  /** The storage does not open yet, and what it waits for. */
  | { readonly kind: 'waiting'; readonly reason: string }
  /** The storage is open: what was said of it before is over. */
  | { readonly kind: 'ready' }
  /** A newer version of the app wants the storage, so this tab has let go of it. */
  | { readonly kind: 'gave way' }
  /** Another tab has changed this book, and nothing was entered in it here: what is stored is to be shown in its place. */
  | { readonly kind: 'changed elsewhere'; readonly id: string }
  /** The list of books is another one than before. */
  | { readonly kind: 'list' }
  /** The edits of this book are kept, but could not be gathered into a snapshot, and why. */
  | { readonly kind: 'cannot compact'; readonly id: string; readonly reason: string };
