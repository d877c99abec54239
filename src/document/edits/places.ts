import { type Problem, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import { type Schema, schemaBelow } from '../schema/walk.ts';

/** By which field the items of a list are told apart; lists that are not here go by index. */
const IDENTITY: Readonly<Record<string, 'key' | 'id'>> = {
  sheets: 'key',
  origins: 'id',
  parts: 'id',
  rows: 'id',
  columns: 'id',
  methods: 'id',
  handValues: 'id',
  seen: 'id',
  comments: 'id',
  signOffs: 'id',
  revisions: 'id',
  bases: 'id',
};

/** By which field the items of the list field named `list` are told apart, if by one. */
export function identityIn(list: string | number | undefined): 'key' | 'id' | undefined {
  return typeof list === 'string' && Object.hasOwn(IDENTITY, list) ? IDENTITY[list] : undefined;
}

/** The position in `list`, which stands at the field `name`, that a step of a path names; -1 if none. */
export function positionIn(
  list: readonly unknown[],
  name: string | number | undefined,
  step: string | number | undefined,
): number {
  const identity = identityIn(name);
  if (identity === undefined) {
    return typeof step === 'number' && Number.isInteger(step) && step >= 0 && step < list.length ? step : -1;
  }
  for (let i = 0; i < list.length; i++) {
    const item = list[i] as Readonly<Record<'key' | 'id', unknown>>;
    if (item[identity] === step) return i;
  }
  return -1;
}

/** What a change makes of the value at its place, or why it cannot. */
export type Change =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * `value` with what stands at the first `length` steps of `at` changed by `act`. What lies on the way is copied, all
 * else is shared with `value`.
 */
export function changeAt(
  value: unknown,
  schema: Schema,
  at: Path,
  length: number,
  act: (target: unknown, schema: Schema) => Change,
  depth = 0,
): Change {
  if (depth === length) return act(value, schema);
  const step = at[depth];
  if (step === undefined || typeof value !== 'object' || value === null) return missing(at, depth);
  const below = schemaBelow(schema, value, step);
  if (below === undefined) return missing(at, depth);
  if (Array.isArray(value)) {
    const position = positionIn(value, at[depth - 1], step);
    if (position < 0) return missing(at, depth);
    const changed = changeAt(value[position], below, at, length, act, depth + 1);
    if (!changed.ok) return changed;
    const list = value.slice();
    list[position] = changed.value;
    return { ok: true, value: list };
  }
  const fields = value as Readonly<Record<string, unknown>>;
  if (fields[step] === undefined) return missing(at, depth);
  const changed = changeAt(fields[step], below, at, length, act, depth + 1);
  return changed.ok ? { ok: true, value: { ...fields, [step]: changed.value } } : changed;
}

/** The refusal of a path that leads nowhere from its step number `depth` on. */
export function missing(at: Path, depth = at.length - 1): Change {
  const path = pathText(at.slice(0, depth + 1));
  return { ok: false, problems: [problem('edit-place-missing', { from: 0, to: 0 }, { path })] };
}
