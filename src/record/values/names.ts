import type { Item } from '../../notebook/index.ts';

/** The name of a line or column as its own sheet writes it: `C_M`, `layers.top`. */
export function localName(item: Item): string {
  return item.id.slice(item.sheet.length + 1);
}

/** What a person calls a line or column. */
export function labelOf(item: Item): string {
  const source = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
  return source.label ?? source.name;
}
