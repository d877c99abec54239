import { methodDiffers, methodsUsed } from '../../../notebook/index.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { Session } from '../../session/session.ts';
import type { Typing } from '../../view-model/edit-in-hand.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { complete } from '../completion/complete.ts';
import { withKindOffer } from '../notes/kind-offer.ts';
import { statementNote } from '../notes/statement-note.ts';
import { itemOfPlace } from '../readers/place-item.ts';
import { formulaNote } from './formula-note.ts';
import type { FormulaService } from './quay-formula-field.ts';

/**
 * What a formula field at a place offers: completions, trials, the line below; undefined where no formula stands. In a cell
 * of a column its row is tried, of one of its methods the first row that goes by it.
 */
export function formulaServiceAt(
  session: Session,
  place: CellPlace,
  how: Typing = { kind: 'formula' },
): FormulaService | undefined {
  const { notebook } = session;
  const item = itemOfPlace(notebook, place);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column') return undefined;
  const found = findPlace(notebook.book, place);
  const { method } = place;
  const used = item.kind === 'formula column' && method !== undefined ? methodsUsed(notebook, item) : [];
  const first = used.find((one) => one.item.method.id === method)?.rows[0] ?? 0;
  const row = found?.kind === 'cell' ? found.row : first;
  return {
    complete: (text, at, asked) => complete(session, item, text, at, asked),
    tryIt: (text) => {
      const trial = notebook.tryFormula(item.id, text, { row });
      const differs =
        method === undefined
          ? undefined
          : methodDiffers(item, method, trial.checked, notebook.model.registry);
      return differs ? { ...trial, problems: [...trial.problems, differs] } : trial;
    },
    note: (trial, writing) => {
      const { kind, side, typedOver = false } = how;
      const typed = {
        kind,
        ...(side && { side }),
        typedOver,
        place,
        draft: trial.checked.text,
        units: session.units,
      };
      const note = statementNote(session, typed) ?? formulaNote(trial, session, writing);
      return withKindOffer(session, typed, note);
    },
  };
}
