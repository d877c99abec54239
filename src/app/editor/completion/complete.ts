import type { FormulaColumnItem, FormulaItem } from '../../../notebook/index.ts';
import type { Session } from '../../session/session.ts';
import { completingAt } from './completing-at.ts';
import { functionSuggestions } from './suggest-functions.ts';
import { suggestNames } from './suggest-names.ts';
import { suggestTexts } from './suggest-texts.ts';
import { unitSuggestions } from './suggest-units.ts';
import type { Suggestion } from './suggestion.ts';
import { wantedType } from './wanted-type.ts';

/** What may be written from `from` on. */
export interface Completions {
  readonly from: number;
  readonly suggestions: readonly Suggestion[];
}

/**
 * What may be written at a place of a formula. Names and functions only once a letter is there, unless `asked`;
 * undefined where there is nothing to offer.
 */
export function complete(
  session: Session,
  item: FormulaItem | FormulaColumnItem,
  text: string,
  at: number,
  asked: boolean,
): Completions | undefined {
  const { notebook } = session;
  const doing = completingAt(text, at);
  const { from } = doing;
  switch (doing.kind) {
    case 'text': {
      const suggestions = suggestTexts(notebook, item, text, from - 1);
      return suggestions.length > 0 ? { from, suggestions } : undefined;
    }
    case 'unit': {
      const wanted = doing.inside ? undefined : wantedType(notebook, item, text, doing.number);
      const units = unitSuggestions(notebook.model.registry, wanted, notebook.book.settings.system);
      // Inside parentheses a compound unit is under way, to which single symbols are added.
      const suggestions = doing.inside ? units.filter(({ insert }) => insert === undefined) : units;
      return { from, suggestions };
    }
    case 'name': {
      if (from === at && !asked) return undefined;
      const wanted = wantedType(notebook, item, text, from);
      return { from, suggestions: [...suggestNames(session, item, wanted), ...functionSuggestions] };
    }
  }
}
