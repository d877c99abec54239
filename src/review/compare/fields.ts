import type { JsonValue } from '../../diagnostics/index.ts';
import { canonicalJson, type Method } from '../../document/index.ts';
import { methodWords } from '../../notebook/index.ts';
import type { NamesSaid, Said, SaidAt } from './names-said.ts';

/** One field that two things have differently; undefined where one has it not. */
export interface FieldChange {
  readonly field: string;
  /** Of a method of the line: its id, and what it is for in words. */
  readonly method?: string;
  readonly methodWords?: string;
  readonly from?: JsonValue;
  readonly to?: JsonValue;
  readonly only?: 'writing' | 'names';
}

/** Which fields of a thing hold names: formulas, or a name alone. All others are compared as they are. */
export type Speaks = Readonly<Record<string, 'formulas' | 'names'>>;

/** A thing with fields, as it stands in the file. */
type Fielded = object;

/**
 * The fields that two things have differently, fields within fields by their path (`range.min`), lists as a whole. `apart`
 * names fields that are compared elsewhere. Names that stand for the same thing are no difference.
 */
export function fieldChanges(
  before: Fielded,
  after: Fielded,
  apart: ReadonlySet<string>,
  speaks: Speaks,
  said: NamesSaid,
  at: SaidAt,
): readonly FieldChange[] {
  const [a, b] = [leavesOf(before, apart), leavesOf(after, apart)];
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((field): FieldChange[] => {
    const [from, to] = [a.get(field), b.get(field)];
    const change = { field, ...(from !== undefined && { from }), ...(to !== undefined && { to }) };
    const kind = speaks[field];
    if (kind && typeof from === 'string' && typeof to === 'string')
      return changeOf(change, said[kind](from, to, at));
    if (from !== undefined && to !== undefined && canonicalJson(from) === canonicalJson(to)) return [];
    return [change];
  });
}

/** What is different between the methods of two lines, each told by its identity. */
export function methodChanges(
  before: readonly Method[] = [],
  after: readonly Method[] = [],
  said: NamesSaid,
  at: SaidAt,
): readonly FieldChange[] {
  const old = new Map(before.map((method) => [method.id, method]));
  const next = new Map(after.map((method) => [method.id, method]));
  const removed = before.filter(({ id }) => !next.has(id));
  const added = after.filter(({ id }) => !old.has(id));
  const kept = after.filter(({ id }) => old.has(id));
  const order = before.filter(({ id }) => next.has(id));
  return [
    ...removed.map((method) => ({ field: 'method', ...named(method), from: method as JsonValue })),
    ...added.map((method) => ({ field: 'method', ...named(method), to: method as JsonValue })),
    ...after.flatMap((method) => {
      const other = old.get(method.id);
      if (!other) return [];
      const changes = fieldChanges(other, method, NO_FIELDS, { formula: 'formulas' }, said, at);
      return changes.map((change) => ({ ...change, ...named(method) }));
    }),
    ...(idsOf(kept).join() === idsOf(order).join()
      ? []
      : [{ field: 'order of methods', from: order.map(methodWords), to: kept.map(methodWords) }]),
  ];
}

const named = (method: Method) => ({ method: method.id, methodWords: methodWords(method) });
const idsOf = (methods: readonly Method[]): readonly string[] => methods.map(({ id }) => id);

const NO_FIELDS: ReadonlySet<string> = new Set();

function changeOf(change: FieldChange, what: Said): FieldChange[] {
  if (what === 'same') return [];
  return [what === 'other' ? change : { ...change, only: what }];
}

/** The fields of a thing by their paths, those of objects in it too. */
function leavesOf(
  thing: Fielded,
  apart: ReadonlySet<string>,
  above = '',
  found = new Map<string, JsonValue>(),
): ReadonlyMap<string, JsonValue> {
  for (const [key, value] of Object.entries(thing)) {
    if (value === undefined || (above === '' && apart.has(key))) continue;
    const path = `${above}${key}`;
    if (typeof value === 'object' && value !== null && !Array.isArray(value))
      leavesOf(value, apart, `${path}.`, found);
    else found.set(path, value);
  }
  return found;
}
