import type { Suggestion } from '../completion/suggestion.ts';
import type { Note } from '../notes/note.ts';

/** What an input field reads of what is typed in it. */
export interface Reader {
  /** The line below; a `refused` note keeps Enter from committing. */
  readonly note: (text: string) => Note | undefined;
  /** What may be typed instead; `typed` is undefined before the first key. */
  readonly suggest?: (typed: string | undefined) => readonly Suggestion[];
}
