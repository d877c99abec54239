import { fail, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import {
  type Calc,
  type Choice,
  type Edit,
  type FoundRow,
  findRow,
  findSheet,
  foldedOption,
  type Given,
  type Link,
  replaceRow,
  setColumnField,
  setRowField,
} from '../document/index.ts';
import { describeType, type Type } from '../language/index.ts';
import { PLAIN_UNIT } from '../units/index.ts';
import { heldEntry } from './bring/held-value.ts';
import { optionsOf } from './build-model.ts';
import { linkSource } from './links.ts';
import { type FormulaItem, type InputItem, type Item, referencesOfItem } from './model.ts';
import { namesOf } from './names.ts';
import type { Notebook } from './notebook.ts';

const NOWHERE = { from: 0, to: 0 };

/** A line with one value. */
type Line = InputItem | FormulaItem;

/** Whether a line can take its value from another one: a given, a choice, or one that does so already. */
export function canLink(item: Item | undefined): item is Line {
  return (
    item?.kind === 'input' ||
    (item?.kind === 'formula' && item.row.kind === 'calc' && item.row.link !== undefined)
  );
}

/** The lines of a book whose values a line could take, by kind and dimension and without a circle, in the book's order. */
export function linkTargets(notebook: Notebook, id: string): readonly Line[] {
  const item = notebook.model.items.get(id);
  if (!canLink(item)) return [];
  const own = dependentsOf(notebook, id);
  return [...notebook.model.items.values()].filter(
    (other): other is Line =>
      (other.kind === 'input' || other.kind === 'formula') &&
      !own.has(other.id) &&
      misfit(notebook, item, other) === undefined,
  );
}

/**
 * The edit that has a given or a choice take its value from another line. What was entered stays with it, for the day the
 * link is taken off. Refused where the two are of different kinds, and where the other takes its own value from this one.
 */
export function linkEdit(notebook: Notebook, id: string, from: string): Outcome<Edit> {
  const item = notebook.model.items.get(id);
  const other = notebook.model.items.get(from);
  const found = item && rowOf(notebook, item);
  if (!canLink(item) || !found || (other?.kind !== 'input' && other?.kind !== 'formula'))
    return fail(problem('link-unfit', NOWHERE, { name: id, other: from }));
  const circle = pathBetween(notebook, from, id);
  if (circle) return fail(problem('link-circle', NOWHERE, { name: id, other: from, path: [...circle] }));
  const wrong = misfit(notebook, item, other);
  if (wrong) return fail(problem('link-kind', NOWHERE, { name: id, other: from, ...wrong }));
  const formula = other.sheet === item.sheet ? other.row.name : other.id;
  const { row, place } = found;
  const edit = replaceRow(place, linked(withShownUnit(notebook, id, row), formula));
  return succeed({ ...edit, label: `link ${row.name} to ${formula}` });
}

/** A given that has its unit from its entry alone, with that unit beside it: linked, it is shown in it as before. */
function withShownUnit(notebook: Notebook, id: string, row: Given | Choice | Calc): Given | Choice | Calc {
  if (row.kind !== 'given' || (row.unit ?? '').trim() !== '') return row;
  const result = notebook.result(id);
  if (result.status !== 'ok' || result.value.kind !== 'number') return row;
  const { text } = result.value.unit;
  return text === '' || text === PLAIN_UNIT.text ? row : { ...row, unit: text };
}

/** The given or the choice with a link; a line that is linked already keeps what it was, and what is stated of it. */
function linked(row: Given | Choice | Calc, formula: string): Calc {
  if (row.kind === 'calc') {
    const { by: _, methods: __, ...kept } = row;
    return { ...kept, formula };
  }
  const { kind, entry, optional, toLink: _, ...rest } = row;
  const may = { entry, ...(optional !== undefined && { optional }) };
  if (row.kind === 'given') {
    const { range, ...kept } = rest as Omit<Given, 'kind' | 'entry' | 'optional' | 'toLink'>;
    return { ...kept, kind: 'calc', formula, link: { kind: 'given', ...may, ...(range && { range }) } };
  }
  const { options, from, ...kept } = rest as Omit<Choice, 'kind' | 'entry' | 'optional' | 'toLink'>;
  const link: Link = {
    kind: 'choice',
    ...may,
    ...(options && { options }),
    ...(from !== undefined && { from }),
  };
  return { ...kept, kind: 'calc', formula, link };
}

/** The edit that makes a linked line the given or the choice again that it was, with the value it has now. */
export function unlinkEdit(notebook: Notebook, id: string): Outcome<Edit> {
  const item = notebook.model.items.get(id);
  const found = item && rowOf(notebook, item);
  if (found?.row.kind !== 'calc' || !found.row.link)
    return fail(problem('link-unfit', NOWHERE, { name: id, other: id }));
  const { formula: _, by: __, methods: ___, kind: ____, link, stated, unit, range, ...kept } = found.row;
  if (stated) return fail(problem('link-stated', NOWHERE, { name: id }));
  const result = notebook.result(id);
  // Without a value it is as it was before it was linked.
  const isHeld = result.status === 'ok';
  const entry = isHeld ? heldEntry(result.value, (unit ?? '').trim() !== '') : link.entry;
  const from = item && linkSource(item, notebook.model.items);
  // The source of the entry that it had before is not that of this value.
  const reference = isHeld && from ? { reference: `value of ${from.id} when the link was taken off` } : {};
  const row: Given | Choice =
    link.kind === 'given'
      ? {
          ...kept,
          ...reference,
          ...(range && { range }),
          ...link,
          ...(unit !== undefined && { unit }),
          entry,
        }
      : {
          ...kept,
          ...reference,
          ...link,
          entry: result.status === 'ok' && result.value.kind === 'text' ? result.value.text : link.entry,
        };
  return succeed({ ...replaceRow(found.place, row), label: `take the link off ${row.name}` });
}

/** The edit that has a line or column stay as it is: it is not to be linked any more. */
export function keepHeldEdit(notebook: Notebook, id: string): Edit | undefined {
  const item = notebook.model.items.get(id);
  const label = 'keep a value as it is';
  if (item?.kind === 'input') {
    const found = rowOf(notebook, item);
    return found && { ...setRowField(found.place, 'toLink', undefined), label };
  }
  const part = namesOf(notebook.book).get(id);
  if (part?.kind !== 'column') return undefined;
  const place = { sheet: part.sheet, table: part.table.id, column: part.column.id };
  return { ...setColumnField(place, 'toLink', undefined), label };
}

function rowOf(
  { book }: Notebook,
  item: Item,
): (FoundRow & { readonly row: Given | Choice | Calc }) | undefined {
  const sheet = findSheet(book, item.sheet);
  const found = sheet && 'row' in item ? findRow(sheet, item.row.name) : undefined;
  return found && found.row.kind !== 'check' ? { ...found, row: found.row } : undefined;
}

interface Misfit {
  readonly is: string;
  readonly wants: string;
}

/** Why a line cannot take the value of another: what the other is, and what is wanted. */
function misfit(notebook: Notebook, item: Line, other: Line): Misfit | undefined {
  const { registry } = notebook.model;
  const own = optionsAt(notebook, item);
  if (own) {
    const theirs = optionsAt(notebook, other);
    const known = new Set(own.map(foldedOption));
    if (theirs?.every((option) => known.has(foldedOption(option)))) return undefined;
    const is = theirs ? 'a choice with other options' : describeType(other.type, registry);
    return { is, wants: 'a choice of the same options' };
  }
  if (other.type.kind === 'unknown' || isOpen(item) || sameKind(item.type, other.type)) return undefined;
  return { is: describeType(other.type, registry), wants: describeType(item.type, registry) };
}

/** Whether nothing says yet what kind of value a given has. */
function isOpen({ row, unit, type }: Line): boolean {
  if (row.kind === 'given') return unit === undefined && row.entry.trim() === '';
  return type.kind === 'unknown';
}

function optionsAt({ book }: Notebook, { row, sheet }: Line): readonly string[] | undefined {
  const choice =
    row.kind === 'choice' ? row : row.kind === 'calc' && row.link?.kind === 'choice' ? row.link : undefined;
  if (!choice) return undefined;
  return optionsOf({ ...choice, id: row.id, name: row.name }, sheet, namesOf(book));
}

function sameKind(a: Type, b: Type): boolean {
  if (a.kind === 'number' && b.kind === 'number')
    return b.zero === true || (a.dimension.key === b.dimension.key && a.angle === b.angle);
  if (a.kind === 'point' && b.kind === 'point') return a.of === b.of;
  return a.kind === b.kind;
}

/** What takes its value from a line, over others or by itself, and the line. */
function dependentsOf({ model }: Notebook, id: string): ReadonlySet<string> {
  const takers = new Map<string, string[]>();
  for (const item of model.items.values())
    for (const source of sourcesOf(item)) {
      const known = takers.get(source);
      if (known) known.push(item.id);
      else takers.set(source, [item.id]);
    }
  const found = new Set([id]);
  for (const one of found) for (const taker of takers.get(one) ?? []) found.add(taker);
  return found;
}

/** What an item takes its value from directly. */
function sourcesOf(item: Item | undefined): readonly string[] {
  if (!item || !('checked' in item)) return [];
  return [...referencesOfItem(item), ...(item.methods?.byId ? [item.methods.byId] : [])];
}

/** The lines over which one takes its value from another, both included; undefined where it does not. */
function pathBetween({ model }: Notebook, from: string, to: string): readonly string[] | undefined {
  const before = new Map<string, string | undefined>([[from, undefined]]);
  const waiting = [from];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (id === to) {
      const path: string[] = [];
      for (let at: string | undefined = id; at !== undefined; at = before.get(at)) path.unshift(at);
      return path;
    }
    for (const next of sourcesOf(model.items.get(id)))
      if (!before.has(next)) {
        before.set(next, id);
        waiting.push(next);
      }
  }
  return undefined;
}
