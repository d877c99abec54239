import type { Problem } from '../diagnostics/index.ts';
import { barePercent, DATE_UNIT, readEntry } from '../units/index.ts';
import { readCell } from './columns.ts';
import { signCheck } from './excluded-sign.ts';
import { outOfRange, readGiven } from './inputs.ts';
import type { Notebook } from './notebook.ts';
import { readValue, unitOf } from './read-result.ts';
import type { Value } from './result.ts';

/** An entry as a given line or a given column would read it: a value in the unit it is read in, or nothing. */
export interface EntryTrial {
  readonly value?: Value;
  readonly problems: readonly Problem[];
}

/** Reads an entry in the place of a given line or column (`id`) without entering it. */
export function tryEntry({ model, book }: Notebook, id: string, text: string): EntryTrial {
  const item = model.items.get(id);
  const { system } = book.settings;
  if (item?.kind === 'input' && item.row.kind === 'given') {
    const read = readGiven(id, item.sheet, { ...item.row, entry: text }, model.registry);
    const { entry, problems } = read;
    if (!entry || entry.kind === 'missing') return { problems };
    const raw = entry.kind === 'text' ? entry.text : entry.kind === 'truth' ? entry.value : entry.si;
    return { value: readValue(raw, unitOf(read, model, system)), problems };
  }
  if (item?.kind !== 'input column') throw new Error(`${id} takes no entry`);
  const { column, unit } = item;
  const value = readCell(text, column, unit, model.registry);
  if (value === undefined) return { problems: [] };
  if (typeof value === 'object') return { problems: [value] };
  const sign =
    typeof value === 'number' && signCheck(column.range, unit, model.registry, column.note)?.(value);
  if (sign) return { problems: [sign] };
  if (column.type === 'truth') return { value: { kind: 'truth', truth: value === 1 }, problems: [] };
  const read = column.range && unit && unit !== DATE_UNIT ? readEntry(text, model.registry, unit) : undefined;
  const beyond = read?.ok && column.range ? outOfRange(read.value, column.range, unit, model.registry) : [];
  const doubt = typeof value === 'number' && unit ? barePercent(text, value, unit) : undefined;
  const problems = doubt ? [doubt, ...beyond] : beyond;
  return { value: readValue(value, unitOf(item, model, system)), problems };
}
