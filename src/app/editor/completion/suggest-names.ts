import type { Type } from '../../../language/index.ts';
import type { FormulaColumnItem, FormulaItem, Item } from '../../../notebook/index.ts';
import { labelOf, quantityText, resultText } from '../../../record/index.ts';
import type { Session } from '../../session/session.ts';
import type { Suggestion } from './suggestion.ts';
import { fitsWanted } from './wanted-type.ts';

/** Nearness of a name to the formula, and what being of the wanted dimension adds. */
const rank = { ownColumn: 30, ownSheet: 20, otherSheet: 0, fits: 45 } as const;

/** The names a formula may say, each with description and value: own columns, then the sheet, then other sheets. */
export function suggestNames(
  session: Session,
  item: FormulaItem | FormulaColumnItem,
  wanted: Type | undefined,
): readonly Suggestion[] {
  const found: Suggestion[] = [];
  const table = item.kind === 'formula column' ? item.table : undefined;
  for (const other of session.notebook.model.items.values()) {
    const own = other.id === item.id;
    // A line cannot say its own name; a column can, through ABOVE.
    if (own && item.kind === 'formula') continue;
    const fits = fitsWanted(other.type, wanted) ? rank.fits : 0;
    const isColumn = other.kind === 'input column' || other.kind === 'formula column';
    if (isColumn && other.table === table)
      found.push(named(session, other, other.column.name, rank.ownColumn + fits - (own ? 25 : 0)));
    const here = other.sheet === item.sheet;
    const text = here ? other.id.slice(other.sheet.length + 1) : other.id;
    const at = (here ? rank.ownSheet : rank.otherSheet) + (isColumn ? 0 : fits);
    const sheet = here ? 0 : other.sheet.length + 1;
    found.push({ ...named(session, other, text, at), ...(sheet > 0 && { sheet }) });
  }
  return found;
}

function named(session: Session, item: Item, text: string, at: number): Suggestion {
  const detail = labelOf(item);
  return {
    kind: 'name',
    text,
    detail: detail === text ? '' : detail,
    value: () => quantityText(resultText(session.notebook, item, session.units)),
    rank: at,
  };
}
