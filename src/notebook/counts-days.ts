import { holdsDateDifference } from '../language/index.ts';
import type { Item, Model } from './model.ts';

/** Whether a time comes of dates: its formula takes one from another, or names a time without a unit that does. */
export function countsDays(item: Item, model: Model): boolean {
  const seen = new Set<Item>([item]);
  for (const one of seen) {
    if (!('checked' in one) || !isTime(one)) continue;
    if (holdsDateDifference(one.checked.typed)) return true;
    for (const id of one.checked.references) {
      const next = model.items.get(id);
      if (next && next.unit === undefined) seen.add(next);
    }
  }
  return false;
}

function isTime({ type }: Item): boolean {
  return type.kind === 'number' && type.dimension.key === 'T';
}
