import { type PageView, readPageView } from '../view-model/page-view.ts';

/** Remembers which page of a book a tab shows, so that a reload shows it again. */
export interface PageViews {
  readonly read: (book: string) => PageView | undefined;
  /** Notes what is shown, or that the book was left. */
  readonly write: (book: string, view: PageView | undefined) => void;
}

/** Nothing remembered: a book opens on its first sheet. */
export const noPageViews: PageViews = { read: () => undefined, write: () => {} };

const PREFIX = 'quaybook page of ';

/** Pages remembered in the storage of the tab; where that is refused a book opens on its first sheet. */
export const tabPageViews: PageViews = {
  read: (book) => {
    try {
      const text = sessionStorage.getItem(PREFIX + book);
      return text === null ? undefined : readPageView(text);
    } catch {
      return undefined;
    }
  },
  write: (book, view) => {
    try {
      if (view) sessionStorage.setItem(PREFIX + book, JSON.stringify(view));
      else sessionStorage.removeItem(PREFIX + book);
    } catch {
      // Nothing is lost but the page shown, which is seen.
    }
  },
};
