import type { Item } from '../../notebook/index.ts';

/** The column of which a formula is the plain sum and nothing else. */
export function columnSummed(item: Item): string | undefined {
  if (item.kind !== 'formula' || item.stated) return undefined;
  const { typed } = item.checked;
  if (typed.kind !== 'call' || typed.fn.name !== 'SUM') return undefined;
  const [summed, ...more] = typed.args;
  return summed?.kind === 'column' && more.length === 0 ? summed.id : undefined;
}
