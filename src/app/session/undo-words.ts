/** Says how far undo goes: a book that is opened, or whose page is loaded anew, begins with nothing to undo. */
export const NOTHING_TO_UNDO = 'nothing to undo: it goes back to when the book was opened on this page';
