import { openSession, type Session } from '../../src/app/session/session.ts';
import type { Drafts } from '../../src/app/storage/drafts.ts';
import type { PageViews } from '../../src/app/storage/page-views.ts';
import type { Book } from '../../src/document/index.ts';
import { noAutosave } from './no-autosave.ts';

/** A session that stores nothing and computes everything at once, however slow the machine is. */
export function computedSession(book: Book, id = 'b', drafts?: Drafts, views?: PageViews): Session {
  return openSession(id, book, noAutosave, drafts, views, () => ({ isOver: () => false }));
}
