import { foldedOption, type Option } from '../../../document/index.ts';
import {
  type Item,
  indexFor,
  type Names,
  type Notebook,
  namesOf,
  resolveName,
} from '../../../notebook/index.ts';
import { labelOf } from '../../../record/index.ts';
import { feedsOf } from '../../view-model/places.ts';
import type { MethodLine } from './method-line.ts';
import { type OptionList, type TextSources, textSources } from './text-sources.ts';

/** Something whose value can choose between the methods of a line. */
export interface Chooser {
  readonly id: string;
  /** Its name as the line writes it. */
  readonly by: string;
  readonly label: string;
  readonly kind: 'choice' | 'text' | 'column';
  /** Its options with the words for them; of a text what it is at the moment, and may be. */
  readonly options: readonly Option[];
  /** The lists its options are from, each of which can get another one. */
  readonly lists: readonly OptionList[];
  /** Whether any text is one of its options. */
  readonly isOpen: boolean;
  /** The column that a choice has its options from. */
  readonly from?: string;
  /** The value it has for all rows alike, of a choice or a text line. */
  readonly now?: string;
}

/** So many different texts of a column are offered as options. */
const MOST_TEXTS = 200;

/**
 * What can choose between the methods of a line: the choices of the book and its text lines, those of its own sheet first,
 * and the text columns of its own table; nothing that follows from the line itself.
 */
export function choosersFor(notebook: Notebook, line: MethodLine): readonly Chooser[] {
  const names = namesOf(notebook.book);
  const after = followers(notebook, line.id);
  const found = [...notebook.model.items.values()].flatMap((item): readonly Chooser[] => {
    if (after.has(item.id)) return [];
    const chooser = chooserOf(notebook, item, names, line);
    return chooser ? [chooser] : [];
  });
  const rank = ({ id, kind }: Chooser): number =>
    kind === 'column' ? 0 : (id.startsWith(`${line.sheet}.`) ? 0 : 2) + (kind === 'choice' ? 0 : 1);
  return found.sort((a, b) => rank(a) - rank(b));
}

/** What chooses between the methods of a line, as the book has it; undefined where that is nothing that can. */
export function chooserAt(
  notebook: Notebook,
  line: MethodLine,
  by = line.line.by ?? '',
): Chooser | undefined {
  const names = namesOf(notebook.book);
  const part = resolveName(by, names, line.sheet, line.table);
  const item = part && notebook.model.items.get(part.id);
  const chooser = item && chooserOf(notebook, item, names, line);
  return chooser && { ...chooser, by };
}

/** The options that no method of a line names; what a method for all others is for is among them. */
export function openOptions({ line }: MethodLine, { options }: Chooser): readonly Option[] {
  const named = new Set((line.methods ?? []).flatMap((method) => method.for ?? []).map(foldedOption));
  return options.filter(({ value }) => !named.has(foldedOption(value)));
}

/** The options for which a line has no value, because no method is for them. */
export function unservedOptions(line: MethodLine, chooser: Chooser): readonly Option[] {
  const { methods = [] } = line.line;
  return chooser.options.filter(({ value }) => indexFor(methods, value) < 0);
}

function chooserOf(
  notebook: Notebook,
  item: Item,
  names: Names,
  { sheet, table, id }: MethodLine,
): Chooser | undefined {
  if (item.id === id) return undefined;
  const local = item.sheet === sheet ? item.id.slice(sheet.length + 1) : item.id;
  if (item.kind === 'input column' || item.kind === 'formula column') {
    if (item.table !== table || item.type.kind !== 'text') return undefined;
    const sources = textSources(notebook, item);
    const isOpen = item.kind !== 'input column' || !item.column.options;
    const options = merged(isOpen ? textsOf(notebook, item.id) : [], sources);
    const base = { id: item.id, by: item.column.name, label: labelOf(item), kind: 'column' } as const;
    return { ...base, options, lists: sources.lists, isOpen };
  }
  // Another line of that name may stand nearer, as a column of the same table does.
  const by = resolveName(local, names, sheet, table)?.id === item.id ? local : item.id;
  const base = { id: item.id, by, label: labelOf(item) };
  if (item.kind === 'input' && item.row.kind === 'choice') {
    const { from, entry } = item.row;
    const sources = textSources(notebook, item);
    const now = entry.trim() === '' ? {} : { now: entry };
    const column = from === undefined ? {} : { from };
    const options = merged([], sources);
    return { ...base, kind: 'choice', options, lists: sources.lists, isOpen: false, ...column, ...now };
  }
  if (item.type.kind !== 'text') return undefined;
  const read = notebook.result(item.id);
  const now = read.status === 'ok' && read.value.kind === 'text' ? read.value.text : undefined;
  const sources = textSources(notebook, item);
  const options = merged(now === undefined ? [] : [now], sources);
  const { lists } = sources;
  return { ...base, kind: 'text', options, lists, isOpen: true, ...(now !== undefined && { now }) };
}

/** The values of a text and what else it may be, each once, with the words for it. */
function merged(values: readonly string[], { lists, texts }: TextSources): readonly Option[] {
  const known = [...lists.flatMap((list) => list.options), ...texts];
  const found = new Map<string, Option>();
  for (const option of [...values.map((value) => ({ value })), ...known]) {
    const folded = foldedOption(option.value);
    const before = found.get(folded);
    if (folded !== '' && before?.label === undefined)
      found.set(folded, before ? { ...option, ...before } : option);
  }
  return [...found.values()];
}

/** The different texts of a column, in the order of its rows. */
function textsOf(notebook: Notebook, id: string): readonly string[] {
  const column = notebook.column(id);
  if (column.status !== 'ok') return [];
  const found = new Map<string, string>();
  for (let row = 0; row < column.reading.length && found.size < MOST_TEXTS; row += 1) {
    const read = column.reading.at(row);
    if (read.status !== 'ok' || typeof read.value !== 'string' || read.value.trim() === '') continue;
    const folded = foldedOption(read.value);
    if (!found.has(folded)) found.set(folded, read.value);
  }
  return [...found.values()];
}

/** A line and all that follows from it. */
function followers(notebook: Notebook, id: string): ReadonlySet<string> {
  const found = new Set([id]);
  for (const one of found) for (const item of feedsOf(notebook, one)) found.add(item.id);
  return found;
}
