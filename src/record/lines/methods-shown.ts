import {
  formulaInForce,
  type Item,
  type MethodItem,
  methodsUsed,
  type Notebook,
  rowsInWords,
} from '../../notebook/index.ts';

/** What has a reference of its own: a line or a column. */
export interface Referring {
  readonly reference?: string;
}

/** A formula to draw of a line with methods, and the words beside it that say when it is used. */
export interface MethodShown {
  readonly item: MethodItem;
  readonly words: string;
}

/** A line or column with a formula. */
type Computed = Extract<Item, { checked: unknown }>;

/** The method in force of a line; of a column each that is used, with its rows, or all of them where it has no rows. */
export function methodsShown(notebook: Notebook, item: Computed): readonly MethodShown[] {
  if (!item.methods) return [];
  if (item.kind === 'formula') {
    const method = formulaInForce(notebook, item)?.method;
    return method ? [{ item: method, words: method.words }] : [];
  }
  const used = methodsUsed(notebook, item);
  // A choice decides for all rows alike.
  if (item.methods.chosen !== undefined)
    return used.map((one) => ({ item: one.item, words: one.item.words }));
  if (used.length === 0) return item.methods.list.map((one) => ({ item: one, words: one.words }));
  return used.map((one) => ({
    item: one.item,
    words: `${one.item.words}, ${rowsInWords(one.rows)}`,
  }));
}

/** The reference beside a line: of one with methods that of what is computed by, each once. */
export function referenceShown(notebook: Notebook, source: Referring, item: Item | undefined): string {
  if (!item || !('checked' in item) || !item.methods) return source.reference ?? '';
  const own = methodsShown(notebook, item).map(
    ({ item: { method } }) => method.reference ?? source.reference ?? '',
  );
  return [...new Set(own)].filter((text) => text !== '').join('; ');
}
