import type { Book, Sheet } from '../../document/index.ts';

/** The sheets by group, each group where its first sheet stands: the order a person reads them in. */
export function groupedSheets({ sheets }: Book): ReadonlyMap<string, readonly Sheet[]> {
  const groups = new Map<string, Sheet[]>();
  for (const sheet of sheets) {
    const group = groups.get(sheet.group ?? '');
    if (group) group.push(sheet);
    else groups.set(sheet.group ?? '', [sheet]);
  }
  return groups;
}
