import { withGreek } from '../../../language/index.ts';
import { renameEdit } from '../../editing/lines/rename.ts';
import type { Session } from '../../session/session.ts';
import type { CellPlace } from '../../view-model/place.ts';
import type { Suggestion } from '../completion/suggestion.ts';
import { type Note, problemNote } from '../notes/note.ts';
import type { Reader } from './reader.ts';

/** Reads new names of a line, column or table: refuses what cannot be one, else says what changes with it. */
export function nameReader(session: Session, place: CellPlace): Reader {
  return {
    suggest: (typed = ''): readonly Suggestion[] => {
      const greek = withGreek(typed);
      return greek === typed
        ? []
        : [{ kind: 'name', text: greek, detail: 'the same in Greek letters', rank: 0 }];
    },
    note: (text): Note | undefined => {
      const renamed = renameEdit(session, place, text);
      if (!renamed.ok) {
        const [first] = renamed.problems;
        return first && problemNote(first, 'refused');
      }
      // The last change is the name itself.
      const uses = renamed.value.patches.length - 1;
      if (uses < 1) return undefined;
      return {
        kind: 'remark',
        text: `changes with it in ${uses === 1 ? 'one place' : `${uses} places`} that say it`,
      };
    },
  };
}
