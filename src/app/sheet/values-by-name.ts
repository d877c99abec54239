import type { Notebook } from '../../notebook/index.ts';
import type { Session } from '../session/session.ts';
import { type Shown, shownQuantity } from '../session/shown.ts';

/** What numbers put in show for each name of a sheet's formulas; undefined keeps the symbol. */
export function valuesByName(session: Session, sheet: string): (name: string) => Shown | undefined {
  const { notebook, units } = session;
  const known = new Map<string, Shown | undefined>();
  return (name) => {
    if (!known.has(name)) known.set(name, shownValueOf(notebook, sheet, name, units));
    return known.get(name);
  };
}

function shownValueOf(
  notebook: Notebook,
  sheet: string,
  name: string,
  units: Session['units'],
): Shown | undefined {
  const { items, registry } = notebook.model;
  const item = items.get(`${sheet}.${name}`) ?? items.get(name);
  if (item?.kind !== 'input' && item?.kind !== 'formula') return undefined;
  const result = notebook.result(item.id);
  if (result.status !== 'ok') return undefined;
  const { value } = result;
  if (value.kind === 'number') return shownQuantity(value.si, value.unit, units, registry);
  if (value.kind === 'text') return { number: `“${value.text}”`, unit: '' };
  return { number: value.truth ? 'true' : 'false', unit: '' };
}
