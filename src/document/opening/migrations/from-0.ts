import type { Migration } from './migration.ts';

/**
 * Version 0, the draft format, had the book's title as one text and neither settings nor a review. The text becomes
 * the subject of the title block; drafts were worked in SI with dollars.
 */
export const from0: Migration = (book) => ({
  ...book,
  title: typeof book.title === 'string' ? { ...BLANK_TITLE, subject: book.title } : (book.title ?? null),
  settings: { system: 'SI', currency: 'USD', units: [], datums: [] },
  review: { handValues: [], comments: [], signOffs: [], revisions: [] },
});

const BLANK_TITLE = {
  project: '',
  subject: '',
  job: '',
  client: '',
  prepared: '',
  checked: '',
  date: '',
  revision: '',
};
