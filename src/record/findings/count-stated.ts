import type { Notebook } from '../../notebook/index.ts';

/** How many values of a book are stated in place of computed ones: of lines, sides of checks, cells of columns. */
export function countStated({ model }: Notebook): number {
  let count = 0;
  for (const item of model.items.values()) {
    if (item.kind === 'formula')
      count += Number(item.stated !== undefined) + Object.keys(item.sides ?? {}).length;
    else if (item.kind === 'formula column') count += item.cells?.size ?? 0;
  }
  return count;
}
