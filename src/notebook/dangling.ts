import type { Book } from '../document/index.ts';
import { type Item, type Model, namesUsed } from './model.ts';
import { usesInPart } from './names-in-parts.ts';

/** What still says a name that an edit took out of the book: lines and columns by id, sketches and charts by place. */
export interface Dangling {
  readonly lines: readonly string[];
  readonly pictures: readonly { readonly sheet: string; readonly part: string }[];
}

const nothing: Dangling = { lines: [], pictures: [] };

/**
 * What an edit left without something it used: it names the same as before, and that is gone. What was respelled with
 * the edit, as all users of a renamed line are, is not among them, nor what went with what it used.
 */
export function danglingAfter(
  before: { readonly book: Book; readonly model: Model },
  after: { readonly book: Book; readonly model: Model },
): Dangling {
  if (before.model === after.model) return nothing;
  const gone = new Set(
    [...before.model.items.keys(), ...before.model.tables.keys()].filter(
      (id) => !after.model.items.has(id) && !after.model.tables.has(id),
    ),
  );
  if (gone.size === 0) return nothing;
  const isGone = (written: string, sheet: string): boolean =>
    gone.has(written) || gone.has(`${sheet}.${written}`);
  const lines = [...after.model.items.values()].filter((item) => {
    const was = before.model.items.get(item.id);
    if (!was || was === item || wording(was) !== wording(item)) return false;
    if (was.kind === 'input')
      return was.row.kind === 'choice' && was.row.from !== undefined && isGone(was.row.from, was.sheet);
    return [...namesUsed(was)].some((id) => gone.has(id));
  });
  const pictures = after.book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => {
      if (part.kind !== 'figure' && part.kind !== 'chart') return [];
      let lost = false;
      usesInPart(key, part, (written, sheet) => {
        lost ||= isGone(written, sheet);
        return undefined;
      });
      return lost ? [{ sheet: key, part: part.id }] : [];
    }),
  );
  return { lines: lines.map(({ id }) => id), pictures };
}

/** All that a line or column says of others, as written. */
function wording(item: Item): string {
  if (item.kind === 'input' || item.kind === 'input column')
    return item.kind === 'input' && item.row.kind === 'choice' ? (item.row.from ?? '') : '';
  const { methods } = item;
  const applies = item.kind === 'formula' ? item.applies?.text : undefined;
  return JSON.stringify([
    methods ? methods.by : item.formula,
    ...(methods?.list.map(({ checked }) => checked.text) ?? []),
    applies ?? '',
  ]);
}
