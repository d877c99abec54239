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

/** A line whose link leads to nothing: what it took its value from is not in the book any more. */
export interface BrokenLink {
  readonly item: LinkedLine['item'];
  /** What it took its value from, as written. */
  readonly to: string;
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

/** The links of a book that lead to nothing, in its order. */
export function brokenLinks({ model }: Notebook): readonly BrokenLink[] {
  return [...model.items.values()].flatMap((item) => {
    const to = brokenLink(item, model.items);
    return to !== undefined && item.kind === 'formula' ? [{ item, to }] : [];
  });
}

/** What a linked line took its value from that is not in the book any more, as written; undefined for any other line. */
export function brokenLink(item: Item, items: ReadonlyMap<string, Item>): string | undefined {
  if (item.kind !== 'formula' || item.row.kind !== 'calc' || !item.row.link) return undefined;
  const { syntax, text } = item.checked;
  return syntax.kind === 'name' && !linkSource(item, items) ? text.trim() : undefined;
}
