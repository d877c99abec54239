import type { InputColumnItem, InputItem, Item } from './model.ts';
import type { Notebook } from './notebook.ts';

/** A line or column that holds the value of something that did not come along with it. */
export interface OpenLink {
  readonly item: InputItem | InputColumnItem;
  /** What it stood for where it comes from. */
  readonly toLink: string;
}

/** A given or a choice that takes its value from another line. */
export interface LinkedLine {
  readonly item: Extract<Item, { kind: 'formula' }>;
  /** The line its value comes from. */
  readonly from: Item;
}

/** What of a book is to be linked, in its order. */
export function openLinks({ model }: Notebook): readonly OpenLink[] {
  return [...model.items.values()].flatMap((item) => {
    if (item.kind !== 'input' && item.kind !== 'input column') return [];
    const { toLink } = item.kind === 'input' ? item.row : item.column;
    return toLink === undefined ? [] : [{ item, toLink }];
  });
}

/** What of a book is linked, in its order. */
export function linkedLines({ model }: Notebook): readonly LinkedLine[] {
  return [...model.items.values()].flatMap((item) => {
    const from = linkSource(item, model.items);
    return from && item.kind === 'formula' ? [{ item, from }] : [];
  });
}

/** The line that a linked line takes its value from; undefined where it is not linked, or its formula says more than a name. */
export function linkSource(item: Item, items: ReadonlyMap<string, Item>): Item | undefined {
  if (item.kind !== 'formula' || item.row.kind !== 'calc' || !item.row.link) return undefined;
  const { syntax, references } = item.checked;
  const [only, ...others] = references;
  return syntax.kind === 'name' && only !== undefined && others.length === 0 ? items.get(only) : undefined;
}
