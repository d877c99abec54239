import { indexFor } from './methods.ts';
import type { Methods, Model } from './model.ts';
import type { ColumnResult, Result } from './result.ts';

/** How lines and columns stand, and what they are. */
export interface Standing {
  readonly model: Model;
  readonly result: (id: string) => Result;
  readonly column: (id: string) => ColumnResult;
}

/** Gives the position of the method in force in each row (from 0); -1 where none is. */
export function indexReader(
  standing: Standing,
  { list, chosen, starts, byId }: Methods,
): (row: number | undefined) => number {
  if (chosen !== undefined) return () => chosen;
  if (!starts || byId === undefined) return () => -1;
  const methods = list.map(({ method }) => method);
  const optionIn = optionReader(standing, byId);
  // A long column has few options.
  const known = new Map<string, number>();
  return (row) => {
    const option = optionIn(row);
    if (option === undefined) return -1;
    const found = known.get(option) ?? indexFor(methods, option);
    known.set(option, found);
    return found;
  };
}

/** Reads the text that chooses, of a column in a row. */
export function optionReader(
  { model, result, column }: Standing,
  id: string,
): (row: number | undefined) => string | undefined {
  const item = model.items.get(id);
  if (item?.kind === 'input' || item?.kind === 'formula') {
    const read = result(id);
    const option = read.status === 'ok' && read.value.kind === 'text' ? read.value.text : undefined;
    return () => option;
  }
  const found = column(id);
  if (found.status !== 'ok') return () => undefined;
  const { reading } = found;
  return (row) => {
    if (row === undefined || row >= reading.length) return undefined;
    const read = reading.at(row);
    return read.status === 'ok' && typeof read.value === 'string' ? read.value : undefined;
  };
}
